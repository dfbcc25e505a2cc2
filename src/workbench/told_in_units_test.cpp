// The same trial told in other units comes to the same answer.

#include "blunting/simulated_run.h"
#include "workbench/judge_tables.h"
#include "workbench/report.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <string>
#include <vector>

namespace keenfall::workbench {
namespace {

constexpr double kNewtonPerGf = 9.80665e-3;  // exactly (NIST SP 811 B.8)

struct Made {
  double start = 100;  // gf, of edge B; A starts at 100
  double gf = 1;       // what a gf is written as
  std::string unit = "gf";
};

std::shared_ptr<const trials::Trial> a_trial(const Made& made) {
  numerics::RandomStream random({4}, 0);
  trials::Trial trial{
      .name = "bench",
      .blades = {{.name = "A"}, {.name = "B"}},
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = made.unit}}};
  for (const char* blade : {"A", "B"}) {
    for (const char* name : {"1", "2", "3", "4"}) {
      trials::Run run{.name = name,
                      .arm = {.blade = blade,
                              .edge = {.thickness_behind_edge_mm = 0.38},
                              .medium = {.name = "sisal"},
                              .method = {.cut_length_mm = 100}}};
      const double start = blade == std::string("A") ? 100 : made.start;
      const blunting::LogLogistic curve{std::log(start), std::log(20) + 0.2 * random.normal(), 0.8};
      run.readings = blunting::simulated_readings(
          curve, {.checkpoints = {0, 2, 8, 32, 64}, .repeats = 2}, {}, random);
      for (trials::Reading& reading : run.readings) reading.reading *= made.gf;
      trial.runs.push_back(std::move(run));
    }
  }
  return std::make_shared<const trials::Trial>(std::move(trial));
}

verdicts::Judgement quickly_judged(const std::shared_ptr<const trials::Trial>& trial,
                                   const JudgeOptions& options) {
  const auto fitted =
      fit_trial(trial, options, Engine::quick, base::one_thread(), base::unwatched());
  return judge_fitted(*fitted, options)->front();
}

const JudgeOptions kNewtonsAndInches{.told_in = {.force = "N", .length = "in"}};

TEST(ToldInOtherUnits, ReadingsAreConvertedAndNothingElse) {
  const auto trial = a_trial({});

  const auto recorded = quickly_judged(trial, {});
  const auto told = quickly_judged(trial, kNewtonsAndInches);

  EXPECT_EQ(told.unit, "N");
  ASSERT_EQ(told.arms.size(), 2U);
  EXPECT_NEAR(told.arms[0].start_reading->median / recorded.arms[0].start_reading->median,
              kNewtonPerGf,
              1e-9);
  EXPECT_NEAR(told.arms[0].curve.back().reading.hi95 / recorded.arms[0].curve.back().reading.hi95,
              kNewtonPerGf,
              1e-9);
  EXPECT_NEAR(told.arms[0].half_keenness->cuts.median,
              recorded.arms[0].half_keenness->cuts.median,
              1e-9 * recorded.arms[0].half_keenness->cuts.median);
  EXPECT_NEAR(told.comparisons[0].ratio.lo95, recorded.comparisons[0].ratio.lo95, 1e-9);
  EXPECT_EQ(told.comparisons[0].verdict, recorded.comparisons[0].verdict);
}

// By the engine itself: a table that was written in newtons.
TEST(ToldInOtherUnits, ItIsAsIfTheTableHadBeenWrittenSo) {
  const auto told = quickly_judged(a_trial({}), kNewtonsAndInches);
  const auto written = quickly_judged(a_trial({.gf = kNewtonPerGf, .unit = "N"}), {});

  EXPECT_NEAR(told.arms[0].start_reading->median, written.arms[0].start_reading->median, 1e-6);
  EXPECT_NEAR(told.comparisons[0].ratio.median, written.comparisons[0].ratio.median, 1e-6);
}

// 210 gf would be 2.1 N, which is 214 gf: rounded in the unit that is told, the answer would move.
TEST(ToldInOtherUnits, EdgesThatStartDifferentlyAreComparedAtTheSameReading) {
  const auto trial = a_trial({.start = 160});

  const auto recorded = quickly_judged(trial, {});
  const auto told = quickly_judged(trial, kNewtonsAndInches);

  const verdicts::Comparison& pair = recorded.comparisons[0];
  ASSERT_EQ(pair.at.what, verdicts::ComparedAt::common_reading);
  EXPECT_NEAR(told.comparisons[0].at.reading, pair.at.reading * kNewtonPerGf, 1e-9);
  EXPECT_NEAR(told.comparisons[0].ratio.median, pair.ratio.median, 1e-9);
}

TEST(ToldInOtherUnits, AStopReadingMayBeTypedInAnyUnit) {
  JudgeOptions options = kNewtonsAndInches;
  options.stop_reading = "250gf";
  const auto by_grams = quickly_judged(a_trial({}), options);
  options.stop_reading = std::to_string(250 * kNewtonPerGf) + "N";
  const auto by_newtons = quickly_judged(a_trial({}), options);

  EXPECT_NEAR(*by_grams.stop_reading, 250 * kNewtonPerGf, 1e-9);
  EXPECT_NEAR(by_grams.comparisons[0].ratio.median, by_newtons.comparisons[0].ratio.median, 1e-4);
}

TEST(ToldInOtherUnits, WhatElseDiffersSaysLengthsInTheirUnit) {
  const auto told = quickly_judged(a_trial({}), kNewtonsAndInches);

  const auto& also = told.comparisons[0].also_differs;
  const auto thickness = std::find_if(also.begin(), also.end(), [](const auto& one) {
    return one.what == "thickness behind the edge";
  });
  ASSERT_NE(thickness, also.end());
  EXPECT_EQ(thickness->a, "0.015 in");
}

TEST(ToldInOtherUnits, AReportKeepsTheTrialAsRecordedAndTellsCheckpoints) {
  const auto trial = a_trial({});
  auto told = quickly_judged(trial, kNewtonsAndInches);

  const telling::Report report =
      report_of({.trial = *trial, .judgements = {std::move(told)}, .from = {"bench.csv"}},
                kNewtonsAndInches,
                {});

  EXPECT_EQ(report.trial, *trial);
  EXPECT_NE(report.judged_again_by.find("--told-in=N,in"), std::string::npos);
  const auto& checkpoint = report.judgements[0].runs[0].checkpoints[0];
  const auto& readings = trial->runs[0].readings;
  EXPECT_NEAR(checkpoint.reading,
              std::sqrt(readings[0].reading * readings[1].reading) * kNewtonPerGf,
              1e-9);
}

}  // namespace
}  // namespace keenfall::workbench
