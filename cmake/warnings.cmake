# Warnings are errors, for our own code only (third-party headers are SYSTEM).
# missing-field-initializers is off because aggregates are built with designated initialisers that
# leave the defaulted fields out on purpose.
add_library(keenfall_warnings INTERFACE)
target_compile_options(keenfall_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wswitch-enum
  -Wno-missing-field-initializers -Werror)
