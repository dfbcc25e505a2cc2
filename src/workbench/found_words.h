// Looking for words in the open notebook: names of trials, blades, media and runs, notes and
// reasons, and the journal. All of the words must stand in one place, in any order; capital and
// small letters of the Latin alphabet are the same.
//
// Out: at most 100 places, those that begin with the first word first, then other names, notes and
// the journal; each with the page that shows it.
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
