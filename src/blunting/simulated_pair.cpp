#include "blunting/simulated_pair.h"

#include "base/require.h"

#include <cmath>
#include <cstddef>
#include <numeric>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::blunting {

namespace {

constexpr double kStartGf = 104;
constexpr double kHalfKeennessOfB = 40;

// Makes one trial, run after run, from one stream of chance.
class PairMaker {
 public:
  PairMaker(const Truth& truth, std::uint64_t seed)
      : truth_(truth), random_({seed}, 0), media_(truth.run_scatter_manila ? 2 : 1) {}

  trials::Trial made() {
    shuffle_order();
    for (int b = 0; b < truth_.blocks; ++b) {
      blocks_.push_back(truth_.block_scatter * random_.normal());
    }
    for (int medium = 0; medium < media_; ++medium) {
      for (const char* blade : {"A", "B"}) add_arm(blade, medium);
    }
    if (truth_.outlier_ratio != 1) misread_one();
    return std::move(trial_);
  }

 private:
  void shuffle_order() {
    order_.resize(2 * static_cast<std::size_t>(media_) *
                  static_cast<std::size_t>(truth_.runs_each));
    std::iota(order_.begin(), order_.end(), 1);
    for (std::size_t i = order_.size(); truth_.order_drift != 0 && i > 1; --i) {
      const auto other = static_cast<std::size_t>(random_.uniform() * static_cast<double>(i));
      std::swap(order_[i - 1], order_[other]);
    }
  }

  void add_arm(const std::string& blade, int medium) {
    std::vector<double> pieces;
    for (int i = 0; i < truth_.specimens_each; ++i) {
      pieces.push_back(truth_.specimen_scatter * random_.normal());
    }
    for (int i = 0; i < truth_.runs_each; ++i) {
      trials::Run run{
          .name = std::to_string(i),
          .arm = {.blade = blade, .medium = {.name = medium == 0 ? "sisal" : "manila"}}};
      const int place = order_[trial_.runs.size()];
      LogLogistic curve = curve_of_run(blade, medium, place);
      if (truth_.order_drift != 0) run.order = place;
      if (!pieces.empty()) {
        const auto piece = static_cast<std::size_t>(i % truth_.specimens_each);
        run.specimen = std::to_string(piece + 1);
        curve.log_half_keenness += pieces[piece];
      }
      if (!blocks_.empty()) {
        run.block = std::to_string(i % truth_.blocks + 1);
        curve.log_half_keenness += blocks_[static_cast<std::size_t>(i % truth_.blocks)];
      }
      run.readings = simulated_readings(curve,
                                        {.checkpoints = {0, 1, 3, 7, 15, 31, 63, 127},
                                         .repeats = 3,
                                         .stop_level = truth_.stop_level},
                                        truth_.noise,
                                        random_);
      add_slips(run);
      trial_.runs.push_back(std::move(run));
    }
  }

  LogLogistic curve_of_run(const std::string& blade, int medium, int place) {
    LogLogistic curve = true_curve(truth_, blade);
    double scatter =
        blade == "B" ? truth_.run_scatter_b.value_or(truth_.run_scatter) : truth_.run_scatter;
    if (medium > 0) scatter = *truth_.run_scatter_manila;
    curve.log_half_keenness += scatter * unit_error(truth_.run_tail_degrees_of_freedom, random_);
    const double start_error = truth_.start_scatter * random_.normal();
    curve.log_start += start_error;
    curve.log_half_keenness +=
        truth_.start_effect * start_error +
        truth_.order_drift * ((place - 1.0) / (static_cast<double>(order_.size()) - 1) - 0.5);
    if (truth_.shape_scatter > 0) {
      curve.shape *= std::exp(truth_.shape_scatter * random_.normal());
    }
    return curve;
  }

  void add_slips(trials::Run& run) {
    if (truth_.slip_every <= 0) return;
    for (trials::Reading& reading : run.readings) {
      if (std::fmod(++readings_, truth_.slip_every) == 0) reading.reading *= 10;
    }
  }

  void misread_one() {
    trials::Run& run = trial_.runs[random_.below(trial_.runs.size())];
    trials::Reading& reading = run.readings[random_.below(run.readings.size())];
    reading.reading *= random_.below(2) == 0 ? truth_.outlier_ratio : 1 / truth_.outlier_ratio;
  }

  const Truth& truth_;
  numerics::RandomStream random_;
  int media_;
  std::vector<int> order_;
  std::vector<double> blocks_;
  double readings_ = 0;
  trials::Trial trial_{
      .blades = {{.name = "A"}, {.name = "B"}},
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
};

}  // namespace

trials::Trial simulated(const Truth& truth, std::uint64_t seed) {
  base::require(truth.runs_each >= 1 && truth.ratio > 0 && truth.outlier_ratio > 0,
                "a simulated pair has runs, and ratios above zero");
  return PairMaker(truth, seed).made();
}

LogLogistic true_curve(const Truth& truth, std::string_view blade) {
  const bool is_a = blade == "A";
  return {.log_start = std::log(kStartGf * (is_a ? truth.start_ratio : 1)),
          .log_half_keenness = std::log(kHalfKeennessOfB * (is_a ? truth.ratio : 1)),
          .shape = is_a ? 0.7 : 0.75};
}

}  // namespace keenfall::blunting
