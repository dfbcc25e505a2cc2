// The revision of what a page is told as that object. Private to this folder (it shows the
// library).
#pragma once

#include "wire/json_pieces.h"

#include <string>

namespace keenfall::wire {

// 16 hexadecimal digits.
[[nodiscard]] std::string revision_of_told(const Json& object);

}  // namespace keenfall::wire
