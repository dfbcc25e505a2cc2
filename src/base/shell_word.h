// A name as one word of a command that is shown to be copied.
#pragma once

#include <string>

namespace keenfall::base {

// As it is where a shell takes it so; else in single quotes: 'my bench.keen'.
[[nodiscard]] std::string shell_word(const std::string& text);

}  // namespace keenfall::base
