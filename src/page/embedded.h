// The files that every page carries with it, as they were when the program was built: its script
// and style (made from web/) and the words on methods (report/methods.html).
#pragma once

#include <string_view>

namespace keenfall::page {

[[nodiscard]] std::string_view report_script();
// In base64: what a content policy names the script by.
[[nodiscard]] std::string_view report_script_sha256();
[[nodiscard]] std::string_view report_style();
[[nodiscard]] std::string_view report_methods();

}  // namespace keenfall::page
