#include "planning/plan_flaws.h"

#include "base/plain_number.h"
#include "planning/crossed_arms.h"
#include "planning/running_flaws.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace keenfall::planning {

namespace {

using base::ProblemKind;
using trials::Plan;

constexpr double kFurthestCheckpoint = 1e9;  // a billion

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

void add_flaws_of_claims(Flaws& flaws, std::span<const trials::Claim> claims) {
  if (claims.empty()) {
    add_flaw(flaws,
             ProblemKind::missing,
             "Nothing is claimed yet: say first what you expect, so that it could fail.",
             {.column = "claims"},
             "one claim or more, such as: C outlasts A in new matting by half at least");
  }
  for (std::size_t c = 0; c < claims.size(); ++c) {
    if (claims[c].words.empty()) {
      add_flaw(flaws,
               ProblemKind::missing,
               "A claim has no words.",
               {.column = numbered("claims", c, "words")},
               "a sentence that could turn out false");
    }
    if (claims[c].worth_it_margin > 1 && claims[c].worth_it_margin <= 100) continue;
    add_flaw(flaws,
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
    add_flaw(flaws,
             ProblemKind::missing,
             "Nothing is cut yet: the plan has no medium.",
             {.column = "cuttings"},
             "one medium or more, with the way it is cut");
  }
  for (std::size_t c = 0; c < plan.cuttings.size(); ++c) {
    const trials::PlannedCutting& cutting = plan.cuttings[c];
    const std::vector<double>& cuts = cutting.checkpoint_cuts;
    if (cutting.medium.name.empty()) {
      add_flaw(flaws,
               ProblemKind::missing,
               "What is cut has no name.",
               {.column = numbered("cuttings", c, "medium")},
               "the medium's name, such as new sisal matting");
    }
    const base::Place place{.column = numbered("cuttings", c, "checkpoint_cuts"),
                            .found = listed(cuts)};
    const std::string accepted = "numbers that rise from 0, such as 0 1 3 7 15 31 63 127";
    if (cuts.size() < 3) {
      add_flaw(
          flaws,
          ProblemKind::missing,
          "A blunting curve needs readings at three checkpoints at least: the start and two more.",
          place,
          accepted);
    } else if (cuts.front() != 0) {
      add_flaw(flaws,
               ProblemKind::bad_value,
               "The first checkpoint is the start, before any cut; here it is " +
                   base::plain_number(cuts.front()) + ".",
               place,
               accepted);
    } else if (!rises(cuts)) {
      add_flaw(flaws, ProblemKind::bad_value, "Checkpoints must rise.", place, accepted);
    } else if (cuts.back() > kFurthestCheckpoint) {
      add_flaw(flaws,
               ProblemKind::bad_value,
               "The last checkpoint lies beyond a billion " + plan.counted.many +
                   ", further than any edge is cut.",
               place,
               accepted);
    }
  }
}

void add_flaws_of_number_of_arms(Flaws& flaws, const Plan& plan, Purpose purpose) {
  if (plan.arms.empty()) {
    add_flaw(flaws,
             ProblemKind::missing,
             "The plan compares nothing yet: it has no arm.",
             {.column = "arms"},
             "two arms or more: a blade with its edge, in a medium");
  } else if (plan.arms.size() == 1 && purpose == Purpose::to_compare) {
    add_flaw(
        flaws,
        ProblemKind::missing,
        "The plan has one arm only, so there is nothing to compare it with.",
        {.column = "arms"},
        "two arms or more in one medium; to see how much your own runs scatter, the trial of your "
        "own repeatability");
  } else if (plan.arms.size() > kMostArms) {
    add_flaw(
        flaws,
        ProblemKind::too_large,
        "The plan has " + std::to_string(plan.arms.size()) + " arms, more than a trial can hold.",
        {.column = "arms"},
        std::to_string(kMostArms) + " arms or fewer");
  }
}

void add_flaws_of_arms(Flaws& flaws, const Plan& plan, const trials::Kit& kit) {
  if (plan.arms.size() > kMostArms) return;  // too many to be gone through
  std::set<std::string> asked_after;
  for (std::size_t a = 0; a < plan.arms.size(); ++a) {
    const trials::PlannedArm& arm = plan.arms[a];
    if (arm.cutting >= plan.cuttings.size()) {
      add_flaw(flaws,
               ProblemKind::bad_value,
               "An arm points at a medium that the plan does not have.",
               {.column = numbered("arms", a, "cutting"), .found = std::to_string(arm.cutting)},
               "one of the plan's cuttings, counted from 0");
    }
    if (std::count(plan.arms.begin(), plan.arms.begin() + static_cast<std::ptrdiff_t>(a), arm) >
        0) {
      add_flaw(
          flaws,
          ProblemKind::conflicting,
          "The blade " + arm.blade + " stands twice in the plan with the same edge and medium.",
          {.column = numbered("arms", a)},
          "each arm once; for more of its runs, more runs each");
    }
    const bool is_known = std::ranges::count(kit.blades, arm.blade, &trials::Blade::name) > 0;
    if (arm.blade.empty()) {
      add_flaw(flaws,
               ProblemKind::missing,
               "An arm has no blade.",
               {.column = numbered("arms", a, "blade")},
               "a blade's name");
    } else if (!kit.blades.empty() && !is_known && asked_after.insert(arm.blade).second) {
      add_flaw(flaws,
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
    add_flaw(flaws,
             ProblemKind::missing,
             (arms == 0 ? "Nothing is compared in " : "One arm only is cut in ") +
                 (plan.cuttings[c].medium.name.empty() ? "a medium of the plan"
                                                       : plan.cuttings[c].medium.name) +
                 "; blades are compared within one medium.",
             {.column = numbered("cuttings", c)},
             "two arms or more in it, or the plan without it");
  }
}

}  // namespace

Purpose purpose_of(const Plan& plan) {
  return plan.arms.size() == 1 ? Purpose::own_repeatability : Purpose::to_compare;
}

const trials::ReadingKind* kind_read(const Plan& plan, const trials::Kit& kit) {
  const auto own = std::ranges::find(kit.kinds, plan.reading.kind, &trials::ReadingKind::name);
  return own != kit.kinds.end() ? &*own : trials::find_reading_kind(plan.reading.kind);
}

std::vector<base::Problem> plan_flaws(const Plan& plan,
                                      std::span<const trials::Claim> claims,
                                      const trials::Kit& kit,
                                      Purpose purpose) {
  Flaws flaws;
  add_flaws_of_claims(flaws, claims);
  add_flaws_of_cuttings(flaws, plan);
  add_flaws_of_number_of_arms(flaws, plan, purpose);
  add_flaws_of_arms(flaws, plan, kit);
  add_flaws_of_lonely_arms(flaws, plan);
  add_flaws_of_running(flaws, plan, kit);
  return flaws;
}

}  // namespace keenfall::planning
