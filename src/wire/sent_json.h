// What a stranger sends as JSON, looked at before anything is made of it: how deep it is nested and
// how much it holds. Private to this folder.
#pragma once

#include "base/result.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace keenfall::wire {

// Deeper than any request; whatever walks through a value may call itself that often.
inline constexpr std::size_t kDeepestNesting = 64;
// Each takes some 100 bytes of memory, though it may be sent in three.
inline constexpr std::size_t kMostSentValues = 500'000;

// Why it is not taken apart at all; nothing where it may be. Whether it is JSON is not asked.
[[nodiscard]] std::optional<base::Problem> too_much_sent(std::string_view json);

// For showing: at most `most_bytes`, in whole UTF-8 characters, with "..." where more was there;
// a character that is not to be seen is shown as U+FFFD. In one pass, however long the text is.
[[nodiscard]] std::string shown_of(std::string_view text, std::size_t most_bytes);

enum class Lines { one, many, any_bytes };  // the last: whoever uses it looks at it

// What text of a person is taken, in words, where this one is not; nothing where it is. Control
// characters are refused, and those that turn the direction of what is written behind them.
[[nodiscard]] std::optional<std::string> taken_instead(std::string_view utf8,
                                                       Lines lines,
                                                       std::size_t most_bytes);

}  // namespace keenfall::wire
