// What a comparison is at, in words that follow a verb.
#pragma once

#include "verdicts/judgement.h"

#include <string>

namespace keenfall::telling {

// "to reach 4 times the start reading", "to fail the test"; empty at half keenness.
[[nodiscard]] std::string level_words(const verdicts::Judgement& judgement, const verdicts::At& at);

// "until its reading has doubled", "until its reading has fallen to half".
[[nodiscard]] std::string keen_until(const verdicts::Judgement& judgement);

// What has happened to a reading there, after "has": "doubled", "reached 400 gf", "fallen to 0.25
// of its start".
[[nodiscard]] std::string level_reached_words(const verdicts::Judgement& judgement,
                                              const verdicts::At& at);

}  // namespace keenfall::telling
