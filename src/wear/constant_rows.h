// Every constant of media, finishes and the model of an apex, once: its name, its spelling in a
// table or a document, its unit, where it may lie, and where its usual figure comes from.
//
// Ranges are ours, wide on purpose. Constants that can only be seen as a product (wear rate, load,
// sliding) vary as one: the others are held. Of a medium or a finish that is none of the known
// ones, every number counts as declared by whoever wrote it: as they say, without a range.
#pragma once

#include "materials/uncertain_constant.h"
#include "wear/apex_scenario.h"

#include <span>
#include <string_view>
#include <vector>

namespace keenfall::wear {

struct ConstantRange {
  enum class Kind { held, multiples_of_usual, figures };
  Kind kind = Kind::held;
  double lo = 0;
  double hi = 0;
};

template <class Thing>
struct ConstantOf {
  std::string_view name;   // "width of grooves"
  std::string_view field;  // "groove_width_um", which is also a column of a person's own table
  std::string_view unit;   // "µm"; empty: none
  ConstantRange range;
  materials::Provenance from;  // of the figures of ours
  double& (*in)(Thing&) = nullptr;

  [[nodiscard]] double number_in(Thing thing) const { return in(thing); }
  [[nodiscard]] bool is_held() const { return range.kind == ConstantRange::Kind::held; }
};

[[nodiscard]] std::span<const ConstantOf<AbrasiveMedium>> medium_constants();
[[nodiscard]] std::span<const ConstantOf<EdgeFinish>> finish_constants();
// Of damage and reading.
[[nodiscard]] std::span<const ConstantOf<ApexScenario>> model_constants();

// Whether it is one of ours, every number of it.
[[nodiscard]] bool is_known(const AbrasiveMedium& medium);
[[nodiscard]] bool is_known(const EdgeFinish& finish);

[[nodiscard]] materials::UncertainConstant constant_of(const ConstantOf<AbrasiveMedium>& row,
                                                       const AbrasiveMedium& medium);
[[nodiscard]] materials::UncertainConstant constant_of(const ConstantOf<EdgeFinish>& row,
                                                       const EdgeFinish& finish);
[[nodiscard]] materials::UncertainConstant constant_of(const ConstantOf<ApexScenario>& row,
                                                       const ApexScenario& scenario);

}  // namespace keenfall::wear
