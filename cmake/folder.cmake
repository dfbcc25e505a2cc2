# keenfall_folder(<name> HEADERS ... SOURCES ... DEPENDS ... PRIVATE_LIBRARIES ... PUBLIC_LIBRARIES ...)
#   One library per folder of src/, keenfall::<name>. DEPENDS names other folders.
# keenfall_tests(<name> SOURCES ... LIBRARIES ...)
#   One test program per folder, keenfall_<name>_test, each fact a ctest of its own.
function(keenfall_folder name)
  cmake_parse_arguments(ARG "" "" "HEADERS;SOURCES;DEPENDS;PRIVATE_LIBRARIES;PUBLIC_LIBRARIES" ${ARGN})
  set(target keenfall_${name})
  if(ARG_SOURCES)
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
  if(NOT KEENFALL_TESTS)
    return()
  endif()
  cmake_parse_arguments(ARG "" "" "SOURCES;LIBRARIES" ${ARGN})
  set(target keenfall_${name}_test)
  add_executable(${target} ${ARG_SOURCES})
  target_link_libraries(${target} PRIVATE keenfall::${name} keenfall_warnings ${ARG_LIBRARIES}
                        GTest::gtest GTest::gmock GTest::gtest_main rapidcheck)
  target_compile_definitions(${target} PRIVATE
    KEENFALL_SOURCE_DIR="${CMAKE_SOURCE_DIR}" KEENFALL_BUILD_DIR="${CMAKE_BINARY_DIR}")
  gtest_discover_tests(${target} TEST_PREFIX "${name}: " PROPERTIES TIMEOUT 600
                       DISCOVERY_TIMEOUT 120)
endfunction()
