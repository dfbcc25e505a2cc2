// What a plan costs: cuts, stock, readings, hours and evenings.
//
// As ranges, because runs stop early: expected is where an edge that lasts as expected is read at
// or beyond the stop level; at most is every run at its last checkpoint. Lengths in m, times in
// hours and minutes. Every constant is an input; the defaults are common practice without a source.
// Method page: docs/methods/planning.md
#pragma once

#include "materials/told_in.h"
#include "planning/assumptions.h"
#include "trials/counted.h"
#include "trials/plan.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::planning {

struct BenchTimes {
  double sharpening_minutes_per_run = 15;
  double seconds_per_cut = 4;
  double seconds_per_reading = 15;
  double hours_per_evening = 2.5;

  bool operator==(const BenchTimes&) const = default;
};

struct ExpectedAndMost {
  double expected = 0;
  double most = 0;

  bool operator==(const ExpectedAndMost&) const = default;
};

struct PlanCost {
  int runs = 0;
  int blocks = 0;
  ExpectedAndMost cuts;
  // Absent: how long a cut is is not said, or what is counted is a length or a time.
  std::optional<ExpectedAndMost> stock_m;
  ExpectedAndMost readings;
  ExpectedAndMost minutes_per_run;  // of the run that takes longest
  ExpectedAndMost hours_per_block;
  ExpectedAndMost hours;
  ExpectedAndMost evenings;           // whole blocks an evening where they fit in
  double blocks_per_evening = 1;      // expected; below 1 where a block takes several evenings
  std::vector<std::string> rests_on;  // what was taken for granted, in sentences

  bool operator==(const PlanCost&) const = default;
};

// The cost of a plan without arms, or whose arms have no checkpoints, is 0.
[[nodiscard]] PlanCost cost_of(const trials::Plan& plan,
                               const Assumptions& assumptions,
                               const BenchTimes& times = {});

// Numbers out of their ranges.
[[nodiscard]] std::vector<base::Problem> problems_of(const BenchTimes& times);

// "3200 m (at most 5100)"; unit may be empty.
[[nodiscard]] std::string in_words(const ExpectedAndMost& range, const std::string& unit);

// "34 minutes (at most 1.4 hours)": below an hour in minutes.
[[nodiscard]] std::string hours_in_words(const ExpectedAndMost& hours);

// "320 m (at most 510)", or in feet.
[[nodiscard]] std::string stock_in_words(const ExpectedAndMost& stock_m,
                                         const materials::ToldIn& told);

// "36 runs in 6 blocks: 3200 cuts (at most 5100), ..."
[[nodiscard]] std::string in_words(const PlanCost& cost,
                                   const trials::Counted& counted,
                                   const materials::ToldIn& told = {});

}  // namespace keenfall::planning
