// From fitted times to what can be said about edges that were only tested: arms, ratios, verdicts,
// and what the data cannot say.
//
// Comparisons: all pairs of arms in one medium by one method; they are one family. The ratio that
// decides is of the cuts until half of an arm's edges have failed the test. A fit that is not
// usable yields arms and runs but no comparison. Method page: docs/methods/edge-lives.md
#pragma once

#include "base/seed.h"
#include "blunting/times/time_data.h"
#include "blunting/times/time_fit.h"
#include "materials/told_in.h"
#include "trials/trial.h"
#include "verdicts/family.h"
#include "verdicts/judgement.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::verdicts {

// The name by which judgements of edge lives are known, beside those of kinds of reading.
inline constexpr std::string_view kEdgeLives = "edge_life";

struct LivesQuestion {
  double worth_it_margin = 1.5;     // above 1
  std::optional<ClaimAbout> claim;  // as Question::claim
  std::vector<int> looks;           // as Question::looks
  materials::ToldIn told_in;        // likewise
};

[[nodiscard]] Judgement judge_lives(const trials::Trial& trial,
                                    const blunting::TimeData& data,
                                    const blunting::TimeFit& fit,
                                    const LivesQuestion& question,
                                    base::Seed seed);

// What is said of an arm of which no run was seen to fail; none of others.
[[nodiscard]] std::optional<std::string> known_from_below(const ArmResult& arm);

// All arms tested in one medium (index into RunGroups::media), with the draws of their cuts until
// half their edges fail; judgement: by judge_lives, whose arms the indices point to.
[[nodiscard]] Family family_of_tests(const Judgement& judgement,
                                     const blunting::TimeData& data,
                                     const blunting::TimeFit& fit,
                                     std::size_t medium,
                                     std::optional<ClaimAbout> claim);

}  // namespace keenfall::verdicts
