// The plain model (docs/methods/blunting-model.md) fitted to a table by the full engine, and by
// rstan's NUTS beside it.
#pragma once

#include "base/result.h"
#include "benchmarks/measured_child.h"

#include <filesystem>
#include <optional>
#include <string>

namespace keenfall::benchmarks {

struct PlainTrial {
  std::filesystem::path table;
  std::filesystem::path draws;  // where ours are left for the peer to look at
};

// Findings: fit_cpu_s from readings to diagnostics, ess_bulk_min, runs, arms and readings.
// In one thread, by the options that judging has.
[[nodiscard]] base::Result<Measured> measured_plain_fit(const PlainTrial& trial, int round);

// With the runs' deviations as parameters, or with their levels.
enum class StanForm { deviations, levels };

// After ours of the same round. Findings as peers/plain_nuts.R says.
[[nodiscard]] std::optional<base::Result<Measured>> measured_rstan(const PlainTrial& trial,
                                                                   StanForm form,
                                                                   int round);

}  // namespace keenfall::benchmarks
