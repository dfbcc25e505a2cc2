// A number and its unit as a person writes them in one go: "400gf", "3.9 N", "0,3 mm".
//
// A decimal comma is taken unless it could be a mark between thousands ("1,000"), which is refused.
// The unit is the text behind the number: in the table's spelling where the table knows it, as
// written where not, empty where there is none.
#pragma once

#include "base/result.h"

#include <string>
#include <string_view>

namespace keenfall::materials {

struct Quantity {
  double number = 0;
  std::string unit;

  bool operator==(const Quantity&) const = default;
};

[[nodiscard]] base::Result<Quantity> parse_quantity(std::string_view text);

}  // namespace keenfall::materials
