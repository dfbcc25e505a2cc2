// Numbers as people should read them: rounded to what they are worth.
//
// Two significant figures for ratios and scatter, whole cuts from ten on, three figures above a
// thousand. A bound of a ratio is never rounded onto or across 1 or the worth-it margin: it has as
// many figures as that takes, up to nine.
#pragma once

#include "materials/told_in.h"

#include <optional>
#include <string>

namespace keenfall::telling {

// `figures` significant figures, without an exponent: 0.98, 1.3, 2.0, 108, 12300.
[[nodiscard]] std::string to_figures(double number, int figures);

// Both ends of a range to three figures, zeros at the end left out: "0.0007 to 0.007",
// "1200 to 1800". 0 or more.
[[nodiscard]] std::string limits_text(double lo, double hi);

// ratio > 0; margin > 1.
[[nodiscard]] std::string ratio_text(double ratio, double worth_it_margin);

[[nodiscard]] std::string cuts_text(double cuts);
[[nodiscard]] std::string reading_text(double reading);

// "10.8 m", "35.4 ft"; empty when the length of a cut was not recorded.
[[nodiscard]] std::string stock_text(double cuts,
                                     std::optional<double> cut_length_mm,
                                     const materials::ToldIn& told);

// A ratio in percent without the sign, to two figures, never rounded onto or across 100: "14".
[[nodiscard]] std::string percent_text(double ratio);

// A log standard deviation as "20 %".
[[nodiscard]] std::string scatter_text(double log_sd);

// "30 %", "under 1 %", "over 99 %".
[[nodiscard]] std::string chance_text(double probability);

}  // namespace keenfall::telling
