#include "page/embedded.h"

// The assembler puts the files into the program byte for byte. CMake gives their paths, and makes
// this file anew when one of them changes.
#define KEENFALL_EMBED(name, path)      \
  asm(".section .rodata\n"              \
      ".global " #name "_begin\n" #name \
      "_begin:\n"                       \
      ".incbin \"" path                 \
      "\"\n"                            \
      ".global " #name "_end\n" #name   \
      "_end:\n"                         \
      ".byte 0\n"                       \
      ".text\n");                       \
  extern "C" const char name##_begin[]; \
  extern "C" const char name##_end[];

KEENFALL_EMBED(keenfall_report_script, KEENFALL_REPORT_SCRIPT)
KEENFALL_EMBED(keenfall_report_script_sha256, KEENFALL_REPORT_SCRIPT_SHA256)
KEENFALL_EMBED(keenfall_report_style, KEENFALL_REPORT_STYLE)
KEENFALL_EMBED(keenfall_report_methods, KEENFALL_REPORT_METHODS)

namespace keenfall::page {

namespace {

std::string_view between(const char* begin, const char* end) {
  return {begin, static_cast<std::string_view::size_type>(end - begin)};
}

}  // namespace

std::string_view report_script() {
  return between(keenfall_report_script_begin, keenfall_report_script_end);
}

std::string_view report_script_sha256() {
  return between(keenfall_report_script_sha256_begin, keenfall_report_script_sha256_end);
}

std::string_view report_style() {
  return between(keenfall_report_style_begin, keenfall_report_style_end);
}

std::string_view report_methods() {
  return between(keenfall_report_methods_begin, keenfall_report_methods_end);
}

}  // namespace keenfall::page
