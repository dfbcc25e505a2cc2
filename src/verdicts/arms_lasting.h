// How long every arm of a fit lasts, as joint draws, up to where arms are compared across families:
// what statements about media and about factors are made of.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "blunting/times/time_data.h"
#include "blunting/times/time_fit.h"
#include "trials/trial.h"
#include "verdicts/judgement.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::verdicts {

struct ArmsLasting {
  At at;
  std::vector<std::string> remarks;  // on `at`
  std::vector<trials::Arm> arms;
  std::vector<std::size_t> medium_of_arm;
  std::size_t media_count = 0;
  std::vector<blunting::Draws> log_cuts;  // of the blades that were cut with
};

// Where all the families are compared, else at the bluntest of the common readings, else at half
// keenness; with a remark in either case.
[[nodiscard]] ArmsLasting arms_lasting(const blunting::BluntingData& data,
                                       const blunting::BluntingFit& fit,
                                       const std::vector<Comparison>& comparisons);

// Until the edges fail their test.
[[nodiscard]] ArmsLasting arms_lasting(const blunting::TimeData& data,
                                       const blunting::TimeFit& fit);

}  // namespace keenfall::verdicts
