#include "trust/measuring/looks.h"

#include "base/plain_number.h"
#include "blunting/inference/blunting_data.h"
#include "blunting/quick/quick_fit.h"
#include "blunting/simulated_pair.h"
#include "numerics/summaries.h"
#include "trust/measuring/text_hash.h"
#include "verdicts/planned_looks.h"

#include <cmath>

namespace keenfall::trust {

namespace {

std::vector<LooksCell> all_looks_cells() {
  return {{.name = "looks-3-6-9", .about = "looked at after 3, 6 and 9 runs", .looks = {3, 6, 9}},
          {.name = "looks-3-6-9-careful",
           .about = "the same, runs scatter by 0.15",
           .looks = {3, 6, 9},
           .run_scatter = 0.15},
          {.name = "looks-3-6-9-careless",
           .about = "the same, runs scatter by 0.40",
           .looks = {3, 6, 9},
           .run_scatter = 0.40},
          {.name = "looks-3-to-12",
           .about = "looked at after every run from the third to the twelfth",
           .looks = {3, 4, 5, 6, 7, 8, 9, 10, 11, 12}}};
}

// The trial as it stood when each blade had so many runs.
trials::Trial first_runs(const trials::Trial& whole, int runs_each) {
  trials::Trial trial = whole;
  trial.runs.clear();
  const auto each = whole.runs.size() / whole.blades.size();
  for (std::size_t i = 0; i < whole.runs.size(); ++i) {
    if (i % each < static_cast<std::size_t>(runs_each)) trial.runs.push_back(whole.runs[i]);
  }
  return trial;
}

numerics::Interval ratio_now(const trials::Trial& trial) {
  const blunting::ModelSpec spec = blunting::default_model();
  const auto data = blunting::prepare(trial, {.kind = "thread_push", .thread = ""}, spec.errors);
  const auto arms = blunting::quick_fit(*data, spec).arms;
  blunting::Draws log_ratio = arms[0].log_half_keenness;
  for (std::size_t d = 0; d < log_ratio.size(); ++d) log_ratio[d] -= arms[1].log_half_keenness[d];
  return numerics::exp_of(numerics::interval_of(std::move(log_ratio)));
}

// What was said at one look or more.
struct SeenAtLooks {
  bool longer_or_shorter = false;
  bool the_same = false;
  bool covers = true;  // at every look

  void look(const verdicts::RatioBounds& bounds, double truth) {
    using enum verdicts::Verdict;
    const verdicts::Verdict verdict = verdict_on(bounds, kMargin);
    the_same = the_same || verdict == practically_the_same;
    longer_or_shorter =
        longer_or_shorter || (verdict != practically_the_same && verdict != not_settled);
    covers = covers && bounds.lo95 <= truth && truth <= bounds.hi95;
  }
  void count(Sums& sums, const std::string& which) const {
    add(sums, which + std::string(counted::kLongerOrShorter), longer_or_shorter ? 1 : 0);
    add(sums, which + std::string(counted::kTheSame), the_same ? 1 : 0);
    add(sums, which + std::string(counted::kCoversHalf), covers ? 1 : 0);
  }
};

}  // namespace

std::span<const LooksCell> looks_cells() {
  static const std::vector<LooksCell> all = all_looks_cells();
  return all;
}

std::string definition_of(const LooksCell& cell) {
  std::string text = std::string(cell.name) + ":";
  for (const int runs : cell.looks) text += " " + std::to_string(runs);
  return text + " run_scatter " + base::plain_number(cell.run_scatter);
}

Sums looks_sums(const LooksCell& cell, TrueRatio ratio, const Batch& batch) {
  const verdicts::LookStretch stretch = verdicts::stretch_for_looks({.runs_each = cell.looks}, {1});
  const double truth = ratio == TrueRatio::margin ? kMargin : 1;
  const std::uint64_t first_seed =
      text_hash(cell.name) + (ratio == TrueRatio::margin ? 1'000'000'000ULL : 0) + batch.first;
  Sums sums;
  for (int t = 0; t < batch.trials; ++t) {
    const trials::Trial whole = blunting::simulated({.ratio = truth,
                                                     .runs_each = cell.looks.back(),
                                                     .run_scatter = cell.run_scatter,
                                                     .stop_level = {}},
                                                    first_seed + static_cast<std::uint64_t>(t));
    SeenAtLooks planned;
    SeenAtLooks unstretched;
    for (const int runs_each : cell.looks) {
      const numerics::Interval now = ratio_now(first_runs(whole, runs_each));
      unstretched.look(verdicts::bounds_of(now), truth);
      planned.look(stretched(verdicts::bounds_of(now), now.median, stretch), truth);
    }
    add(sums, "trials");
    planned.count(sums, "");
    unstretched.count(sums, "unstretched ");
  }
  return sums;
}

}  // namespace keenfall::trust
