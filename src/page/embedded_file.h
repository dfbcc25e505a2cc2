// Puts a file into the program byte for byte, when the program is built.
//
// KEENFALL_EMBED(name, "path") stands at the top of a .cpp, outside namespaces and of unity builds;
// embedded_between gives what it holds. CMake says the paths, and that the .cpp is made anew when a
// file changes (OBJECT_DEPENDS).
#pragma once

#include <string_view>

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

namespace keenfall::page {

[[nodiscard]] inline std::string_view embedded_between(const char* begin, const char* end) {
  return {begin, static_cast<std::string_view::size_type>(end - begin)};
}

}  // namespace keenfall::page
