// The words that cells use for a few choices: struck or not, how it was cut, what happened.
//
// Comparison ignores case, spaces, '-' and '_'. Words nobody knows are kept as they were written.
#pragma once

#include "trials/cutting.h"
#include "trials/trial.h"

#include <optional>
#include <string>
#include <string_view>

namespace keenfall::exchange {

// nullopt for an empty cell, no, 0 and false; otherwise the reason ("no reason given" for yes, x, 1
// and true).
[[nodiscard]] std::optional<std::string> reason_in(std::string_view cell);

// Why a reading with a question mark beside it is doubtful.
inline constexpr const char* kQuestionMarkReason = "a question mark beside it";
inline constexpr std::string_view kQuestionMarkAlone =
    "A question mark alone is no reading. Write what was read before it, as in 118?, or nothing if "
    "nothing was read.";
// "118?" is "118".
[[nodiscard]] std::string_view without_question_marks(std::string_view cell);

// "push cut" is a push; an unknown word is Motion::not_recorded.
[[nodiscard]] trials::Motion motion_of(std::string_view cell);
// The word tables use for it; empty for not_recorded.
[[nodiscard]] std::string_view word_for(trials::Motion motion);

[[nodiscard]] trials::EventKind event_kind_of(std::string_view cell);
[[nodiscard]] std::string_view word_for(trials::EventKind kind);
// Of words where a reading should stand: several always do, a single one where it is known, as
// "stopped" is. Any other may be a slip of the hand.
[[nodiscard]] bool says_why_no_reading(std::string_view cell);

}  // namespace keenfall::exchange
