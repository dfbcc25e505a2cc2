// The edge lives of one medium, given the scatters: where arms, blocks and specimens lie together
// and how narrowly, as a normal about the mode (Laplace's method). Used by quick_times only.
//
// The same model and priors as time_density.h. The log posterior is concave, so there is one mode.
#pragma once

#include "blunting/times/interval_likelihood.h"
#include "blunting/times/time_data.h"

#include <Eigen/Dense>

#include <cstddef>
#include <optional>
#include <vector>

namespace keenfall::blunting {

struct TimeScatters {
  double run = 0.25;  // sds of log cuts, all above 0
  double block = 0.08;
  double specimen = 0.08;
};

// Blocks, then specimens, with the arms integrated out.
struct EffectsNormal {
  Eigen::VectorXd mean;
  Eigen::MatrixXd factor;   // lower: precision = factor factor'
  double log_evidence = 0;  // of the scatters, up to a constant; their priors left out
};

// Scale of the logistic at a scatter from run to run: with the test's own error (time_density.h).
[[nodiscard]] double logistic_scale(double run_scatter);

class MediumOfTimes {
 public:
  // Places within arms(), and among the effects.
  struct Member {
    LogTimeBounds bounds;
    std::size_t arm = 0;
    std::optional<std::size_t> block;
    std::optional<std::size_t> specimen;
  };

  MediumOfTimes(const TimeData& data, std::size_t medium);

  [[nodiscard]] const std::vector<std::size_t>& arms() const { return arms_; }  // in the data
  [[nodiscard]] const std::vector<Member>& members() const { return members_; }
  [[nodiscard]] double log_centre() const { return log_centre_; }
  [[nodiscard]] std::size_t block_count() const { return blocks_; }
  [[nodiscard]] std::size_t specimen_count() const { return specimens_; }
  [[nodiscard]] std::size_t effect_count() const { return blocks_ + specimens_; }

  [[nodiscard]] EffectsNormal effects_given(const TimeScatters& scatters) const;
  [[nodiscard]] double log_prior_of(const Eigen::VectorXd& effects,
                                    const TimeScatters& scatters) const;

 private:
  struct Surface;

  [[nodiscard]] Surface surface_at(const Eigen::VectorXd& at, const TimeScatters& scatters) const;

  double log_centre_ = 0;
  std::vector<std::size_t> arms_;
  std::vector<Member> members_;
  std::size_t blocks_ = 0;
  std::size_t specimens_ = 0;
};

}  // namespace keenfall::blunting
