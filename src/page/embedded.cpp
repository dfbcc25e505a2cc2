#include "page/embedded.h"

#include "page/embedded_file.h"

KEENFALL_EMBED(keenfall_report_script, KEENFALL_REPORT_SCRIPT)
KEENFALL_EMBED(keenfall_report_script_sha256, KEENFALL_REPORT_SCRIPT_SHA256)
KEENFALL_EMBED(keenfall_report_style, KEENFALL_REPORT_STYLE)
KEENFALL_EMBED(keenfall_report_methods, KEENFALL_REPORT_METHODS)

namespace keenfall::page {

std::string_view report_script() {
  return embedded_between(keenfall_report_script_begin, keenfall_report_script_end);
}

std::string_view report_script_sha256() {
  return embedded_between(keenfall_report_script_sha256_begin, keenfall_report_script_sha256_end);
}

std::string_view report_style() {
  return embedded_between(keenfall_report_style_begin, keenfall_report_style_end);
}

std::string_view report_methods() {
  return embedded_between(keenfall_report_methods_begin, keenfall_report_methods_end);
}

}  // namespace keenfall::page
