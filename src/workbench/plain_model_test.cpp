#include "blunting/inference/full_fit.h"
#include "exchange/long_table.h"
#include "numerics/chain_diagnostics.h"
#include "numerics/summaries.h"
#include "verdicts/lasting.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace keenfall::workbench {
namespace {

// The posterior of the plain model on tests/reference/two_blades_two_media.csv by NUTS in
// rstan 2.21 (R 4.2.2; 4 chains, 4,000 draws, seed 4711, adapt_delta 0.9): mean, sd, 2.5 % and 97.5
// % quantiles, bulk and tail effective sizes.
struct Wanted {
  const char* name;
  double mean;
  double sd;
  double lo95;
  double hi95;
  double ess_bulk;
  double ess_tail;
};

const std::vector<Wanted>& by_stan() {
  static const std::vector<Wanted> wanted{
      Wanted{"beta0[1]", 0.150023, 0.0509158, 0.0472926, 0.252502, 3714, 2817},
      Wanted{"beta0[2]", 0.280135, 0.0500264, 0.182245, 0.382714, 4112, 3027},
      Wanted{"beta0[3]", 0.0846244, 0.0521943, -0.0179062, 0.189364, 4026, 3047},
      Wanted{"beta0[4]", 0.077326, 0.0498195, -0.0203724, 0.176022, 3728, 2876},
      Wanted{"mu[1]", 4.27113, 0.236975, 3.80064, 4.74265, 4539, 3154},
      Wanted{"mu[2]", 3.14276, 0.226606, 2.69124, 3.59062, 4364, 2979},
      Wanted{"mu[3]", 3.00055, 0.23362, 2.52801, 3.46467, 3860, 2912},
      Wanted{"mu[4]", 3.17428, 0.238251, 2.70686, 3.65698, 3715, 2831},
      Wanted{"p[1]", 0.646583, 0.0419991, 0.567832, 0.733376, 3129, 3333},
      Wanted{"p[2]", 0.92663, 0.0367413, 0.856495, 1.00259, 2675, 2709},
      Wanted{"p[3]", 0.746666, 0.0276078, 0.694714, 0.803895, 2644, 2969},
      Wanted{"p[4]", 0.839245, 0.0294363, 0.784141, 0.899453, 3147, 2897},
      Wanted{"s_b0", 0.0888288, 0.0234133, 0.0536949, 0.144945, 3114, 2586},
      Wanted{"s_tau", 0.426673, 0.0972509, 0.27779, 0.656008, 2965, 2984},
      Wanted{"sigma", 0.106505, 0.00389634, 0.0992785, 0.11448, 4820, 2637},
  };
  return wanted;
}

struct PlainFit {
  blunting::BluntingData data;
  blunting::BluntingFit fit;
};

// One fit for all tests of this file.
const PlainFit& plain_fit() {
  static const PlainFit fitted = [] {
    const std::array<std::string, 1> paths{KEENFALL_SOURCE_DIR
                                           "/tests/reference/two_blades_two_media.csv"};
    const auto trial = exchange::take_tables(paths, {});
    const auto spec = blunting::plain_model();
    auto data = blunting::prepare(*trial, blunting::fits_of(*trial)[0], spec.errors);
    auto fit = blunting::fit_blunting(
        *data, spec, {.draws = 4000}, {4711}, base::threads(2), base::unwatched());
    return PlainFit{std::move(*data), std::move(*fit)};
  }();
  return fitted;
}

// "mu[2]" is the second arm's; scales stand alone.
const blunting::Draws& draws_of(const blunting::BluntingFit& fit, const std::string& name) {
  if (name == "s_b0") return fit.start_scatter[0];
  if (name == "s_tau") return fit.run_scatter[0];
  if (name == "sigma") return fit.reading_scatter;
  const blunting::ArmDraws& arm =
      fit.arms.at(static_cast<std::size_t>(name[name.size() - 2] - '1'));
  if (name.starts_with("beta0")) return arm.log_start;
  return name.starts_with("mu") ? arm.log_half_keenness : arm.shape;
}

numerics::ChainDiagnostics worth_of(const blunting::Draws& draws, std::size_t chains) {
  std::vector<std::vector<double>> parts;
  const auto length = static_cast<std::ptrdiff_t>(draws.size() / chains);
  for (std::size_t c = 0; c < chains; ++c) {
    const auto first = draws.begin() + static_cast<std::ptrdiff_t>(c) * length;
    parts.push_back({first, first + length});
  }
  return numerics::diagnose(parts);
}

// Within four Monte-Carlo errors of the difference.
void expect_same(double found, double wanted, double error, const std::string& what) {
  EXPECT_NEAR(found, wanted, 4 * error) << what;
}

TEST(PlainModel, IsUsableOnTheReferenceTrial) {
  const blunting::FitDiagnostics& found = plain_fit().fit.diagnostics;

  EXPECT_TRUE(found.usable);
  EXPECT_LT(found.divergences, 16);
}

TEST(PlainModel, HasThePosteriorMeansSdsAndIntervalsOfStan) {
  for (const Wanted& wanted : by_stan()) {
    const blunting::Draws& draws = draws_of(plain_fit().fit, wanted.name);
    const numerics::ChainDiagnostics worth = worth_of(draws, plain_fit().fit.chains);
    const double bulk = std::sqrt(1 / wanted.ess_bulk + 1 / worth.ess_bulk);
    const double tail = std::sqrt(1 / wanted.ess_tail + 1 / worth.ess_tail);
    const numerics::Interval interval = numerics::interval_of(draws);

    expect_same(numerics::mean_of(draws), wanted.mean, wanted.sd * bulk, wanted.name);
    // An sd of n near-normal draws errs by about sd / sqrt(2 n); allowed here: sd / sqrt(n).
    expect_same(std::sqrt(numerics::variance_of(draws)), wanted.sd, wanted.sd * bulk, wanted.name);
    // The 2.5 % quantile of n normal draws errs by sqrt(0.025 * 0.975) / 0.0584 = 2.7 sd / sqrt(n).
    expect_same(interval.lo95, wanted.lo95, 2.7 * wanted.sd * tail, wanted.name);
    expect_same(interval.hi95, wanted.hi95, 2.7 * wanted.sd * tail, wanted.name);
  }
}

// Log ratios of the arms, at half keenness (level 2) and at three times the start: mean and sd by
// the same Stan run, whose effective size for them is about 3,000.
TEST(PlainModel, HasTheRatiosOfStan) {
  struct Ratio {
    std::size_t a;
    std::size_t b;
    double level;
    double mean;
    double sd;
  };
  constexpr std::array kRatios{
      Ratio{0, 2, 2, 1.27057, 0.33052},
      Ratio{0, 2, 3, 1.41753, 0.317363},
      Ratio{1, 3, 2, -0.0315242, 0.338098},
      Ratio{1, 3, 3, -0.109249, 0.329866},
  };
  const PlainFit& plain = plain_fit();
  for (const Ratio& ratio : kRatios) {
    const verdicts::At at{.what = verdicts::ComparedAt::level, .level = ratio.level};
    const auto claim = verdicts::ClaimAbout::these_blades;
    blunting::Draws log_ratio = verdicts::log_cuts_until(plain.data, plain.fit, ratio.a, at, claim);
    const blunting::Draws below =
        verdicts::log_cuts_until(plain.data, plain.fit, ratio.b, at, claim);
    for (std::size_t d = 0; d < below.size(); ++d) log_ratio[d] -= below[d];

    const double error = ratio.sd * std::sqrt(2.0 / 3000);
    expect_same(numerics::mean_of(log_ratio), ratio.mean, error, "mean");
    expect_same(std::sqrt(numerics::variance_of(log_ratio)), ratio.sd, error, "sd");
  }
}

}  // namespace
}  // namespace keenfall::workbench
