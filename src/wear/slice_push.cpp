#include "wear/slice_push.h"

#include <cmath>

namespace keenfall::wear {

SlicingForce slicing_force(double slice_push_ratio) {
  const double path = 1 + slice_push_ratio * slice_push_ratio;
  return {.across_ratio = 1 / path,
          .along_ratio = slice_push_ratio / path,
          .together_ratio = 1 / std::sqrt(path)};
}

double pushing_force_newton(double toughness_joule_per_m2, double width_mm) {
  return toughness_joule_per_m2 * width_mm * 1e-3;
}

}  // namespace keenfall::wear
