// Words as they begin a sentence.
#pragma once

#include <string>

namespace keenfall::base {

// "strokes are counted" as "Strokes are counted". The first letter where it is one of ASCII; else,
// and where there are no words, unchanged.
[[nodiscard]] std::string begun_large(std::string words);

}  // namespace keenfall::base
