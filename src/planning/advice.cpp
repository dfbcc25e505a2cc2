#include "planning/advice.h"

#include "base/plain_number.h"
#include "planning/imagined_trial.h"
#include "planning/read_scatter.h"
#include "planning/two_sample_chances.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace keenfall::planning {

namespace {

using trials::Plan;

// "1.25", "2": a ratio as it is said.
std::string as_ratio(double ratio) {
  const double rounded = std::round(ratio * (ratio < 2 ? 100 : 10)) / (ratio < 2 ? 100 : 10);
  return base::plain_number(rounded);
}

// To a tenth, upwards but for a hair, so that what is promised holds.
std::string shown_ratio(double ratio) { return as_ratio(std::ceil(10 * ratio - 0.2) / 10); }

// Collects what there is to say.
class Adviser {
 public:
  explicit Adviser(const Advised& advised) : advised_(advised), plan_(advised.plan) {}

  std::vector<Advice> all() {
    on_comparing_nothing();
    on_what_runs_can_show();
    on_calling_the_same();
    on_what_else_differs();
    on_specimens();
    on_widest_contrast();
    on_many_comparisons();
    on_order();
    on_checkpoints();
    on_gate_and_stop();
    on_repeats();
    on_long_blocks();
    return std::move(advice_);
  }

 private:
  void say(std::string sentence, std::string field) {
    advice_.push_back({.sentence = std::move(sentence), .field = std::move(field)});
  }

  [[nodiscard]] bool is_assumed_of(std::size_t cutting) const {
    return cutting < advised_.assumptions.cuttings.size();
  }

  [[nodiscard]] std::string name_of(std::size_t cutting) const {
    const std::string& name = plan_.cuttings[cutting].medium.name;
    return name.empty() ? "the medium" : name;
  }

  [[nodiscard]] std::string in_medium(std::size_t cutting) const {
    return plan_.cuttings.size() > 1 ? " in " + name_of(cutting) : "";
  }

  void on_comparing_nothing() {
    if (plan_.arms.size() != 1) return;
    say("One arm compares nothing: it measures how much your own runs scatter, which every later "
        "plan can rest on. Two arms or more in one medium make a comparison.",
        "arms");
  }

  // Where the least that shows is far from equal.
  void on_what_runs_can_show() {
    constexpr double kBigDifference = 1.5;  // common practice: what most would act on
    if (plan_.runs_each < 2) return;
    for (std::size_t c = 0; c < plan_.cuttings.size(); ++c) {
      const auto log_sd = read_scatter(plan_, advised_.assumptions, c);
      if (!log_sd || arms_of_cutting(plan_, c).size() < 2) continue;
      const auto least = smallest_ratio_shown(plan_.runs_each, *log_sd);
      if (least && *least < kBigDifference) continue;
      const std::string runs = std::to_string(plan_.runs_each) + " runs each";
      if (!least || *least > 10) {
        say(runs + " prove nothing but a blow-out" + in_medium(c) + ": plan 4 or more.",
            "runs_each");
        continue;
      }
      say(runs + " can only show big differences" + in_medium(c) + ": of edges that truly last " +
              shown_ratio(*least) + " times as long as others four of five such trials say so, " +
              "of smaller differences fewer.",
          "runs_each");
    }
  }

  void on_calling_the_same() {
    constexpr double kOutOfReach = 0.5;
    constexpr int kMostRunsSaid = 60;
    if (plan_.runs_each < 2) return;
    for (const trials::Claim& claim : advised_.claims) {
      if (!(claim.worth_it_margin > 1)) continue;
      for (std::size_t c = 0; c < plan_.cuttings.size(); ++c) {
        const auto log_sd = read_scatter(plan_, advised_.assumptions, c);
        if (!log_sd || arms_of_cutting(plan_, c).size() < 2) continue;
        const TwoSamples samples{.runs_each = plan_.runs_each,
                                 .log_sd = *log_sd,
                                 .worth_it_margin = claim.worth_it_margin};
        const double chance = two_sample_chances(
            samples)[static_cast<std::size_t>(verdicts::Verdict::practically_the_same)];
        if (chance >= kOutOfReach) continue;
        const auto enough = fewest_runs_to_call_the_same(samples, kMostRunsSaid);
        say("Practically the same within " + as_ratio(claim.worth_it_margin) +
                " is out of reach with " + std::to_string(plan_.runs_each) + " runs each" +
                in_medium(c) + ": even of edges that last equally long only about " +
                std::to_string(static_cast<int>(std::round(100 * chance))) +
                " in 100 such trials would say so. " +
                (enough ? "About " + std::to_string(*enough) + " runs each would."
                        : "More than " + std::to_string(kMostRunsSaid) + " would be needed."),
            "runs_each");
      }
    }
  }

  // Two arms of one medium that differ in blade and in edge, where no crossing tells them apart.
  void on_what_else_differs() {
    for (std::size_t c = 0; c < plan_.cuttings.size(); ++c) {
      const std::vector<trials::Arm> arms = arms_of_cutting(plan_, c);
      const auto has = [&arms](const std::string& blade, const trials::EdgePreparation& edge) {
        return std::ranges::any_of(
            arms, [&](const trials::Arm& arm) { return arm.blade == blade && arm.edge == edge; });
      };
      for (std::size_t one = 0; one < arms.size(); ++one) {
        for (std::size_t other = one + 1; other < arms.size(); ++other) {
          const trials::Arm& a = arms[one];
          const trials::Arm& b = arms[other];
          if (a.blade == b.blade || a.edge == b.edge) continue;
          if (has(a.blade, b.edge) || has(b.blade, a.edge)) continue;
          say(a.blade + " and " + b.blade + " differ in their edges too" + in_medium(c) +
                  ": whichever lasts longer, whether by the steel or by the edge cannot be told. "
                  "Cut both with one edge as well, or take the answer as blade with edge.",
              "arms");
          return;  // one example is enough
        }
      }
    }
  }

  void on_specimens() {
    std::vector<std::string> blades;
    for (const trials::PlannedArm& arm : plan_.arms) {
      if (std::ranges::count(blades, arm.blade) == 0) blades.push_back(arm.blade);
    }
    if (blades.size() < 2) return;
    const bool has_several = std::ranges::all_of(blades, [this](const std::string& blade) {
      const auto found = std::ranges::find(advised_.kit.blades, blade, &trials::Blade::name);
      return found != advised_.kit.blades.end() && found->specimens.size() > 1;
    });
    if (has_several) return;
    say("With one piece of each blade the answer speaks of these blades, not of their steels: that "
        "takes several pieces of every blade.",
        "runs");
  }

  void on_widest_contrast() {
    for (std::size_t c = 0; c < plan_.cuttings.size(); ++c) {
      const std::size_t arms = arms_of_cutting(plan_, c).size();
      if (arms < 3) continue;
      say("Begin with the two of the " + std::to_string(arms) + " arms" + in_medium(c) +
              " that should differ most: the widest contrast needs the fewest runs, and if it does "
              "not show, the others will not.",
          "arms");
      return;
    }
  }

  void on_many_comparisons() {
    constexpr std::size_t kManyArms = 5;
    for (std::size_t c = 0; c < plan_.cuttings.size(); ++c) {
      const std::size_t arms = arms_of_cutting(plan_, c).size();
      if (arms < kManyArms) continue;
      say(std::to_string(arms) + " arms" + in_medium(c) + " make " +
              std::to_string(arms * (arms - 1) / 2) +
              " comparisons, and the intervals of all must hold at once: they are wider than those "
              "of two arms.",
          "arms");
    }
  }

  void on_order() {
    if (plan_.arms.size() < 2 || !plan_.runs.empty()) return;
    say("The runs are in no order yet: shuffle them in blocks, so that stones, lots and hands that "
        "change over the days meet every arm alike.",
        "runs");
  }

  void on_checkpoints() {
    for (std::size_t c = 0; c < plan_.cuttings.size(); ++c) {
      const std::vector<double>& cuts = plan_.cuttings[c].checkpoint_cuts;
      if (!is_assumed_of(c) || cuts.empty()) continue;
      const double half = advised_.assumptions.cuttings[c].half_keenness_cuts;
      const auto either_side = [&cuts](double at) {
        const auto before = std::ranges::count_if(cuts, [at](double x) { return x > 0 && x < at; });
        const auto after = std::ranges::count_if(cuts, [at](double x) { return x > at; });
        return std::min(before, after);
      };
      if (either_side(half) >= 2) continue;
      say("Half keenness is expected at about " +
              so_many(base::with_figures(half, 2), plan_.counted) + in_medium(c) +
              "; two checkpoints either side of it tell it well, and here there are fewer.",
          "cuttings[" + std::to_string(c) + "].checkpoint_cuts");
    }
  }

  void on_gate_and_stop() {
    if (plan_.arms.empty()) return;
    if (!plan_.start_gate) {
      say("There is no start gate: edges that begin unequally keen make a blade seem to last "
          "longer "
          "or shorter than it does. Say what an edge must read before its run.",
          "start_gate");
    }
    if (!plan_.stop.level && !plan_.stop.reading) {
      say("Nothing stops a run before its last checkpoint; 4 times the start reading is usual, and "
          "saves cuts that tell nothing more.",
          "stop");
    }
    if (!plan_.stop.force_cap_newton) {
      say("A blunt edge slips: say the largest force you will use, and stop a run there.",
          "stop.force_cap_newton");
    }
  }

  void on_repeats() {
    constexpr int kFewRepeats = 3;
    constexpr int kManyRepeats = 12;
    const int repeats = plan_.reading.repeats;
    if (repeats >= 1 && repeats < kFewRepeats) {
      say("With " + std::to_string(repeats) + (repeats == 1 ? " reading" : " readings") +
              " at a checkpoint a slip cannot be told from a blunt edge; 5 to 7 are usual.",
          "reading.repeats");
    } else if (repeats > kManyRepeats) {
      say(std::to_string(repeats) +
              " readings at a checkpoint tell hardly more than 7: runs scatter more than readings "
              "by then. More runs tell more.",
          "reading.repeats");
    }
  }

  void on_long_blocks() {
    const bool is_all_assumed =
        advised_.assumptions.cuttings.size() == plan_.cuttings.size() && plan_.runs_each > 0;
    if (!is_all_assumed || plan_.arms.empty()) return;
    const PlanCost cost = cost_of(plan_, advised_.assumptions, advised_.times);
    if (cost.hours_per_block.expected <= advised_.times.hours_per_evening) return;
    const double hours = cost.hours_per_block.expected;
    const double evening = advised_.times.hours_per_evening;
    say("A block takes about " + hours_in_words({.expected = hours, .most = hours}) +
            ", more than an evening of " + hours_in_words({.expected = evening, .most = evening}) +
            ": what changes overnight then falls within the block. Fewer arms make shorter blocks.",
        "arms");
  }

  const Advised& advised_;
  const Plan& plan_;
  std::vector<Advice> advice_;
};

}  // namespace

std::vector<Advice> advice_on(const Advised& advised) { return Adviser(advised).all(); }

}  // namespace keenfall::planning
