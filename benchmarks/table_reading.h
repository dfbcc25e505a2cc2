// A table's file taken in as `keenfall judge` takes it in, and what that costs.
#pragma once

#include "base/result.h"
#include "benchmarks/long_table_file.h"
#include "benchmarks/measured_child.h"

namespace keenfall::benchmarks {

// Fails also where runs, readings, struck or doubtful ones are not as many as were written.
[[nodiscard]] base::Result<Measured> measured_reading(const TableFile& table);

}  // namespace keenfall::benchmarks
