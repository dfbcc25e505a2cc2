// What bringing an edge back takes, in words and tables.
//
// Out: the answer in a sentence for each way back, as a range; the table of stones; what it hangs
// on; what it rests on; a word on safety. Lines fit the look's width.
#pragma once

#include "cli/look.h"
#include "wire/resharpening_json.h"

#include <string>

namespace keenfall::cli {

[[nodiscard]] std::string resharpening_text(const wire::ResharpeningDocument& document,
                                            const Look& look);

}  // namespace keenfall::cli
