# KEENFALL_SANITIZE is a list such as "address,undefined" or "thread"; empty for none.
set(KEENFALL_SANITIZE "" CACHE STRING "Sanitizers to build with")
if(KEENFALL_SANITIZE)
  add_compile_options(-fsanitize=${KEENFALL_SANITIZE} -fno-omit-frame-pointer
                      -fno-sanitize-recover=all)
  add_link_options(-fsanitize=${KEENFALL_SANITIZE})
endif()
