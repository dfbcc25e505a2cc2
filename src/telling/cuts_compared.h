// The cuts to where two arms are compared, in numbers and in words: "108 cuts (10.8 m) against 34".
//
// An arm of which no run got there lasts at least the lower end of its interval (CutsToLevel); one
// that is carried on past its runs all the same probably more than the longest of them.
// Metres are cuts times the length of a cut, and left out where that length is not recorded or the
// table does not count cuts of a length.
#pragma once

#include "verdicts/judgement.h"

#include <string>

namespace keenfall::telling {

// The cuts of an arm are known only where they are reported at the level that was compared.
[[nodiscard]] bool cuts_are_known(const verdicts::Judgement& judgement,
                                  const verdicts::ArmResult& arm,
                                  const verdicts::At& at);

// Of an arm whose cuts are known.
[[nodiscard]] const verdicts::CutsToLevel& cuts_compared(const verdicts::ArmResult& arm,
                                                         const verdicts::At& at);

// "108 cuts (10.8 m)", "at least 60 strokes (6.0 m)".
[[nodiscard]] std::string cuts_in_words(const verdicts::Judgement& judgement,
                                        const verdicts::ArmResult& arm,
                                        const verdicts::At& at);

// The same of cuts to anywhere else.
[[nodiscard]] std::string cuts_in_words(const verdicts::Judgement& judgement,
                                        const verdicts::ArmResult& arm,
                                        const verdicts::CutsToLevel& reached);

// "108 cuts (10.8 m) against 34 (3.4 m)."; empty where the cuts are not reported at that level.
[[nodiscard]] std::string cuts_sentence(const verdicts::Judgement& judgement,
                                        const verdicts::Comparison& comparison);

}  // namespace keenfall::telling
