# Warnings are errors, for our own code only (third-party headers are SYSTEM).
# missing-field-initializers is off because aggregates are built with designated initialisers that
# leave the defaulted fields out on purpose.
# restrict is off because g++ 12 sees an overlap in every optimised `"text" + std::string(...)`
# (GCC bug 105651).
add_library(keenfall_warnings INTERFACE)
target_compile_options(keenfall_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wswitch-enum
  -Wno-missing-field-initializers -Werror)
target_compile_options(keenfall_warnings INTERFACE $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict>)
# g++ itself warns that sanitizers make maybe-uninitialized see ghosts (here: inside <regex>).
if(KEENFALL_SANITIZE)
  target_compile_options(keenfall_warnings INTERFACE
    $<$<CXX_COMPILER_ID:GNU>:-Wno-maybe-uninitialized>)
endif()
