// Edges that were read against edges that were only tested: the cuts until a curve reaches the
// level that failing the test stands for, against the cuts until half the edges fail it.
//
// In: the fits of both, and their judgements, of one trial; the level (TimeData::level, times the
// start reading, above 1) is stated by a person and must be there. Out: one more judgement, holding
// the arms concerned. Comparisons: every arm that was read against every arm that was tested and
// not read, in one medium by one method; they are one family. A fit that is not usable yields no
// comparison. Method page: docs/methods/edge-lives.md
#pragma once

#include "base/seed.h"
#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "blunting/inference/model_spec.h"
#include "blunting/times/time_data.h"
#include "blunting/times/time_fit.h"
#include "trials/trial.h"
#include "verdicts/judge_lives.h"
#include "verdicts/judgement.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::verdicts {

// The name by which such a judgement is known, beside those of kinds of reading.
inline constexpr std::string_view kReadAndTested = "read_and_tested";

// What was fitted to the readings, and judged.
struct ReadEdges {
  const blunting::BluntingData& data;
  const blunting::BluntingFit& fit;
  const blunting::ModelSpec& model;
  const Judgement& judgement;
};

// What was fitted to the edge lives, and judged.
struct TestedEdges {
  const blunting::TimeData& data;
  const blunting::TimeFit& fit;
  const Judgement& judgement;
};

// One medium by one method in which some arms were read and others tested only.
struct ReadAndTestedArms {
  std::string medium_words;
  std::vector<std::size_t> read;    // indices into BluntingData::arms, at least one
  std::vector<std::size_t> tested;  // into TimeData::groups.arms, at least one; never read
};

[[nodiscard]] std::vector<ReadAndTestedArms> arms_read_and_tested(
    const blunting::BluntingData& read, const blunting::TimeData& tested);

// Requires a level and at least one medium of arms_read_and_tested.
[[nodiscard]] Judgement judge_read_and_tested(const trials::Trial& trial,
                                              const ReadEdges& read,
                                              const TestedEdges& tested,
                                              const LivesQuestion& question,
                                              base::Seed seed);

}  // namespace keenfall::verdicts
