// One cell of a data package's CSV as a value of the field it stands in.
//
// In: the cell's text and how its column is written (markers for missing, decimal mark, grouping).
// Out: the value, or why it is none, as the end of a sentence ("where a whole number belongs").
// Numbers are read exactly or not at all (Table Schema, "integer" and "number"; no NaN and INF).
#pragma once

#include "exchange/data_package.h"

#include <span>
#include <string>
#include <string_view>

namespace keenfall::exchange {

struct PackageColumn {
  PackageField field;
  std::span<const std::string> missing_values;
  char decimal_mark = '.';
  char group_mark = '\0';  // '\0': digits are not grouped
};

struct PackageCellRead {
  PackageCell value;
  std::string fault{};  // empty where there is a value
};

[[nodiscard]] PackageCellRead package_cell(std::string_view text, const PackageColumn& column);

}  // namespace keenfall::exchange
