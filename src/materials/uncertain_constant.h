// A constant that is poorly known: what it is, what is usually taken, and where it may well lie.
//
// Of a steel, a medium, a stone or a model. Where nothing but one figure is said of it (a person's
// own file), its range is that figure.
#pragma once

#include "materials/trust.h"

#include <string>

namespace keenfall::materials {

struct Estimate {
  double typical = 0;
  double lo = 0;
  double hi = 0;
  Provenance from;

  [[nodiscard]] bool is_known() const { return lo == hi; }

  bool operator==(const Estimate&) const = default;
};

struct UncertainConstant {
  std::string name;   // "width of grooves", "toughness of AISI A11"
  std::string field;  // as a table or a document spells it, unit and all: "groove_width_um"
  std::string unit;   // "µm"; empty: none
  Estimate estimate;

  bool operator==(const UncertainConstant&) const = default;
};

}  // namespace keenfall::materials
