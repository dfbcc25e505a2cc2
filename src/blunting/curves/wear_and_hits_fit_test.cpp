#include "blunting/curves/wear_and_hits_fit.h"

#include "blunting/curves/log_logistic.h"
#include "numerics/random.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <vector>

namespace keenfall::blunting {
namespace {

using ::testing::HasSubstr;

constexpr WearAndHits kGritty{
    .wear_scale_cuts = 19.2, .hit_slope_per_cut = 0.067, .hit_saturation_per_cut = 0.002};

// Fourteen checkpoints to 400 cuts, the first at 0.
std::vector<CurvePoint> points_of(const WearAndHits& curve, double start) {
  std::vector<CurvePoint> points{{0, start}};
  for (int i = 0; i < 13; ++i) {
    const double cuts = std::pow(400, (i + 1) / 13.0);
    points.push_back({cuts, start * bluntness(curve, cuts)});
  }
  return points;
}

TEST(AFitOfWearAndHits, FindsTheCurveAgainWhereTheWearScaleIsGiven) {
  const WearAndHitsFit fit = fit_wear_and_hits(points_of(kGritty, 104), KnownWear{19.2}).value();

  EXPECT_TRUE(fit.converged);
  EXPECT_TRUE(fit.wear_was_known);
  EXPECT_NEAR(fit.start, 104, 0.1);
  EXPECT_NEAR(fit.curve.hit_slope_per_cut, 0.067, 0.0005);
  EXPECT_NEAR(fit.curve.hit_saturation_per_cut, 0.002, 0.0001);
  EXPECT_LT(fit.root_mean_square_misfit, 1e-3);
}

TEST(AFitOfWearAndHits, LiesOnThePointsWhereItIsNot) {
  const WearAndHitsFit fit = fit_wear_and_hits(points_of(kGritty, 104)).value();

  EXPECT_TRUE(fit.converged);
  EXPECT_LT(fit.root_mean_square_misfit, 2e-3);
  EXPECT_NEAR(cuts_to_level(fit.curve, 2).value(), cuts_to_level(kGritty, 2).value(), 0.03);
}

// Simulate and recover: over 200 noisy curves the slope is found without bias where the wear scale
// is given, and within the weak hold where it is not.
TEST(AFitOfWearAndHits, FindsTheSlopeThroughNoiseWhereTheWearScaleIsGiven) {
  numerics::RandomStream random({7}, 0);
  std::vector<double> log_ratios;
  for (int trial = 0; trial < 200; ++trial) {
    std::vector<CurvePoint> points = points_of(kGritty, 104);
    for (CurvePoint& point : points) point.bluntness *= std::exp(0.03 * random.normal());
    const WearAndHitsFit fit = fit_wear_and_hits(points, KnownWear{19.2}).value();
    EXPECT_TRUE(fit.converged);
    log_ratios.push_back(std::log(fit.curve.hit_slope_per_cut / kGritty.hit_slope_per_cut));
  }
  const double mean = std::accumulate(log_ratios.begin(), log_ratios.end(), 0.0) / 200;
  EXPECT_NEAR(mean, 0, 0.02);
}

TEST(AFitOfWearAndHits, ShowsByItsMisfitThatACurveIsOfAnotherFamily) {
  // A shape above 1 blunts slowly at first, then ever faster: neither wear nor hits do that.
  const LogLogistic late{.log_start = std::log(100), .log_half_keenness = std::log(60), .shape = 2};
  std::vector<CurvePoint> points{{0, 100}};
  for (const double cuts : {5.0, 10.0, 20.0, 40.0, 80.0, 160.0}) {
    points.push_back({cuts, std::exp(log_bluntness(late, std::log(cuts)))});
  }

  EXPECT_GT(fit_wear_and_hits(points).value().root_mean_square_misfit, 0.1);
}

TEST(AFitOfWearAndHits, TakesNoneForWearWhereNothingWears) {
  const WearAndHits hits{.hit_slope_per_cut = 0.03, .hit_saturation_per_cut = 0.005};

  const WearAndHitsFit fit = fit_wear_and_hits(points_of(hits, 104), KnownWear{}).value();

  EXPECT_EQ(fit.curve.wear_scale_cuts, std::nullopt);
  EXPECT_NEAR(fit.curve.hit_slope_per_cut, 0.03, 0.0003);
  EXPECT_LT(fit.root_mean_square_misfit, 1e-3);
}

TEST(AFitOfWearAndHits, EndsWhereNothingBlunts) {
  const std::vector<CurvePoint> flat{{0, 100}, {1, 100}, {10, 100}, {100, 100}, {200, 100}};

  const WearAndHitsFit fit = fit_wear_and_hits(flat).value();

  EXPECT_TRUE(fit.converged);
  EXPECT_LT(bluntness(fit.curve, 200), 1.02);
}

TEST(AFitOfWearAndHits, RefusesWhatIsNoCurve) {
  const auto sentence = [](const std::vector<CurvePoint>& points) {
    const auto fit = fit_wear_and_hits(points);
    return fit ? std::string() : fit.error().sentence;
  };
  EXPECT_THAT(sentence({{0, 1}, {1, 2}}), HasSubstr("needs five points; there are 2"));
  EXPECT_THAT(sentence({{0, 1}, {1, 2}, {2, 0}, {3, 4}, {4, 5}}), HasSubstr("at 2 cuts is not"));
  EXPECT_THAT(sentence({{0, 1}, {1, 2}, {1, 3}, {3, 4}, {4, 5}}), HasSubstr("must rise"));
}

}  // namespace
}  // namespace keenfall::blunting
