#include "bench/usual_range.h"

#include <cmath>

namespace keenfall::bench {

namespace {

constexpr double kReadingLogSd = 0.15;
constexpr double kScatters = 3.5;
constexpr double kKeenerAtMost = 1.5;
constexpr double kBlunterAtMost = 3;
constexpr double kTolerances = 3;

}  // namespace

std::optional<UsualRange> usual_range(const RunSheet& sheet,
                                      std::span<const SpotReading> here,
                                      std::span<const SpotReading> before) {
  if (sheet.kind.use == trials::ReadingUse::evidence) return std::nullopt;
  if (!here.empty()) {
    const double median = combined_reading(here);
    const double factor = std::exp(kScatters * kReadingLogSd);
    return UsualRange{.lowest = median / factor, .highest = median * factor};
  }
  if (!before.empty()) {
    const double median = combined_reading(before);
    const bool lower_is_keener = sheet.kind.keener_when == trials::KeenerWhen::lower;
    return UsualRange{.lowest = median / (lower_is_keener ? kKeenerAtMost : kBlunterAtMost),
                      .highest = median * (lower_is_keener ? kBlunterAtMost : kKeenerAtMost)};
  }
  if (sheet.start_gate) {
    const trials::StartGate& gate = *sheet.start_gate;
    const double factor = 1 + kTolerances * gate.tolerance_fraction;
    return UsualRange{.lowest = gate.target_reading / factor,
                      .highest = gate.target_reading * factor};
  }
  return std::nullopt;
}

bool surprises(const std::optional<UsualRange>& usual, double reading) {
  return usual && (reading < usual->lowest || reading > usual->highest);
}

}  // namespace keenfall::bench
