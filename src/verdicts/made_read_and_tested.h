// For tests: a trial of which some edges were read and others only tried by a test, both made from
// the same blunting curves, and its judgement.
#pragma once

#include "blunting/curves/log_logistic.h"
#include "blunting/simulated_run.h"
#include "verdicts/judge.h"
#include "verdicts/read_and_tested.h"

#include <cmath>
#include <string>
#include <vector>

namespace keenfall::verdicts::testing {

struct EdgeTruth {
  std::string blade;
  double half_keenness = 40;
  double shape = 0.7;
  bool is_read = true;
  bool is_tested = false;
  std::string medium = "sisal";
};

struct TrialTruth {
  std::vector<EdgeTruth> edges;
  double level = 3;  // failing the test: this many times the start
  int runs_each = 6;
  double run_scatter = 0.2;
  double last_checkpoint = 127;
  double try_every = 1.2;  // the next try comes after so many times the cuts
};

inline double log_cuts_until_failing(const EdgeTruth& edge, double level) {
  return std::log(edge.half_keenness) + std::log(level - 1) / edge.shape;
}

// Between which two tries the edge fell to its level.
inline trials::EdgeLife life_between_tries(double cuts, double try_every, double level) {
  const double tries = std::floor(std::log(cuts) / std::log(try_every));
  return {.test = "paper",
          .lasted_cuts = std::pow(try_every, tries),
          .failed_by_cuts = std::pow(try_every, tries + 1),
          .level = level};
}

inline trials::Trial read_and_tested(const TrialTruth& truth, std::uint64_t seed) {
  numerics::RandomStream random({seed}, 0);
  trials::Trial trial{
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  for (const EdgeTruth& edge : truth.edges) {
    if (trials::find_blade(trial, edge.blade) == nullptr) {
      trial.blades.push_back({.name = edge.blade});
    }
    for (int r = 0; r < truth.runs_each; ++r) {
      trials::Run run{.name = std::to_string(r + 1),
                      .arm = {.blade = edge.blade, .medium = {.name = edge.medium}}};
      const blunting::LogLogistic curve{
          std::log(104) + 0.06 * random.normal(),
          std::log(edge.half_keenness) + truth.run_scatter * random.normal(),
          edge.shape};
      std::vector<double> checkpoints;
      for (int cuts = 0; cuts <= truth.last_checkpoint; cuts = 2 * cuts + 1) {
        checkpoints.push_back(cuts);
      }
      if (edge.is_read) {
        run.readings = blunting::simulated_readings(
            curve, {.checkpoints = checkpoints, .repeats = 3}, {.reading_scatter = 0.08}, random);
      }
      if (edge.is_tested) {
        const double cuts = std::exp(blunting::log_cuts_to_level(curve, truth.level));
        run.edge_lives = {life_between_tries(cuts, truth.try_every, truth.level)};
      }
      trial.runs.push_back(std::move(run));
    }
  }
  return trial;
}

inline Judgement judged_both_ways(const trials::Trial& trial,
                                  const LivesQuestion& question,
                                  const blunting::SamplingOptions& sampling = {}) {
  const base::Seed seed{3};
  const auto model = blunting::default_model();
  const auto readings = blunting::prepare(trial, blunting::fits_of(trial)[0], model.errors);
  const auto curves = blunting::fit_blunting(
      *readings, model, sampling, seed, base::one_thread(), base::unwatched());
  const auto lives = blunting::prepare_times(trial, blunting::tests_of(trial)[0]);
  const auto times =
      blunting::fit_times(*lives, sampling, seed, base::one_thread(), base::unwatched());
  const Judgement read = judge(trial, *readings, *curves, {}, seed);
  const Judgement tested = judge_lives(trial, *lives, *times, question, seed);
  return judge_read_and_tested(
      trial,
      {.data = *readings, .fit = *curves, .model = model, .judgement = read},
      {.data = *lives, .fit = *times, .judgement = tested},
      question,
      seed);
}

}  // namespace keenfall::verdicts::testing
