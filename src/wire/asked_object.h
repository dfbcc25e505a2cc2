// What is asked and planned as a JSON object. Private to this folder (it shows the library).
#pragma once

#include "wire/asked_json.h"
#include "wire/json_pieces.h"

namespace keenfall::wire {

// Without a plan where nothing of it was said yet.
[[nodiscard]] Json asked_json(const AskedTold& asked, const materials::ToldIn& told);

}  // namespace keenfall::wire
