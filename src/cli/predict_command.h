// `keenfall predict A B`: how many times as long one blade would stay keen as another, by physics.
//
// The answer in one sentence, always a range; what it hangs on; a published regression beside it.
// With --json the document of docs/wire/prediction.schema.json.
#pragma once

#include "cli/outcome.h"
#include "cli/surroundings.h"

#include <span>
#include <string>

namespace keenfall::cli {

[[nodiscard]] Outcome predict_command(std::span<const std::string> words,
                                      const Surroundings& surroundings);

}  // namespace keenfall::cli
