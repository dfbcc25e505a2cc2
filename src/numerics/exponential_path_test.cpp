#include "numerics/exponential_path.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <stdexcept>

namespace keenfall::numerics {
namespace {

// Cracks in five turbine blades (mm) after 100,000 to 500,000 cycles, failed at 30 mm: the worked
// example "Weibull degradation, crack propagation (point estimation)" of reliawiki.com, which
// prints a and b to the figures below; times and further digits by lm(log(y) ~ x) in R 4.2.2.
constexpr std::array kThousandCycles{100.0, 200.0, 300.0, 400.0, 500.0};

struct Blade {
  std::array<double, 5> crack_mm;
  double printed_rate;
  double printed_level_at_zero;
  double time_to_30_mm;
};

constexpr std::array kBlades{Blade{{15, 20, 22, 26, 29}, 0.00158, 13.596, 500.621700084},
                             Blade{{10, 15, 20, 25, 30}, 0.00271, 8.272, 475.738701828},
                             Blade{{17, 25, 26, 27, 33}, 0.00140, 16.435, 428.738856645},
                             Blade{{12, 16, 17, 20, 26}, 0.00177, 10.361, 600.809753550},
                             Blade{{10, 15, 20, 26, 33}, 0.00294, 7.931, 452.831744397}};

TEST(ExponentialPath, AgreesWithThePrintedCracksInTurbineBlades) {
  for (const Blade& blade : kBlades) {
    const ExponentialPath path = fit_exponential_path(kThousandCycles, blade.crack_mm);

    EXPECT_NEAR(path.rate, blade.printed_rate, 5e-6);
    EXPECT_NEAR(path.level_at_zero, blade.printed_level_at_zero, 5e-4);
    EXPECT_NEAR(time_to(path, 30).value(), blade.time_to_30_mm, 1e-8);
  }
}

TEST(ExponentialPath, ThroughTwoPointsIsTheLineThroughTheirLogs) {
  const ExponentialPath path =
      fit_exponential_path(std::array{0.0, 10.0}, std::array{1.0, std::exp(2.0)});

  EXPECT_NEAR(path.rate, 0.2, 1e-12);
  EXPECT_NEAR(time_to(path, std::exp(1.0)).value(), 5, 1e-12);
}

TEST(ExponentialPath, ThatDoesNotRiseNeverReachesALevel) {
  EXPECT_FALSE(time_to(fit_exponential_path(std::array{0.0, 1.0}, std::array{3.0, 2.0}), 4));
}

TEST(ExponentialPath, RefusesALevelOfZeroAndOneTime) {
  EXPECT_THROW((void)fit_exponential_path(std::array{0.0, 1.0}, std::array{0.0, 2.0}),
               std::logic_error);
  EXPECT_THROW((void)fit_exponential_path(std::array{1.0, 1.0}, std::array{1.0, 2.0}),
               std::logic_error);
}

}  // namespace
}  // namespace keenfall::numerics
