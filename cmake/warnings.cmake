# Warnings are errors, for our own code only (third-party headers are SYSTEM).
# missing-field-initializers is off because aggregates are built with designated initialisers that
# leave the defaulted fields out on purpose.
# restrict is off because g++ 12 sees an overlap in every optimised `"text" + std::string(...)`
# (GCC bug 105651).
# maybe-uninitialized is off because g++ 12 sees it in temporaries built with designated initialisers
# once it inlines whole folders (unity build); the sanitizers look for the real thing.
add_library(keenfall_warnings INTERFACE)
target_compile_options(keenfall_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wswitch-enum
  -Wno-missing-field-initializers -Werror)
target_compile_options(keenfall_warnings INTERFACE $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict -Wno-maybe-uninitialized>)
# g++ itself warns that sanitizers make maybe-uninitialized see ghosts (here: inside <regex>).
if(KEENFALL_SANITIZE)
  target_compile_options(keenfall_warnings INTERFACE
    $<$<CXX_COMPILER_ID:GNU>:-Wno-maybe-uninitialized>)
endif()
