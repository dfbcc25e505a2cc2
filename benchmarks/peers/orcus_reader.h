// The peer of reading a table in our own language: liborcus' CSV parser, converting cuts and
// readings to numbers. What it does less: benchmarks/README.md.
#pragma once

#include "benchmarks/measured_child.h"

#include <string>

namespace keenfall::benchmarks {

// The readings and those struck. Throws where the file cannot be read or parsed.
[[nodiscard]] Findings read_with_orcus(const std::string& path);

}  // namespace keenfall::benchmarks
