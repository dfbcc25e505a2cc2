#include "verdicts/compared_where.h"

#include "base/plain_number.h"

#include <cstddef>

namespace keenfall::verdicts {

std::string asked_reading_text(double reading) {
  constexpr std::size_t kAsTyped = 6;
  std::string plain = base::plain_number(reading);
  return plain.size() <= kAsTyped ? plain : base::with_figures(reading, 4);
}

}  // namespace keenfall::verdicts
