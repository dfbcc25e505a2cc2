#include "verdicts/compared_where.h"

#include "base/plain_number.h"

#include <cstddef>
#include <string>

namespace keenfall::verdicts {

namespace {

// A number that went through its log and back has its first twelve figures still.
double without_last_figures(double reading) { return std::stod(base::with_figures(reading, 12)); }

}  // namespace

std::string asked_reading_text(double reading) {
  constexpr std::size_t kAsTyped = 6;
  std::string plain = base::plain_number(without_last_figures(reading));
  return plain.size() <= kAsTyped ? plain : base::with_figures(reading, 4);
}

}  // namespace keenfall::verdicts
