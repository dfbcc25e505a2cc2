// Columns of a person's own table in which a number may have a range beside it: "abrasive_hv", with
// "abrasive_hv_lo" and "abrasive_hv_hi".
//
// In: the column of the number; of a row the number and both ends, an end that is not said being
// not a number. Out: where the number may lie, declared by whoever wrote the file. Fails where an
// end lies on the wrong side of the number, with line and column.
#pragma once

#include "base/result.h"
#include "exchange/named_numbers.h"
#include "materials/microstructure.h"

#include <string>
#include <vector>

namespace keenfall::workbench {

inline constexpr materials::Provenance kDeclared = {"own-file", materials::TrustMark::declared};

// The columns of both ends, as wide as the number's own and neither required.
[[nodiscard]] std::vector<exchange::NumberColumn> range_columns(
    const exchange::NumberColumn& column);

struct DeclaredNumber {
  std::string column;
  double number = 0;
  double lo = 0;  // not a number: not said
  double hi = 0;
};

struct DeclaredPlace {
  std::string file;
  std::size_t line = 0;
};

// An end that is not said is the number itself.
[[nodiscard]] materials::PlausibleRange declared_range(const DeclaredNumber& declared,
                                                       const DeclaredPlace& place,
                                                       std::vector<base::Problem>& problems);

}  // namespace keenfall::workbench
