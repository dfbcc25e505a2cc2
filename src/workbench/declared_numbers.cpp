#include "workbench/declared_numbers.h"

#include "base/plain_number.h"

#include <cmath>
#include <limits>

namespace keenfall::workbench {

std::vector<exchange::NumberColumn> range_columns(const exchange::NumberColumn& column) {
  std::vector<exchange::NumberColumn> ends = {column, column};
  ends[0].name += "_lo";
  ends[1].name += "_hi";
  for (exchange::NumberColumn& end : ends) end.otherwise = std::numeric_limits<double>::quiet_NaN();
  return ends;
}

materials::PlausibleRange declared_range(const DeclaredNumber& declared,
                                         const DeclaredPlace& place,
                                         std::vector<base::Problem>& problems) {
  const double lo = std::isnan(declared.lo) ? declared.number : declared.lo;
  const double hi = std::isnan(declared.hi) ? declared.number : declared.hi;
  const auto refuse = [&](const std::string& end, double found, const std::string& side) {
    problems.push_back({.kind = base::ProblemKind::conflicting,
                        .sentence = declared.column + end + " is " + base::plain_number(found) +
                                    " and " + declared.column + " " +
                                    base::plain_number(declared.number) +
                                    ": a number lies inside its own range.",
                        .place = {.file = place.file,
                                  .line = place.line,
                                  .column = declared.column + end,
                                  .found = base::plain_number(found)},
                        .accepted = side + base::plain_number(declared.number)});
  };
  if (lo > declared.number) refuse("_lo", lo, "at most ");
  if (hi < declared.number) refuse("_hi", hi, "at least ");
  return {.lo = lo, .hi = hi, .from = kDeclared};
}

}  // namespace keenfall::workbench
