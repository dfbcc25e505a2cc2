#include "planning/running_flaws.h"

#include "base/plain_number.h"
#include "planning/plan_flaws.h"
#include "planning/shuffled_order.h"

#include <cmath>
#include <set>
#include <utility>

namespace keenfall::planning {

namespace {

using base::ProblemKind;
using trials::Plan;

void add_flaws_of_reading(Flaws& flaws, const Plan& plan, const trials::Kit& kit) {
  const trials::PlannedReading& reading = plan.reading;
  const trials::ReadingKind* kind = kind_read(plan, kit);
  if (kind == nullptr) {
    add_flaw(flaws,
             ProblemKind::unknown_name,
             "Nobody knows a kind of reading called " + reading.kind + ".",
             {.column = "reading.kind", .found = reading.kind},
             "thread_push, cord_draw or another known kind, or one of your own from the kit");
  } else if (kind->use != trials::ReadingUse::curve) {
    add_flaw(flaws,
             ProblemKind::unsuitable_data,
             "A " + kind->words + " has no blunting curve, so half keenness cannot be had from it.",
             {.column = "reading.kind", .found = reading.kind},
             "a kind of reading with a curve, such as thread_push");
  }
  if (reading.repeats < 1 || reading.repeats > 100) {
    add_flaw(flaws,
             ProblemKind::bad_value,
             "A checkpoint cannot be read " + std::to_string(reading.repeats) + " times.",
             {.column = "reading.repeats", .found = std::to_string(reading.repeats)},
             "1 to 100; 5 to 7 is usual");
  }
  if (!plan.start_gate) return;
  const trials::StartGate& gate = *plan.start_gate;
  if (!(gate.target_reading > 0) || !(gate.tolerance_fraction > 0 && gate.tolerance_fraction < 1)) {
    add_flaw(
        flaws,
        ProblemKind::bad_value,
        "The start gate says what an edge must read before its run; this one cannot be passed.",
        {.column = "start_gate"},
        "a reading above 0 and a tolerance between 0 and 1, such as 104 and 0.12");
  }
}

void add_flaws_of_stop(Flaws& flaws, const Plan& plan) {
  const trials::StopRule& stop = plan.stop;
  if (stop.level && stop.reading) {
    add_flaw(flaws,
             ProblemKind::conflicting,
             "A run stops at a level or at a reading; the plan has both.",
             {.column = "stop"},
             "one of the two");
  }
  constexpr double kHighestLevel = 100;
  if (stop.level && !(*stop.level > 1 && *stop.level <= kHighestLevel)) {
    add_flaw(flaws,
             ProblemKind::bad_value,
             "A stop level is how many times its start an edge may read; " +
                 base::plain_number(*stop.level) +
                 (*stop.level > kHighestLevel ? " is more than any edge comes to."
                                              : " stops it before it is blunt."),
             {.column = "stop.level", .found = base::plain_number(*stop.level)},
             "a level above 1, up to 100; 4 is usual");
  }
  if (stop.reading && !(*stop.reading > 0 && std::isfinite(*stop.reading))) {
    add_flaw(flaws,
             ProblemKind::bad_value,
             "A stop reading must be a number above 0.",
             {.column = "stop.reading", .found = base::plain_number(*stop.reading)},
             "a reading in the unit that is read");
  }
  if (stop.force_cap_newton && !(*stop.force_cap_newton > 0)) {
    add_flaw(
        flaws,
        ProblemKind::bad_value,
        "A largest force must be above 0.",
        {.column = "stop.force_cap_newton", .found = base::plain_number(*stop.force_cap_newton)},
        "a force in newtons");
  }
}

void add_flaws_of_looks(Flaws& flaws, const Plan& plan) {
  if (plan.looks.empty()) return;
  std::string found;
  for (const int look : plan.looks) found += (found.empty() ? "" : " ") + std::to_string(look);
  if (!rises(plan.looks) || plan.looks.front() < 2) {
    add_flaw(flaws,
             ProblemKind::bad_value,
             "Looks are numbers of runs of every arm; they must rise, from at least 2.",
             {.column = "looks", .found = found},
             "3 6 9, for example");
  } else if (plan.looks.back() > plan.runs_each) {
    add_flaw(flaws,
             ProblemKind::conflicting,
             "The last look is after " + std::to_string(plan.looks.back()) +
                 " runs each, and only " + std::to_string(plan.runs_each) + " are planned.",
             {.column = "looks", .found = found},
             "looks up to the runs that are planned, or more runs");
  }
}

void add_flaws_of_runs(Flaws& flaws, const Plan& plan) {
  if (plan.runs_each < 2 || plan.runs_each > kMostRunsEach) {
    add_flaw(
        flaws,
        ProblemKind::bad_value,
        plan.runs_each == 1
            ? "With one run each nobody knows how much runs scatter, so nothing can be settled."
            : std::to_string(plan.runs_each) + " runs of each arm cannot be cut.",
        {.column = "runs_each", .found = std::to_string(plan.runs_each)},
        "2 runs each or more, up to " + std::to_string(kMostRunsEach) + "; better 4");
  }
  if (!plan.house_blade.empty() &&
      std::ranges::count(plan.arms, plan.house_blade, &trials::PlannedArm::blade) == 0) {
    add_flaw(
        flaws,
        ProblemKind::missing,
        "The house blade " + plan.house_blade + " is cut with in every block, but no arm has it.",
        {.column = "house_blade", .found = plan.house_blade},
        "a blade that an arm has, or none");
  }
}

// A plan that is not shuffled yet has no order.
void add_flaws_of_order(Flaws& flaws, const Plan& plan) {
  if (plan.runs.empty() || is_in_order(plan)) return;
  add_flaw(flaws,
           ProblemKind::conflicting,
           "The order of cutting does not belong to this plan: every block has each arm once.",
           {.column = "runs"},
           "the runs shuffled anew");
}

}  // namespace

bool is_in_order(const Plan& plan) {
  if (plan.runs.empty() || plan.runs.size() != plan.arms.size() * static_cast<std::size_t>(std::max(
                                                                      0, plan.runs_each))) {
    return false;
  }
  std::set<std::pair<int, std::size_t>> cut;
  for (std::size_t r = 0; r < plan.runs.size(); ++r) {
    const trials::PlannedRun& run = plan.runs[r];
    const bool is_of_the_plan =
        run.arm < plan.arms.size() && run.block >= 1 && run.block <= plan.runs_each;
    const bool is_in_its_place =
        run.order == static_cast<int>(r) + 1 && (r == 0 || run.block >= plan.runs[r - 1].block);
    if (!is_of_the_plan || !is_in_its_place || !cut.insert({run.block, run.arm}).second) {
      return false;
    }
  }
  return true;
}

void add_flaw(
    Flaws& flaws, ProblemKind kind, std::string sentence, base::Place place, std::string accepted) {
  flaws.push_back({.kind = kind,
                   .sentence = std::move(sentence),
                   .place = std::move(place),
                   .accepted = std::move(accepted)});
}

void add_flaws_of_running(Flaws& flaws, const Plan& plan, const trials::Kit& kit) {
  add_flaws_of_reading(flaws, plan, kit);
  add_flaws_of_stop(flaws, plan);
  add_flaws_of_runs(flaws, plan);
  add_flaws_of_looks(flaws, plan);
  add_flaws_of_order(flaws, plan);
}

}  // namespace keenfall::planning
