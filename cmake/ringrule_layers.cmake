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

# In a unity build several files are one for the compiler. These are compiled alone, for their private names meet those of
# others of their target. The path is the folder's under src/ or tests/.
set(ringrule_alone_optics board_corners box_check box_setup camera_fit marker_corners plate)
set(ringrule_alone_outline shaded_fin colour_picture edge_path empty_box find_outline silhouette trace)
set(ringrule_alone_midline landmarks seahorse spine)
set(ringrule_alone_imaging png)
set(ringrule_alone_statistics mixed_model mixed_predict least_squares)  # these take long by themselves
set(ringrule_alone_judge gain_comparison tank_level tell_thinness thinness)
set(ringrule_alone_records darwin_core package_export polyline_text row_history measure_rows store_records)
set(ringrule_alone_sheets animal_sheet card_sheet overlay_table plate_layout)
set(ringrule_alone_workflow house_file session_table stored_correction measure_again)
set(ringrule_alone_app brood_table_model check_panel decision_panel diets_page findings_page new_box_dialog trace_tool)
set(ringrule_alone_cli check_command log_commands)
set(ringrule_alone_test_app evidence_test app_test_main month_test)
set(ringrule_alone_test_cli lens_check_test measure_again_test)
set(ringrule_alone_test_geometry polyline_test)
set(ringrule_alone_test_measure repeats_test)
set(ringrule_alone_test_optics box_check_test plate_test rods_test spoiled_plates_test)
set(ringrule_alone_test_growth group_growth_test)
set(ringrule_alone_test_records exchange_test keeper_questions_test table_import_test whole_or_not_at_all_test)
set(ringrule_alone_test_sheets overlay_test)
set(ringrule_alone_test_outside mixed_test)
set(ringrule_alone_test_workflow house_file_test two_animals_test repeat_report_test remarks_page_test session_folder_test measure_again_test)

function(ringrule_compile_alone target folder names)
  foreach(name ${${names}})
    set_source_files_properties("${PROJECT_SOURCE_DIR}/${folder}/${name}.cpp" TARGET_DIRECTORY ${target}
      PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
  endforeach()
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
  ringrule_compile_alone(ringrule_${name} src/${name} ringrule_alone_${name})
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
  ringrule_compile_alone(test_${name} tests/${name} ringrule_alone_test_${name})
  target_link_libraries(test_${name} PRIVATE ringrule_test_main ${ARGN})
  target_compile_definitions(test_${name} PRIVATE RINGRULE_SOURCE_DIR="${PROJECT_SOURCE_DIR}")
  target_compile_options(test_${name} PRIVATE ${ringrule_quick_build})
  target_precompile_headers(test_${name} REUSE_FROM ringrule_test_headers)
  catch_discover_tests(test_${name} TEST_PREFIX "${name}: " PROPERTIES TIMEOUT 300)
endfunction()
