// A report as documented JSON: the judgements, what pictures of them need, and every run with its
// readings.
//
// In: a report. Out: one JSON document in UTF-8. Units as in judgement_json.h. Every number must be
// finite; anything else is a fault of ours and throws std::logic_error. Shape:
// docs/wire/report.schema.json, explained in docs/wire/README.md.
#pragma once

#include "telling/report.h"

#include <string>

namespace keenfall::wire {

inline constexpr int kReportFormatVersion = 1;

// For a file: indented, ending in a newline.
[[nodiscard]] std::string report_to_json(const telling::Report& report);

// For a <script type="application/json"> element: in one line and without any "<", so that nothing
// written in a table can end the element. Any reader of JSON reads the same values, but for names
// with characters that are not shown (base/unseen_character.h): U+FFFD stands for those.
[[nodiscard]] std::string report_to_json_in_page(const telling::Report& report);

}  // namespace keenfall::wire
