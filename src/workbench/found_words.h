// Looking for words in the open notebook: names of trials, blades, media and runs, notes and
// reasons, and the journal. Capital and small letters of the Latin alphabet are the same.
//
// Out: at most 100 places, names that begin with the words first, then other names, notes and the
// journal; each with the page that shows it.
#pragma once

#include "base/result.h"
#include "wire/app_pages.h"
#include "workbench/judged_now.h"

#include <string>
#include <vector>

namespace keenfall::workbench {

// None where the text is blank.
[[nodiscard]] base::Result<std::vector<wire::FoundPlace>> found_words(AtHand& at_hand,
                                                                      const std::string& notebook,
                                                                      const std::string& text);

}  // namespace keenfall::workbench
