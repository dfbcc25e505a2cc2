// A trial judged by the quick engine and the rules of the verdicts, for who asks thousands of
// times.
//
// The same model, the same place to compare at, the same intervals that hold for all pairs of arms
// together as in a judgement (verdicts/compare.h); nothing else of a judgement is made. About two
// milliseconds for two edges with six runs each.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "trials/trial.h"
#include "verdicts/judge.h"
#include "verdicts/verdict.h"

#include <optional>

namespace keenfall::planning {

// Of one arm against another, in a trial whose arms are all compared in one medium.
struct AskedPair {
  trials::Arm a;
  trials::Arm b;
};

struct QuickRatio {
  double median = 0;  // a over b
  verdicts::RatioBounds bounds;
};

// By the default model. key: of readings that the trial has. question.looks is not heeded (stretch
// the bounds). Absent where an arm of the pair has no run that tells anything.
[[nodiscard]] std::optional<QuickRatio> quick_ratio(const trials::Trial& trial,
                                                    const blunting::SeriesKey& key,
                                                    const verdicts::Question& question,
                                                    const AskedPair& pair);

}  // namespace keenfall::planning
