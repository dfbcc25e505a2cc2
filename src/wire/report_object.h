// A report as a JSON object, wherever it stands. Private to this folder (it shows the library).
#pragma once

#include "telling/report.h"
#include "wire/json_pieces.h"

namespace keenfall::wire {

[[nodiscard]] Json report_json(const telling::Report& report);

}  // namespace keenfall::wire
