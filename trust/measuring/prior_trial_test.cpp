#include "trust/measuring/prior_trial.h"

#include "blunting/curves/log_logistic.h"
#include "trust/measuring/calibration.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::trust {
namespace {

TEST(PriorTrial, HasAParameterForEveryOneOfTheModel) {
  for (const CalibrationDesign& design : calibration_designs()) {
    const PriorTrial made = prior_trial(design, 0);
    const auto layout = layout_of(parts_for(design.spec, made.data), made.data);

    EXPECT_EQ(made.truth.start_mean.size(), layout.arms) << design.name;
    EXPECT_EQ(made.truth.run_half.size(), layout.runs);
    EXPECT_EQ(made.truth.run_scatter.size(), layout.scatters);
    EXPECT_EQ(made.truth.block_effect.size(), layout.block_count);
    EXPECT_EQ(made.truth.specimen_effect.size(), layout.specimen_count);
    EXPECT_EQ(made.truth.shape_mean.size(), layout.has_shape_level ? layout.media : 0);
  }
}

TEST(PriorTrial, OfAllDesignsTogetherHasEveryPartOfTheModel) {
  blunting::ModelParts all;
  for (const CalibrationDesign& design : calibration_designs()) {
    const blunting::ModelParts parts = parts_for(design.spec, prior_trial(design, 0).data);
    all.robust |= parts.robust;
    all.checkpoint_error |= parts.checkpoint_error;
    all.shared_shape |= parts.shared_shape;
    all.scatter_by_medium |= parts.scatter_by_medium;
    all.blocks |= parts.blocks;
    all.specimens |= parts.specimens;
    all.start_effect |= parts.start_effect;
    all.order_drift |= parts.order_drift;
  }

  EXPECT_EQ(all,
            (blunting::ModelParts{.robust = true,
                                  .checkpoint_error = true,
                                  .shared_shape = true,
                                  .scatter_by_medium = true,
                                  .blocks = true,
                                  .specimens = true,
                                  .start_effect = true,
                                  .order_drift = true}));
}

// Mean squares of the standardised errors of 200 trials: 1 for the plain model's normal readings.
TEST(PriorTrial, ReadsItsCurvesWithTheErrorItDrew) {
  const CalibrationDesign& plain = calibration_designs()[2];
  double squares = 0;
  double count = 0;
  for (std::uint64_t number = 0; number < 200; ++number) {
    const PriorTrial made = prior_trial(plain, number);
    for (std::size_t r = 0; r < made.data.runs.size(); ++r) {
      const blunting::LogLogistic curve{.log_start = made.truth.run_start[r],
                                        .log_half_keenness = made.truth.run_half[r],
                                        .shape = made.truth.shape[made.data.runs[r].arm]};
      for (const trials::Reading& reading : made.trial.runs[made.data.runs[r].run].readings) {
        const double z =
            (std::log(reading.reading) - log_bluntness(curve, std::log(reading.cuts))) /
            made.truth.reading_scatter;
        squares += z * z;
        ++count;
      }
    }
  }

  EXPECT_NEAR(squares / count, 1, 4 * std::sqrt(2 / count));
}

TEST(PriorTrial, IsTheSameWheneverItsNumberIs) {
  const CalibrationDesign& robust = calibration_designs()[1];

  EXPECT_EQ(prior_trial(robust, 3).trial.runs, prior_trial(robust, 3).trial.runs);
  EXPECT_NE(prior_trial(robust, 3).trial.runs, prior_trial(robust, 4).trial.runs);
}

}  // namespace
}  // namespace keenfall::trust
