#include "exchange/reading_unit.h"

#include "base/require.h"
#include "materials/units.h"

namespace keenfall::exchange {

std::optional<std::string> unit_for_kind(std::string_view written,
                                         const trials::ReadingKind& kind) {
  const materials::Unit* const unit = materials::find_unit(written);
  const materials::Unit* const wanted = materials::find_unit(kind.unit);
  if (unit == nullptr || wanted == nullptr) {
    if (!materials::same_dimension(written, kind.unit)) return std::nullopt;
    return kind.unit;
  }
  if (unit->dimension == wanted->dimension) return std::string(unit->name);
  const bool is_weight = unit->dimension == materials::Dimension::mass &&
                         wanted->dimension == materials::Dimension::force;
  const materials::Unit* const weight =
      is_weight ? materials::find_unit(std::string(unit->name) + "f") : nullptr;
  if (weight == nullptr) return std::nullopt;
  return std::string(weight->name);
}

bool is_force_unit(std::string_view written) {
  const materials::Unit* const unit = materials::find_unit(written);
  return unit != nullptr && (unit->dimension == materials::Dimension::force ||
                             unit->dimension == materials::Dimension::mass);
}

double converted_reading(double reading, const std::string& from, const std::string& to) {
  if (from == to) return reading;
  const auto converted = materials::convert(reading, from, to);
  base::require(converted.has_value(), "units of one kind convert into one another");
  return *converted;
}

}  // namespace keenfall::exchange
