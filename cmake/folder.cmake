# keenfall_folder(<name> HEADERS ... SOURCES ... DEPENDS ... PRIVATE_LIBRARIES ... PUBLIC_LIBRARIES ...)
#   One library per folder of src/, keenfall::<name>. DEPENDS names other folders.
# keenfall_tests(<name> SOURCES ... LONG_SOURCES ... TABLE_SOURCES ... LIBRARIES ...)
#   One test program per folder, keenfall_<name>_test, each fact a ctest of its own. LONG_SOURCES make
#   a second, keenfall_<name>_long_test, labelled `long`: too slow to repeat under sanitizers in the
#   everyday gate (./keen guard does that). TABLE_SOURCES make keenfall_<name>_tables_test, labelled
#   `tables`: whole tables of the documents, hundreds of fits each, of which the others have short forms
#   (./keen guard holds them).
function(keenfall_folder name)
  cmake_parse_arguments(ARG "" "" "HEADERS;SOURCES;DEPENDS;PRIVATE_LIBRARIES;PUBLIC_LIBRARIES" ${ARGN})
  set(target keenfall_${name})
  if(ARG_SOURCES)
    keenfall_tidy_again(${ARG_SOURCES})
    add_library(${target} STATIC ${ARG_SOURCES})
    set(scope PUBLIC)
    target_link_libraries(${target} PRIVATE keenfall_warnings ${ARG_PRIVATE_LIBRARIES})
  else()
    add_library(${target} INTERFACE)
    set(scope INTERFACE)
  endif()
  add_library(keenfall::${name} ALIAS ${target})
  target_sources(${target} ${scope} FILE_SET HEADERS BASE_DIRS ${CMAKE_SOURCE_DIR}/src
                 FILES ${ARG_HEADERS})
  target_link_libraries(${target} ${scope} ${ARG_PUBLIC_LIBRARIES})
  foreach(folder IN LISTS ARG_DEPENDS)
    target_link_libraries(${target} ${scope} keenfall::${folder})
  endforeach()
endfunction()

function(keenfall_tests name)
  if(NOT keenfall_tests_wanted)
    return()
  endif()
  cmake_parse_arguments(ARG "" "" "SOURCES;LONG_SOURCES;TABLE_SOURCES;LIBRARIES" ${ARGN})
  keenfall_test_program(${name} ${name}_test "SOURCES;${ARG_SOURCES};LIBRARIES;${ARG_LIBRARIES}")
  if(ARG_LONG_SOURCES AND KEENFALL_SLOW_TESTS)
    keenfall_test_program(${name} ${name}_long_test
                          "SOURCES;${ARG_LONG_SOURCES};LIBRARIES;${ARG_LIBRARIES}" long)
  endif()
  if(ARG_TABLE_SOURCES AND KEENFALL_TABLE_TESTS)
    keenfall_test_program(${name} ${name}_tables_test
                          "SOURCES;${ARG_TABLE_SOURCES};LIBRARIES;${ARG_LIBRARIES}" tables)
  endif()
endfunction()

# The label is the folder's name, `long` or `tables`.
function(keenfall_test_program name program lists)
  cmake_parse_arguments(ARG "" "" "SOURCES;LIBRARIES" ${lists})
  set(target keenfall_${program})
  keenfall_tidy_again(${ARG_SOURCES})
  add_executable(${target} ${ARG_SOURCES})
  target_link_libraries(${target} PRIVATE keenfall::${name} keenfall_warnings keenfall_quickly_compiled ${ARG_LIBRARIES}
                        GTest::gtest GTest::gmock GTest::gtest_main rapidcheck)
  target_compile_definitions(${target} PRIVATE
    KEENFALL_SOURCE_DIR="${CMAKE_SOURCE_DIR}" KEENFALL_BUILD_DIR="${CMAKE_BINARY_DIR}")
  set(label ${ARGN})
  if(NOT label)
    set(label ${name})
  endif()
  gtest_discover_tests(${target} TEST_PREFIX "${name}: " DISCOVERY_TIMEOUT 120
                       PROPERTIES TIMEOUT 600 LABELS ${label})
endfunction()

# For tests' own sources: half the time to compile, and what they call is the optimised code all the same.
add_library(keenfall_quickly_compiled INTERFACE)
target_compile_options(keenfall_quickly_compiled INTERFACE -O0)

# A change of .clang-tidy makes clang-tidy read every source again.
function(keenfall_tidy_again)
  if(CMAKE_CXX_CLANG_TIDY)
    set_source_files_properties(${ARGN} PROPERTIES OBJECT_DEPENDS ${CMAKE_SOURCE_DIR}/.clang-tidy)
  endif()
endfunction()
