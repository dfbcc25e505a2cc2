// The rows of the table of microstructures, in two files.
#pragma once

#include "materials/microstructure.h"

#include <vector>

namespace keenfall::materials {

// bulk_hv is not filled in: find_microstructure's table does that from the hardness.
[[nodiscard]] std::vector<Microstructure>
lean_microstructures();  // next to no carbide, or only M3C
[[nodiscard]] std::vector<Microstructure> rich_microstructures();  // alloy carbides

}  // namespace keenfall::materials
