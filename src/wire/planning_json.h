// What is answered while a trial is planned, as JSON: arms, checkpoints, the plan, what it costs,
// what it can find out and what was measured before. Values with their writers; each out: one JSON
// object in one line. Shapes: docs/wire/api.json.
//
// Of the eight verdicts a chance has each: those that say of the first arm that it lasts longer,
// those that say it of the last ("other"), the same, and not settled; they add up to 1.
#pragma once

#include "planning/assumptions.h"
#include "planning/chances.h"
#include "planning/cost.h"
#include "planning/own_repeatability.h"
#include "planning/runs_needed.h"
#include "planning/suggested_checkpoints.h"
#include "trials/plan.h"
#include "trials/trial.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::wire {

struct CostTold {
  planning::PlanCost cost;
  trials::Counted counted;
  materials::ToldIn told_in = {};
};

// What can be found out in one cutting, of its first arm against its last.
struct ChancesInCutting {
  std::size_t cutting = 0;  // index into Plan::cuttings
  std::string words;        // what is cut: "sisal"
  std::string first_arm;    // by its words
  std::string last_arm;
  planning::PlanChances chances;
  std::string sentence;
  planning::RunsNeeded runs_needed;
  std::string runs_needed_words;  // a sentence
};

struct ChancesTold {
  std::vector<ChancesInCutting> cuttings;  // none where nothing is compared
  int trials = 0;                          // imagined for each chance; 0: in closed form
  base::Seed seed;
  double worth_it_margin = 1.5;
  planning::Assumptions assumptions;
  std::string sentence;
  std::vector<std::string> rests_on;
};

// What was asked and planned for somebody.
struct MadePlan {
  trials::Plan plan;
  trials::Claim claim;
};

// How much the runs of one arm of a trial scatter, by readings of one kind.
struct MeasuredArm {
  std::string trial_uid;
  std::string trial;  // by name
  trials::Arm arm;
  std::string arm_words;  // "A", "A (17° per side)"
  std::string kind;       // of reading, by name
  trials::Counted counted;
  planning::OwnScatter scatter;
};

struct Measured {
  std::vector<MeasuredArm> arms;  // what is best assumed of a plan stands first
  std::string left_out;           // which trials were not looked at, a sentence; empty: all were
  materials::ToldIn told_in = {};
};

[[nodiscard]] std::string planned_arms_to_json(const std::vector<trials::PlannedArm>& arms,
                                               const materials::ToldIn& told = {});
[[nodiscard]] std::string checkpoints_to_json(const planning::SuggestedCheckpoints& suggested);
[[nodiscard]] std::string plan_to_json(const trials::Plan& plan,
                                       const materials::ToldIn& told = {});
[[nodiscard]] std::string made_plan_to_json(const MadePlan& made);
[[nodiscard]] std::string cost_to_json(const CostTold& told);
[[nodiscard]] std::string chances_to_json(const ChancesTold& told);
[[nodiscard]] std::string measured_to_json(const Measured& measured);

}  // namespace keenfall::wire
