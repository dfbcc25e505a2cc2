#include "blunting/quick/quick_posterior.h"

#include "blunting/quick/mixture.h"
#include "blunting/quick/quick_draws.h"
#include "blunting/quick/quick_fit.h"
#include "blunting/quick/scatter_group.h"
#include "numerics/random.h"

#include <cmath>
#include <numeric>

namespace keenfall::blunting {

namespace {

constexpr std::size_t kChains = 4;
constexpr base::Seed kSeedOfSpread{1};  // of how runs scatter about what their levels say

// Draws come part by part of the mixture. At each place stands the draw 2,473 after the one before,
// round the 4,000: the golden section of them, so that any stretch holds of every part its share.
// 537 x 2,473 = 1 modulo 4,000.
std::size_t shuffled_place(std::size_t draw) { return draw * 537 % kQuickDraws; }

// All levels of one group of media, and its runs.
class GroupDrawer {
 public:
  GroupDrawer(const ScatterGroup& group, std::size_t number, BluntingFit& fit)
      : group_(group), fit_(fit), random_(kSeedOfSpread, number) {}

  void draw(const std::vector<MixturePart>& parts) {
    const auto levels = parts.front().given.mean.size();
    const auto first_asked = static_cast<Eigen::Index>(group_.first_specimen());
    Eigen::MatrixXd normals(levels, static_cast<Eigen::Index>(kQuickDraws));
    normals.bottomRows(levels - first_asked) = even_normals(levels - first_asked);
    for (Eigen::Index d = 0; d < normals.cols(); ++d) {
      for (Eigen::Index i = 0; i < first_asked; ++i) normals(i, d) = random_.normal();
    }
    const auto draws = draws_of_parts(parts);
    Eigen::Index first = 0;
    for (std::size_t p = 0; p < parts.size(); ++p) {
      const auto draws_of_part = static_cast<Eigen::Index>(draws[p]);
      if (draws_of_part > 0) {
        Eigen::MatrixXd some = normals.middleCols(first, draws_of_part);
        parts[p].given.factor.triangularView<Eigen::Lower>().transpose().solveInPlace(some);
        some.colwise() += parts[p].given.mean;
        keep(parts[p].at, some, static_cast<std::size_t>(first));
      }
      first += draws_of_part;
    }
  }

 private:
  void keep(const Hyperparameters& at, const Eigen::MatrixXd& levels, std::size_t first) {
    const std::vector<RunGivenLevels> runs = group_.runs_given(at);
    for (Eigen::Index d = 0; d < levels.cols(); ++d) {
      const std::size_t draw = shuffled_place(first + static_cast<std::size_t>(d));
      run_scatter_[draw] = at.run;
      start_scatter_[draw] = at.start;
      keep_arms(levels.col(d), draw);
      for (const RunGivenLevels& run : runs) keep_run(run, levels.col(d), draw);
    }
  }

  void keep_arms(const Eigen::Ref<const Eigen::VectorXd>& levels, std::size_t draw) {
    for (std::size_t place = 0; place < group_.arms().size(); ++place) {
      const auto at = static_cast<Eigen::Index>(group_.levels_of(place));
      double pieces = 0;
      for (const std::size_t piece : group_.pieces()[place]) {
        pieces += levels[static_cast<Eigen::Index>(group_.first_specimen() + piece)] /
                  static_cast<double>(group_.pieces()[place].size());
      }
      ArmDraws& arm = fit_.arms[group_.arms()[place]];
      arm.log_start[draw] = levels[at];
      arm.log_half_keenness[draw] = levels[at + 1] + pieces;
      arm.log_half_keenness_steel[draw] = levels[at + 1];
      arm.shape[draw] = std::exp(levels[at + 2]);
    }
  }

  void keep_run(const RunGivenLevels& run,
                const Eigen::Ref<const Eigen::VectorXd>& levels,
                std::size_t draw) {
    Eigen::Vector3d put = Eigen::Vector3d::Zero();
    for (std::size_t row = 0; row < 3; ++row) {
      for (const WeighedLevel& level : run.levels.at(row)) {
        put[static_cast<Eigen::Index>(row)] += level.weight * levels[level.index];
      }
    }
    const Eigen::Vector2d normals(random_.normal(), random_.normal());
    const Eigen::Vector2d own = run.constant + run.follows * put + run.factor * normals;
    fit_.runs[run.run].log_start[draw] = own[0];
    fit_.runs[run.run].log_half_keenness[draw] = own[1];
  }

  const ScatterGroup& group_;
  BluntingFit& fit_;
  numerics::RandomStream random_;

 public:
  Draws run_scatter_ = Draws(kQuickDraws);
  Draws start_scatter_ = Draws(kQuickDraws);
};

BluntingFit empty_fit(const BluntingData& data, const ModelParts& parts) {
  const Draws none(kQuickDraws, 0.0);
  BluntingFit fit{.parts = parts, .chains = kChains, .draws_per_chain = kQuickDraws / kChains};
  fit.arms.assign(data.arms.size(),
                  {.log_start = none,
                   .log_half_keenness = none,
                   .log_half_keenness_steel = none,
                   .shape = none});
  fit.runs.assign(data.runs.size(), {.log_start = none, .log_half_keenness = none});
  fit.start_effect = none;
  fit.order_drift = none;
  constexpr auto kEffective = static_cast<double>(kQuickDraws);
  fit.diagnostics = {.usable = true, .ess_bulk_min = kEffective, .ess_tail_min = kEffective};
  return fit;
}

}  // namespace

BluntingFit quick_posterior(const BluntingData& data, const ModelSpec& spec) {
  const ModelParts parts = parts_for(spec, data);
  BluntingFit fit = empty_fit(data, parts);
  double reading_variance = 0;
  double spot_variance = 0;
  const auto groups = groups_of_media(parts, data.media.size());
  for (std::size_t g = 0; g < groups.size(); ++g) {
    ScatterGroup group(data, spec, parts, groups[g]);
    const std::vector<MixturePart> mixture = mixture_of(group, spec.priors);
    GroupDrawer drawer(group, g, fit);
    drawer.draw(mixture);
    fit.run_scatter.push_back(std::move(drawer.run_scatter_));
    fit.start_scatter.push_back(std::move(drawer.start_scatter_));
    const ReadingScales& scales = group.scales();
    const double share = 1.0 / static_cast<double>(groups.size());
    reading_variance += share * scales.reading_scatter * scales.reading_scatter;
    spot_variance += share * scales.checkpoint_scatter * scales.checkpoint_scatter;
  }
  fit.reading_scatter.assign(kQuickDraws, std::sqrt(reading_variance));
  fit.checkpoint_scatter.assign(kQuickDraws, std::sqrt(spot_variance));
  for (RunDraws& run : fit.runs) {
    run.log_start_median = std::accumulate(run.log_start.begin(), run.log_start.end(), 0.0) /
                           static_cast<double>(kQuickDraws);
  }
  return fit;
}

}  // namespace keenfall::blunting
