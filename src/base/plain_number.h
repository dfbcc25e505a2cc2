// Numbers as text, the same in every locale.
#pragma once

#include <string>

namespace keenfall::base {

// The shortest decimal text that reads back as the same number: "17", "0.38", "1e+30".
[[nodiscard]] std::string plain_number(double number);

// Rounded to this many decimals (0 to 15): "3.10".
[[nodiscard]] std::string with_decimals(double number, int decimals);

// Rounded to this many significant figures (1 to 15), written without an exponent: "104", "0.38".
[[nodiscard]] std::string with_figures(double number, int figures);

}  // namespace keenfall::base
