// A constant that is poorly known: what is usually taken, and where it may well lie.
#pragma once

#include "materials/trust.h"

namespace keenfall::sharpening {

struct Estimate {
  double typical = 0;
  double lo = 0;
  double hi = 0;
  materials::Provenance from;

  [[nodiscard]] bool is_known() const { return lo == hi; }

  bool operator==(const Estimate&) const = default;
};

}  // namespace keenfall::sharpening
