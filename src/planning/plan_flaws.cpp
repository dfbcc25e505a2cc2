#include "planning/plan_flaws.h"

#include "base/plain_number.h"
#include "planning/crossed_arms.h"
#include "planning/shuffled_order.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace keenfall::planning {

namespace {

using base::Problem;
using base::ProblemKind;
using trials::Plan;
using Flaws = std::vector<Problem>;

std::string numbered(const std::string& list, std::size_t number, const std::string& field = "") {
  const std::string item = list + "[" + std::to_string(number) + "]";
  return field.empty() ? item : item + "." + field;
}

std::string listed(const std::vector<double>& numbers) {
  std::string list;
  for (const double number : numbers) {
    if (!list.empty()) list += ' ';
    list += base::plain_number(number);
  }
  return list;
}

bool rises(const auto& numbers) {
  return std::ranges::adjacent_find(numbers, std::ranges::greater_equal{}) == numbers.end();
}

void add(
    Flaws& flaws, ProblemKind kind, std::string sentence, base::Place place, std::string accepted) {
  flaws.push_back({.kind = kind,
                   .sentence = std::move(sentence),
                   .place = std::move(place),
                   .accepted = std::move(accepted)});
}

void add_flaws_of_claims(Flaws& flaws, std::span<const trials::Claim> claims) {
  if (claims.empty()) {
    add(flaws,
        ProblemKind::missing,
        "Nothing is claimed yet: say first what you expect, so that it could fail.",
        {.column = "claims"},
        "one claim or more, such as: C outlasts A in new matting by half at least");
  }
  for (std::size_t c = 0; c < claims.size(); ++c) {
    if (claims[c].words.empty()) {
      add(flaws,
          ProblemKind::missing,
          "A claim has no words.",
          {.column = numbered("claims", c, "words")},
          "a sentence that could turn out false");
    }
    if (claims[c].worth_it_margin > 1 && claims[c].worth_it_margin <= 100) continue;
    add(flaws,
        ProblemKind::bad_value,
        "The worth-it margin is the ratio of lasting below which you would not act; " +
            base::plain_number(claims[c].worth_it_margin) + " is none.",
        {.column = numbered("claims", c, "worth_it_margin"),
         .found = base::plain_number(claims[c].worth_it_margin)},
        "a ratio above 1, up to 100; 1.5 is usual");
  }
}

void add_flaws_of_cuttings(Flaws& flaws, const Plan& plan) {
  if (plan.cuttings.empty()) {
    add(flaws,
        ProblemKind::missing,
        "Nothing is cut yet: the plan has no medium.",
        {.column = "cuttings"},
        "one medium or more, with the way it is cut");
  }
  for (std::size_t c = 0; c < plan.cuttings.size(); ++c) {
    const trials::PlannedCutting& cutting = plan.cuttings[c];
    const std::vector<double>& cuts = cutting.checkpoint_cuts;
    if (cutting.medium.name.empty()) {
      add(flaws,
          ProblemKind::missing,
          "What is cut has no name.",
          {.column = numbered("cuttings", c, "medium")},
          "the medium's name, such as new sisal matting");
    }
    const base::Place place{.column = numbered("cuttings", c, "checkpoint_cuts"),
                            .found = listed(cuts)};
    const std::string accepted = "numbers that rise from 0, such as 0 1 3 7 15 31 63 127";
    if (cuts.size() < 3) {
      add(flaws,
          ProblemKind::missing,
          "A blunting curve needs readings at three checkpoints at least: the start and two more.",
          place,
          accepted);
    } else if (cuts.front() != 0) {
      add(flaws,
          ProblemKind::bad_value,
          "The first checkpoint is the start, before any cut; here it is " +
              base::plain_number(cuts.front()) + ".",
          place,
          accepted);
    } else if (!rises(cuts) || !std::ranges::all_of(cuts, [](double x) { return x <= 1e9; })) {
      add(flaws, ProblemKind::bad_value, "Checkpoints must rise.", place, accepted);
    }
  }
}

void add_flaws_of_number_of_arms(Flaws& flaws, const Plan& plan, Purpose purpose) {
  if (plan.arms.empty()) {
    add(flaws,
        ProblemKind::missing,
        "The plan compares nothing yet: it has no arm.",
        {.column = "arms"},
        "two arms or more: a blade with its edge, in a medium");
  } else if (plan.arms.size() == 1 && purpose == Purpose::to_compare) {
    add(flaws,
        ProblemKind::missing,
        "The plan has one arm only, so there is nothing to compare it with.",
        {.column = "arms"},
        "two arms or more in one medium; to see how much your own runs scatter, the trial of your "
        "own repeatability");
  } else if (plan.arms.size() > kMostArms) {
    add(flaws,
        ProblemKind::too_large,
        "The plan has " + std::to_string(plan.arms.size()) + " arms, more than a trial can hold.",
        {.column = "arms"},
        std::to_string(kMostArms) + " arms or fewer");
  }
}

void add_flaws_of_arms(Flaws& flaws, const Plan& plan, const trials::Kit& kit) {
  std::set<std::string> asked_after;
  for (std::size_t a = 0; a < plan.arms.size(); ++a) {
    const trials::PlannedArm& arm = plan.arms[a];
    if (arm.cutting >= plan.cuttings.size()) {
      add(flaws,
          ProblemKind::bad_value,
          "An arm points at a medium that the plan does not have.",
          {.column = numbered("arms", a, "cutting"), .found = std::to_string(arm.cutting)},
          "one of the plan's cuttings, counted from 0");
    }
    if (std::count(plan.arms.begin(), plan.arms.begin() + static_cast<std::ptrdiff_t>(a), arm)) {
      add(flaws,
          ProblemKind::conflicting,
          "The blade " + arm.blade + " stands twice in the plan with the same edge and medium.",
          {.column = numbered("arms", a)},
          "each arm once; for more of its runs, more runs each");
    }
    const bool is_known = std::ranges::count(kit.blades, arm.blade, &trials::Blade::name) > 0;
    if (arm.blade.empty()) {
      add(flaws,
          ProblemKind::missing,
          "An arm has no blade.",
          {.column = numbered("arms", a, "blade")},
          "a blade's name");
    } else if (!kit.blades.empty() && !is_known && asked_after.insert(arm.blade).second) {
      add(flaws,
          ProblemKind::unknown_name,
          "The blade " + arm.blade + " is not in the kit.",
          {.column = numbered("arms", a, "blade"), .found = arm.blade},
          "a blade of the kit; or enter this one there");
    }
  }
}

// Every cutting has two arms, or those there are in it are compared with nothing.
void add_flaws_of_lonely_arms(Flaws& flaws, const Plan& plan) {
  if (plan.arms.size() < 2) return;
  for (std::size_t c = 0; c < plan.cuttings.size(); ++c) {
    const auto arms = std::ranges::count(plan.arms, c, &trials::PlannedArm::cutting);
    if (arms >= 2) continue;
    add(flaws,
        ProblemKind::missing,
        (arms == 0 ? "Nothing is compared in " : "One arm only is cut in ") +
            (plan.cuttings[c].medium.name.empty() ? "a medium of the plan"
                                                  : plan.cuttings[c].medium.name) +
            "; blades are compared within one medium.",
        {.column = numbered("cuttings", c)},
        "two arms or more in it, or the plan without it");
  }
}

void add_flaws_of_reading(Flaws& flaws, const Plan& plan, const trials::Kit& kit) {
  const trials::PlannedReading& reading = plan.reading;
  const trials::ReadingKind* kind = kind_read(plan, kit);
  if (kind == nullptr) {
    add(flaws,
        ProblemKind::unknown_name,
        "Nobody knows a kind of reading called " + reading.kind + ".",
        {.column = "reading.kind", .found = reading.kind},
        "thread_push, cord_draw or another known kind, or one of your own from the kit");
  } else if (kind->use != trials::ReadingUse::curve) {
    add(flaws,
        ProblemKind::unsuitable_data,
        "A " + kind->words + " has no blunting curve, so half keenness cannot be had from it.",
        {.column = "reading.kind", .found = reading.kind},
        "a kind of reading with a curve, such as thread_push");
  }
  if (reading.repeats < 1 || reading.repeats > 100) {
    add(flaws,
        ProblemKind::bad_value,
        "A checkpoint cannot be read " + std::to_string(reading.repeats) + " times.",
        {.column = "reading.repeats", .found = std::to_string(reading.repeats)},
        "1 to 100; 5 to 7 is usual");
  }
  if (!plan.start_gate) return;
  const trials::StartGate& gate = *plan.start_gate;
  if (!(gate.target_reading > 0) || !(gate.tolerance_fraction > 0 && gate.tolerance_fraction < 1)) {
    add(flaws,
        ProblemKind::bad_value,
        "The start gate says what an edge must read before its run; this one cannot be passed.",
        {.column = "start_gate"},
        "a reading above 0 and a tolerance between 0 and 1, such as 104 and 0.12");
  }
}

void add_flaws_of_stop(Flaws& flaws, const Plan& plan) {
  const trials::StopRule& stop = plan.stop;
  if (stop.level && stop.reading) {
    add(flaws,
        ProblemKind::conflicting,
        "A run stops at a level or at a reading; the plan has both.",
        {.column = "stop"},
        "one of the two");
  }
  if (stop.level && !(*stop.level > 1 && *stop.level <= 100)) {
    add(flaws,
        ProblemKind::bad_value,
        "A stop level is how many times its start an edge may read; " +
            base::plain_number(*stop.level) + " stops it before it is blunt.",
        {.column = "stop.level", .found = base::plain_number(*stop.level)},
        "a level above 1, up to 100; 4 is usual");
  }
  if (stop.reading && !(*stop.reading > 0 && std::isfinite(*stop.reading))) {
    add(flaws,
        ProblemKind::bad_value,
        "A stop reading must be above 0.",
        {.column = "stop.reading", .found = base::plain_number(*stop.reading)},
        "a reading in the unit that is read");
  }
  if (stop.force_cap_newton && !(*stop.force_cap_newton > 0)) {
    add(flaws,
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
    add(flaws,
        ProblemKind::bad_value,
        "Looks are numbers of runs of every arm; they must rise, from at least 2.",
        {.column = "looks", .found = found},
        "3 6 9, for example");
  } else if (plan.looks.back() > plan.runs_each) {
    add(flaws,
        ProblemKind::conflicting,
        "The last look is after " + std::to_string(plan.looks.back()) + " runs each, and only " +
            std::to_string(plan.runs_each) + " are planned.",
        {.column = "looks", .found = found},
        "looks up to the runs that are planned, or more runs");
  }
}

void add_flaws_of_runs(Flaws& flaws, const Plan& plan) {
  if (plan.runs_each < 2 || plan.runs_each > kMostRunsEach) {
    add(flaws,
        ProblemKind::bad_value,
        plan.runs_each == 1
            ? "With one run each nobody knows how much runs scatter, so nothing can be settled."
            : std::to_string(plan.runs_each) + " runs of each arm cannot be cut.",
        {.column = "runs_each", .found = std::to_string(plan.runs_each)},
        "2 runs each or more, up to " + std::to_string(kMostRunsEach) + "; better 4");
  }
  if (!plan.house_blade.empty() &&
      std::ranges::count(plan.arms, plan.house_blade, &trials::PlannedArm::blade) == 0) {
    add(flaws,
        ProblemKind::missing,
        "The house blade " + plan.house_blade + " is cut with in every block, but no arm has it.",
        {.column = "house_blade", .found = plan.house_blade},
        "a blade that an arm has, or none");
  }
}

// Each arm once a block, orders 1, 2, 3 ...; a plan that is not shuffled yet has no order.
void add_flaws_of_order(Flaws& flaws, const Plan& plan) {
  if (plan.runs.empty()) return;
  std::set<std::pair<int, std::size_t>> cut;
  bool holds =
      plan.runs.size() == plan.arms.size() * static_cast<std::size_t>(std::max(0, plan.runs_each));
  for (std::size_t r = 0; r < plan.runs.size(); ++r) {
    const trials::PlannedRun& run = plan.runs[r];
    holds = holds && run.order == static_cast<int>(r) + 1 && run.arm < plan.arms.size() &&
            run.block >= 1 && run.block <= plan.runs_each &&
            (r == 0 || run.block >= plan.runs[r - 1].block) &&
            cut.insert({run.block, run.arm}).second;
  }
  if (holds) return;
  add(flaws,
      ProblemKind::conflicting,
      "The order of cutting does not belong to this plan: every block has each arm once.",
      {.column = "runs"},
      "the runs shuffled anew");
}

}  // namespace

const trials::ReadingKind* kind_read(const Plan& plan, const trials::Kit& kit) {
  const auto own = std::ranges::find(kit.kinds, plan.reading.kind, &trials::ReadingKind::name);
  return own != kit.kinds.end() ? &*own : trials::find_reading_kind(plan.reading.kind);
}

std::vector<Problem> plan_flaws(const Plan& plan,
                                std::span<const trials::Claim> claims,
                                const trials::Kit& kit,
                                Purpose purpose) {
  Flaws flaws;
  add_flaws_of_claims(flaws, claims);
  add_flaws_of_cuttings(flaws, plan);
  add_flaws_of_number_of_arms(flaws, plan, purpose);
  add_flaws_of_arms(flaws, plan, kit);
  add_flaws_of_lonely_arms(flaws, plan);
  add_flaws_of_reading(flaws, plan, kit);
  add_flaws_of_stop(flaws, plan);
  add_flaws_of_runs(flaws, plan);
  add_flaws_of_looks(flaws, plan);
  add_flaws_of_order(flaws, plan);
  return flaws;
}

}  // namespace keenfall::planning
