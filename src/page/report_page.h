// A report as one HTML file that needs nothing else: it opens from a disk, a mail or a phone,
// prints, and fetches nothing.
//
// In: a report and its readings as a table (CSV). Out: the page in UTF-8. Everything is said in
// sentences and tables; a script in the page draws the pictures from the report's JSON beside it.
// A content policy keeps any other script from running. Throws std::logic_error where the report
// holds numbers that are not finite.
#pragma once

#include "telling/report.h"

#include <string>

namespace keenfall::page {

[[nodiscard]] std::string report_page(const telling::Report& report, const std::string& csv);

}  // namespace keenfall::page
