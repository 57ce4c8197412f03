# SPDX-License-Identifier: GPL-3.0-or-later
# Targets by layer: ringrule_layer(NAME LAYERS lower... LIBRARIES third-party... PRECOMPILE heavy-header...).
#
# -fPIC everywhere, as Qt asks, so that one precompiled header serves libraries and programs.

add_library(ringrule_warnings INTERFACE)
target_compile_options(ringrule_warnings INTERFACE
  -fPIC -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wnon-virtual-dtor -Wold-style-cast -Woverloaded-virtual -Werror)
if(RINGRULE_ASAN)
  target_compile_options(ringrule_warnings INTERFACE -fsanitize=address,undefined -fno-omit-frame-pointer
    -Wno-maybe-uninitialized)  # GCC 12 sees ghosts in the standard library under the sanitizers
  target_link_options(ringrule_warnings INTERFACE -fsanitize=address,undefined)
endif()

# Tests and the command line compute little themselves: in the dev preset their build time counts for more.
set(ringrule_quick_build $<$<CONFIG:RelWithDebInfo>:-O1>)

function(ringrule_settings target)
  target_include_directories(${target} PUBLIC "${PROJECT_SOURCE_DIR}/include" PRIVATE "${PROJECT_SOURCE_DIR}/src")
  # Third-party headers are not ours to warn about.
  target_include_directories(${target} SYSTEM PUBLIC ${OpenCV_INCLUDE_DIRS})
  target_compile_definitions(${target} PRIVATE RINGRULE_VERSION="${PROJECT_VERSION}")
  target_link_libraries(${target} PUBLIC $<BUILD_INTERFACE:ringrule_warnings>)
endfunction()

# In a unity build, files whose private names meet those of others in their target are compiled alone.
function(ringrule_alone target folder)
  list(TRANSFORM ARGN PREPEND "${PROJECT_SOURCE_DIR}/${folder}/")
  set_source_files_properties(${ARGN} TARGET_DIRECTORY ${target} PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
endfunction()

function(ringrule_layer name)
  cmake_parse_arguments(ARG "" "" "LAYERS;LIBRARIES;PRECOMPILE" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS "${PROJECT_SOURCE_DIR}/src/${name}/*.cpp")
  if(sources)
    add_library(ringrule_${name} STATIC ${sources})
    ringrule_settings(ringrule_${name})
    set(scope PUBLIC)
  else()
    add_library(ringrule_${name} INTERFACE)
    target_include_directories(ringrule_${name} INTERFACE "${PROJECT_SOURCE_DIR}/include")
    set(scope INTERFACE)
  endif()
  if(sources AND ARG_PRECOMPILE)
    target_precompile_headers(ringrule_${name} PRIVATE ${ARG_PRECOMPILE})
  endif()
  list(TRANSFORM ARG_LAYERS PREPEND ringrule_)
  target_link_libraries(ringrule_${name} ${scope} ringrule_root ${ARG_LAYERS} ${ARG_LIBRARIES})
endfunction()

# The tests of one layer: tests/NAME/*_test.cpp against its target and whatever else is named.
function(ringrule_tests name)
  file(GLOB sources CONFIGURE_DEPENDS "${PROJECT_SOURCE_DIR}/tests/${name}/*_test.cpp")
  if(NOT sources)
    return()
  endif()
  add_executable(test_${name} ${sources})
  ringrule_settings(test_${name})
  target_link_libraries(test_${name} PRIVATE ringrule_test_main ${ARGN})
  target_compile_definitions(test_${name} PRIVATE RINGRULE_SOURCE_DIR="${PROJECT_SOURCE_DIR}")
  target_compile_options(test_${name} PRIVATE ${ringrule_quick_build})
  target_precompile_headers(test_${name} REUSE_FROM ringrule_test_headers)
  catch_discover_tests(test_${name} TEST_PREFIX "${name}: " PROPERTIES TIMEOUT 300)
endfunction()
