#include "numerics/least_squares.h"

#include <gtest/gtest.h>
#include <Eigen/Dense>
#include <unsupported/Eigen/AutoDiff>

#include <array>
#include <cmath>
#include <fstream>
#include <functional>
#include <stdexcept>
#include <string>

namespace keenfall::numerics {
namespace {

// Nonlinear regression sets of the NIST Statistical Reference Datasets (tests/reference/nist):
// NIST's two starts each, certified parameters, their standard deviations and the residual sum of
// squares. Derivatives are taken by Eigen's AutoDiff, so that none is worked by hand.
using Number = Eigen::AutoDiffScalar<Eigen::VectorXd>;
using Model = std::function<Number(const std::vector<Number>&, double x)>;

struct Reference {
  std::string name;
  Model model;
  std::vector<double> far_start;   // NIST's start 1
  std::vector<double> near_start;  // NIST's start 2
  std::vector<double> certified;
  std::vector<double> certified_sd;
  double sum_of_squares;
};

Number saturating(const std::vector<Number>& b, double x) { return b[0] * (1.0 - exp(-b[1] * x)); }

Number ratio_of_cubics(const std::vector<Number>& b, double x) {
  const double squared = x * x;
  const double cubed = x * x * x;
  return (b[0] + b[1] * x + b[2] * squared + b[3] * cubed) /
         (1.0 + b[4] * x + b[5] * squared + b[6] * cubed);
}

Number bell(const std::vector<Number>& b, double x) {
  const Number off = (x - b[2]) / b[1];
  return b[0] / b[1] * exp(-0.5 * off * off);
}

Number ratio_of_squares(const std::vector<Number>& b, double x) {
  return b[0] * (x * x + b[1] * x) / (x * x + b[2] * x + b[3]);
}

Number growth(const std::vector<Number>& b, double x) {
  return b[0] * exp(-log(1.0 + exp(b[1] - b[2] * x)) / b[3]);
}

const Reference kMisra1a{.name = "Misra1a",
                         .model = saturating,
                         .far_start = {500, 0.0001},
                         .near_start = {250, 0.0005},
                         .certified = {238.94212918, 0.00055015643181},
                         .certified_sd = {2.7070075241, 7.2668688436e-06},
                         .sum_of_squares = 0.12455138894};
const Reference kThurber{.name = "Thurber",
                         .model = ratio_of_cubics,
                         .far_start = {1000, 1000, 400, 40, 0.7, 0.3, 0.03},
                         .near_start = {1300, 1500, 500, 75, 1, 0.4, 0.05},
                         .certified = {1288.13968,
                                       1491.0792535,
                                       583.23836877,
                                       75.416644291,
                                       0.96629502864,
                                       0.39797285797,
                                       0.049727297349},
                         .certified_sd = {4.6647963344,
                                          39.571156086,
                                          28.698696102,
                                          5.567537027,
                                          0.031333340687,
                                          0.014984928198,
                                          0.0065842344623},
                         .sum_of_squares = 5642.7082397};
const Reference kBoxBod{.name = "BoxBOD",
                        .model = saturating,
                        .far_start = {1, 1},
                        .near_start = {100, 0.75},
                        .certified = {213.80940889, 0.54723748542},
                        .certified_sd = {12.354515176, 0.10455993237},
                        .sum_of_squares = 1168.0088766};
const Reference kEckerle4{.name = "Eckerle4",
                          .model = bell,
                          .far_start = {1, 10, 500},
                          .near_start = {1.5, 5, 450},
                          .certified = {1.5543827178, 4.0888321754, 451.54121844},
                          .certified_sd = {0.015408051163, 0.046803020753, 0.046800518816},
                          .sum_of_squares = 0.0014635887487};
const Reference kHahn1{.name = "Hahn1",
                       .model = ratio_of_cubics,
                       .far_start = {10, -1, 0.05, -1e-05, -0.05, 0.001, -1e-06},
                       .near_start = {1, -0.1, 0.005, -1e-06, -0.005, 0.0001, -1e-07},
                       .certified = {1.0776351733,
                                     -0.12269296921,
                                     0.004086375061,
                                     -1.4262662514e-06,
                                     -0.0057609940901,
                                     0.00024053735503,
                                     -1.2314450199e-07},
                       .certified_sd = {0.17070154742,
                                        0.012000289189,
                                        0.00022508314937,
                                        2.7578037666e-07,
                                        0.00024712888219,
                                        1.0449373768e-05,
                                        1.3027335327e-08},
                       .sum_of_squares = 1.5324382854};
const Reference kMgh09{
    .name = "MGH09",
    .model = ratio_of_squares,
    .far_start = {25, 39, 41.5, 39},
    .near_start = {0.25, 0.39, 0.415, 0.39},
    .certified = {0.19280693458, 0.19128232873, 0.12305650693, 0.13606233068},
    .certified_sd = {0.011435312227, 0.19633220911, 0.080842031232, 0.090025542308},
    .sum_of_squares = 0.00030750560385};
const Reference kRat43{.name = "Rat43",
                       .model = growth,
                       .far_start = {100, 10, 1, 1},
                       .near_start = {700, 5, 0.75, 1.3},
                       .certified = {699.6415127, 5.2771253025, 0.75962938329, 1.2792483859},
                       .certified_sd = {16.302297817, 2.0828735829, 0.19566123451, 0.68761936385},
                       .sum_of_squares = 8786.404908};

struct Point {
  double y = 0;
  double x = 0;
};

std::vector<Point> points_of(const std::string& name) {
  std::ifstream file(KEENFALL_SOURCE_DIR "/tests/reference/nist/" + name + ".csv");
  std::string heads;
  std::getline(file, heads);
  std::vector<Point> points;
  Point point;
  char comma = ' ';
  while (file >> point.y >> comma >> point.x) points.push_back(point);
  return points;
}

LeastSquaresFit fitted(const Reference& reference, const std::vector<double>& start) {
  const std::vector<Point> points = points_of(reference.name);
  const std::size_t inputs = start.size();
  const auto residuals =
      [&](std::span<const double> parameters, std::span<double> out, std::span<double> jacobian) {
        std::vector<Number> b;
        for (std::size_t j = 0; j < inputs; ++j)
          b.push_back(Number(parameters[j], static_cast<int>(inputs), static_cast<int>(j)));
        for (std::size_t i = 0; i < points.size(); ++i) {
          const Number modelled = reference.model(b, points[i].x);
          out[i] = modelled.value() - points[i].y;
          for (std::size_t j = 0; j < inputs && !jacobian.empty(); ++j)
            jacobian[i * inputs + j] = modelled.derivatives()[static_cast<Eigen::Index>(j)];
        }
      };
  return fit_least_squares(residuals, points.size(), start);
}

void expect_certified(const Reference& reference, const std::vector<double>& start) {
  constexpr double kRelative = 1e-6;
  const LeastSquaresFit fit = fitted(reference, start);

  EXPECT_TRUE(fit.converged) << reference.name;
  EXPECT_NEAR(fit.sum_of_squares, reference.sum_of_squares, kRelative * reference.sum_of_squares)
      << reference.name;
  ASSERT_EQ(fit.standard_errors.size(), reference.certified.size()) << reference.name;
  for (std::size_t j = 0; j < reference.certified.size(); ++j) {
    EXPECT_NEAR(
        fit.parameters[j], reference.certified[j], kRelative * std::abs(reference.certified[j]))
        << reference.name;
    EXPECT_NEAR(fit.standard_errors[j],
                reference.certified_sd[j],
                1e-5 * std::abs(reference.certified_sd[j]))
        << reference.name;
  }
}

TEST(LeastSquares, AgreesWithNistFromTheNearerStart) {
  for (const Reference& reference :
       {kMisra1a, kThurber, kBoxBod, kEckerle4, kHahn1, kMgh09, kRat43}) {
    expect_certified(reference, reference.near_start);
  }
}

TEST(LeastSquares, AgreesWithNistFromTheFartherStart) {
  for (const Reference& reference : {kMisra1a, kThurber, kEckerle4, kHahn1, kMgh09, kRat43}) {
    expect_certified(reference, reference.far_start);
  }
}

// From NIST's farther start of BoxBOD the first step leaps to where the curve is flat in b2, and
// stays there. The standard error tells: it is many times the parameter.
TEST(LeastSquares, GivesAHugeStandardErrorWhereItEndsOnFlatGround) {
  const LeastSquaresFit fit = fitted(kBoxBod, kBoxBod.far_start);

  EXPECT_GT(fit.sum_of_squares, 8 * kBoxBod.sum_of_squares);
  EXPECT_GT(fit.standard_errors[1], 1000 * fit.parameters[1]);
}

TEST(LeastSquares, RefusesFewerResidualsThanParameters) {
  const auto nothing = [](std::span<const double>, std::span<double>, std::span<double>) {};

  EXPECT_THROW((void)fit_least_squares(nothing, 2, {1, 2}), std::logic_error);
}

}  // namespace
}  // namespace keenfall::numerics
