#include "telling/rounded.h"

#include "base/require.h"
#include "materials/units.h"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace keenfall::telling {

namespace {

constexpr double kMillion = 1e6;
constexpr double kBillion = 1e9;
constexpr int kMostFigures = 9;  // two numbers alike so far are told apart by nobody

double rounded_to(double number, int figures) {
  return std::strtod(fmt::format("{:.{}e}", number, figures - 1).c_str(), nullptr);
}

// True when the rounded number says something about the edge that the number does not.
bool rounding_crosses(double number, double rounded, double edge) {
  if (number == edge) return false;
  const bool lands_on_it = std::abs(rounded - edge) < 1e-9 * edge;
  return lands_on_it || (rounded > edge) != (number > edge);
}

}  // namespace

std::string to_figures(double number, int figures) {
  if (number == 0) return "0";
  const double rounded = rounded_to(number, figures);
  const int power = static_cast<int>(std::floor(std::log10(std::abs(rounded)) + 1e-12));
  return fmt::format("{:.{}f}", rounded, std::max(0, figures - 1 - power));
}

std::string limits_text(double lo, double hi) {
  constexpr double kThousand = 1000;
  const auto end_text = [](double end) {
    return end < kThousand ? fmt::format("{:.3g}", end) : to_figures(end, 3);
  };
  return end_text(lo) + " to " + end_text(hi);
}

std::string ratio_text(double ratio, double worth_it_margin) {
  if (ratio >= kMillion) return "over a million";
  if (ratio <= 1 / kMillion) return "under a millionth";
  int figures = 2;
  const auto misleads = [&] {
    const double rounded = rounded_to(ratio, figures);
    return rounding_crosses(ratio, rounded, 1) || rounding_crosses(ratio, rounded, worth_it_margin);
  };
  while (figures < kMostFigures && misleads()) ++figures;
  return to_figures(ratio, figures);
}

std::string percent_text(double ratio) {
  constexpr double kPercent = 100;
  const double percent = kPercent * ratio;
  int figures = 2;
  while (figures < kMostFigures &&
         rounding_crosses(percent, rounded_to(percent, figures), kPercent)) {
    ++figures;
  }
  return to_figures(percent, figures);
}

std::string cuts_text(double cuts) {
  if (cuts >= kBillion) return "over a billion";
  if (cuts >= kMillion) return to_figures(cuts / kMillion, 2) + " million";
  if (cuts >= 999.5) return to_figures(cuts, 3);
  if (cuts >= 9.95) return fmt::format("{:.0f}", cuts);
  if (cuts < 0.01) return cuts == 0 ? "0" : "under 0.01";
  return to_figures(cuts, 2);
}

std::string reading_text(double reading) {
  if (std::abs(reading) >= kMillion) return fmt::format("{:.2e}", reading);
  if (std::abs(reading) >= 99.5) return fmt::format("{:.0f}", reading);
  return to_figures(reading, 2);
}

std::string stock_text(double cuts,
                       std::optional<double> cut_length_mm,
                       const materials::ToldIn& told) {
  if (!cut_length_mm || cuts >= kMillion || cuts * *cut_length_mm == 0) return {};
  const std::string unit = long_length_unit(told);
  const auto length = materials::convert(cuts * *cut_length_mm, "mm", unit);
  base::require(length.has_value(), "a long length is told in a unit of length");
  return to_figures(*length, *length < 10 ? 2 : 3) + " " + unit;
}

std::string scatter_text(double log_sd) {
  constexpr double kPercent = 100;
  const double percent = kPercent * std::expm1(log_sd);
  if (percent >= 1000) return "over 1000 %";
  return fmt::format("{:.0f} %", percent);
}

std::string chance_text(double probability) {
  if (probability < 0.01) return "under 1 %";
  if (probability > 0.99) return "over 99 %";
  return fmt::format("{:.0f} %", 100 * probability);
}

}  // namespace keenfall::telling
