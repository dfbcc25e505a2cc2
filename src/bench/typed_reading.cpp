#include "bench/typed_reading.h"

#include "materials/units.h"

namespace keenfall::bench {

const std::string& unit_of(const RunSheet& sheet, const ReadingTaken& taken) {
  return taken.unit.empty() ? sheet.unit : taken.unit;
}

bool is_unit_for(const RunSheet& sheet, const std::string& unit) {
  return unit == sheet.unit || materials::convert(1, unit, sheet.unit).has_value();
}

double in_unit_of(const RunSheet& sheet, const ReadingTaken& taken) {
  const std::string& unit = unit_of(sheet, taken);
  if (unit == sheet.unit) return taken.reading;
  return materials::convert(taken.reading, unit, sheet.unit).value_or(taken.reading);
}

}  // namespace keenfall::bench
