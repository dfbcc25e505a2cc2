#include "notebook/plan_rules.h"

#include "base/plain_number.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

namespace keenfall::notebook {

namespace {

using Flaw = std::optional<base::Problem>;

base::Problem flaw(const std::string& sentence, const std::string& accepted) {
  return {.kind = base::ProblemKind::bad_value, .sentence = sentence, .accepted = accepted};
}

// Of a number that may be absent. `what`: "The stop level".
Flaw flaw_of_number(const std::string& what, const std::optional<double>& number, double above) {
  if (!number || (std::isfinite(*number) && *number > above)) return std::nullopt;
  return flaw(what + " is " + base::plain_number(*number) + ", and must be above " +
                  base::plain_number(above) + ".",
              "a number above " + base::plain_number(above));
}

Flaw flaw_of_count(const std::string& what, int count) {
  if (count >= 1) return std::nullopt;
  return flaw(what + " is " + std::to_string(count) + ", and must be 1 or more.",
              "a whole number from 1 on");
}

Flaw flaw_of_angle(const std::string& arm, const std::optional<trials::PerSideAngle>& angle) {
  constexpr double kRightAngleDeg = 90;
  if (!angle || (angle->deg > 0 && angle->deg < kRightAngleDeg)) return std::nullopt;
  return flaw("An angle of " + arm + " is " + base::plain_number(angle->deg) +
                  "° per side, which no edge has.",
              "degrees per side, between 0 and 90");
}

Flaw flaw_of_claim(const trials::Claim& claim) {
  constexpr double kEqual = 1;
  return flaw_of_number("The worth-it margin of a claim", claim.worth_it_margin, kEqual);
}

Flaw flaw_of_cutting(const trials::PlannedCutting& cutting) {
  const std::string& medium = cutting.medium.name;
  if (medium.empty()) return flaw("A way of cutting has no medium.", "what is cut, by name");
  if (auto found = flaw_of_number("The cut length in " + medium, cutting.method.cut_length_mm, 0)) {
    return found;
  }
  if (auto found = flaw_of_number("The edge used in " + medium, cutting.method.edge_used_mm, 0)) {
    return found;
  }
  const std::vector<double>& cuts = cutting.checkpoint_cuts;
  const bool are_counts =
      std::ranges::all_of(cuts, [](double count) { return std::isfinite(count) && count >= 0; });
  const bool rise = std::ranges::adjacent_find(cuts, std::greater_equal()) == cuts.end();
  if (are_counts && rise) return std::nullopt;
  return flaw("The checkpoints in " + medium + " do not rise from one to the next.",
              "rising numbers, the first one 0");
}

Flaw flaw_of_arm(const trials::PlannedArm& arm, const trials::Plan& plan) {
  if (arm.blade.empty()) return flaw("An arm has no blade.", "a blade of the kit, by name");
  if (arm.cutting >= plan.cuttings.size()) {
    return flaw("The arm of " + arm.blade + " is in a way of cutting that the plan has not.",
                "one of the plan's ways of cutting");
  }
  if (auto found = flaw_of_angle(arm.blade, arm.edge.bevel_angle)) return found;
  if (auto found = flaw_of_angle(arm.blade, arm.edge.apex_angle)) return found;
  return flaw_of_number(
      "The thickness behind the edge of " + arm.blade, arm.edge.thickness_behind_edge_mm, 0);
}

Flaw flaw_of_run(const trials::PlannedRun& run, const trials::Plan& plan) {
  if (run.arm >= plan.arms.size()) {
    return flaw("A planned run is of an arm that the plan has not.", "one of the plan's arms");
  }
  if (auto found = flaw_of_count("The block of a planned run", run.block)) return found;
  return flaw_of_count("The place of a planned run in the order of cutting", run.order);
}

Flaw flaw_of_reading(const trials::Plan& plan) {
  if (plan.reading.kind.empty()) {
    return flaw("The plan does not say what is read.", "a kind of reading: thread_push");
  }
  if (auto found = flaw_of_count("The number of readings at a checkpoint", plan.reading.repeats)) {
    return found;
  }
  if (!plan.start_gate) return std::nullopt;
  if (auto found = flaw_of_number(
          "The start reading that edges must have", plan.start_gate->target_reading, 0)) {
    return found;
  }
  return flaw_of_number(
      "What the start reading may differ by", plan.start_gate->tolerance_fraction, 0);
}

Flaw flaw_of_stop(const trials::StopRule& stop) {
  constexpr double kStart = 1;
  if (stop.level && stop.reading) {
    return flaw("The plan stops a run at a level and at a reading.", "one of the two");
  }
  if (auto found = flaw_of_number("The stop level", stop.level, kStart)) return found;
  if (auto found = flaw_of_number("The stop reading", stop.reading, 0)) return found;
  return flaw_of_number("The force cap", stop.force_cap_newton, 0);
}

template <class Parts, class FlawOf>
Flaw first_flaw(const Parts& parts, FlawOf flaw_of) {
  for (const auto& part : parts) {
    if (Flaw found = flaw_of(part)) return found;
  }
  return std::nullopt;
}

}  // namespace

std::optional<base::Problem> problem_of(const Asked& asked) {
  const trials::Plan& plan = asked.plan;
  if (auto found = first_flaw(asked.claims, flaw_of_claim)) return found;
  if (auto found = first_flaw(plan.cuttings, flaw_of_cutting)) return found;
  if (auto found = first_flaw(plan.arms, [&](const auto& arm) { return flaw_of_arm(arm, plan); })) {
    return found;
  }
  if (auto found = flaw_of_reading(plan)) return found;
  if (auto found = flaw_of_stop(plan.stop)) return found;
  if (auto found = flaw_of_count("The number of runs of each arm", plan.runs_each)) return found;
  if (auto found = first_flaw(plan.looks, [](int runs) {
        return flaw_of_count("The number of runs at a planned look", runs);
      })) {
    return found;
  }
  return first_flaw(plan.runs, [&](const auto& run) { return flaw_of_run(run, plan); });
}

std::optional<base::Problem> problem_of_sealing(const KeptPlan& plan, const std::string& trial) {
  const auto lacking = [&](const std::string& what, const std::string& accepted) {
    return base::Problem{.kind = base::ProblemKind::missing,
                         .sentence = "The plan of " + trial + " cannot be sealed: " + what + ".",
                         .accepted = accepted};
  };
  const bool is_asked = std::ranges::any_of(
      plan.claims, [](const trials::Claim& claim) { return !claim.words.empty(); });
  if (!is_asked) return lacking("it makes no claim", "a claim that could fail, in a sentence");
  if (plan.plan.arms.empty()) return lacking("it has no arm", "the blades that are compared");
  return std::nullopt;
}

}  // namespace keenfall::notebook
