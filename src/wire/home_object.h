// A trial's path as JSON, wherever it stands. Private to this folder (it shows the library).
#pragma once

#include "wire/home.h"
#include "wire/json_pieces.h"

namespace keenfall::wire {

// Writes `steps` and `next`.
void put_path(Json& object, const Path& path);

}  // namespace keenfall::wire
