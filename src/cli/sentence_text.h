// A sentence of what is told as a line of a terminal: its tones as colours, its characters as the
// look can show them.
#pragma once

#include "cli/look.h"
#include "cli/text_layout.h"
#include "telling/sentence.h"

#include <string>
#include <vector>

namespace keenfall::cli {

// Not yet wrapped. What the sentence leaves out is said to be in --json.
[[nodiscard]] std::string sentence_text(const telling::Sentence& sentence, const Look& look);

// Each wrapped, and ending in a newline.
[[nodiscard]] std::string sentences_text(const std::vector<telling::Sentence>& sentences,
                                         Indent indent,
                                         const Look& look);

}  // namespace keenfall::cli
