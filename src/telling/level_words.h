// What a comparison is at, in words that follow a verb, and the levels of a curve by name.
#pragma once

#include "verdicts/judgement.h"

#include <optional>
#include <string>

namespace keenfall::telling {

// "to reach 4 times the start reading", "to fail the test"; empty at half keenness.
[[nodiscard]] std::string level_words(const verdicts::Judgement& judgement, const verdicts::At& at);

// "until its reading has doubled", "until its reading has fallen to half".
[[nodiscard]] std::string keen_until(const verdicts::Judgement& judgement);

// What has happened to a reading there, after "has": "doubled", "reached 400 gf", "fallen to 1/4 of
// its start".
[[nodiscard]] std::string level_reached_words(const verdicts::Judgement& judgement,
                                              const verdicts::At& at);

// A level as an axis names it: "1.25" times the start; where higher is keener the share of the
// start that is left: "4/5".
[[nodiscard]] std::string level_label(const verdicts::Judgement& judgement, double level);

// What that axis shows: "reading, times its start", "reading, as a share of its start".
[[nodiscard]] std::string levels_words(const verdicts::Judgement& judgement);

// "when the reading has reached 1.25 times its start", "when the reading has fallen to 4/5 of its
// start".
[[nodiscard]] std::string when_at_level(const verdicts::Judgement& judgement, double level);

// The level that each of two arms is compared at, in times its own typical start (or start in
// times the reading where higher is keener); absent where it has none, as a test of no known level.
struct LevelsCompared {
  double a = 2;
  double b = 2;
};
[[nodiscard]] std::optional<LevelsCompared> levels_compared(const verdicts::Judgement& judgement,
                                                            const verdicts::Comparison& pair);

}  // namespace keenfall::telling
