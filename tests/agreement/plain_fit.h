// A trial fitted by the plain model, and its draws by the names that the scripts in R give them.
#pragma once

#include "blunting/inference/full_fit.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::agreement {

struct PlainFit {
  blunting::BluntingData data;
  blunting::BluntingFit fit;
};

[[nodiscard]] PlainFit plain_fit_of(const std::string& trial);

// Indices into BluntingData::arms as the table first names the arms, which is how the scripts
// number them.
[[nodiscard]] std::vector<std::size_t> arms_as_in_table(const blunting::BluntingData& data);

// "beta0[1]", "mu[1]", "p[1]", "s_b0", "s_tau", "sigma"; "half_keenness[2:1]" is the log ratio of
// the second arm's half keenness to the first's, "cuts_to_3[2:1]" that of their cuts to three times
// the start.
[[nodiscard]] blunting::Draws draws_named(const PlainFit& plain, const std::string& name);

}  // namespace keenfall::agreement
