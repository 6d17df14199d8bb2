# SPDX-License-Identifier: Apache-2.0
#
# Test programs, one a room, fuzz targets and benchmarks. Each function is used in the folder that
# holds the files:
#
#   room_tests(reading USES reading SOURCES numbers_test.cpp read_test.cpp)
#   fuzz_target(read USES reading SOURCES read.cpp)            corpus: fuzz/corpus/read/
#   bench_target(plan USES planning SOURCES plan.cpp)
#
# Tests run with the root of the repository as working folder; LOAFWRIGHT_ROOT is that folder as a
# string literal, for files of test data.
include_guard(GLOBAL)

# Two thousand starts of a program cost the sanitizers minutes. A fault is found all the same, and
# named by the program's own words.
option(LOAFWRIGHT_WHOLE_TESTS "ctest runs each test program once, and not once for each test" OFF)

function(loafwright_side_program name)
    cmake_parse_arguments(PARSE_ARGV 1 arg "" "" "USES;SOURCES;LIBRARIES")
    if(arg_UNPARSED_ARGUMENTS)
        message(FATAL_ERROR "${name}: did not expect '${arg_UNPARSED_ARGUMENTS}'")
    endif()
    loafwright_require(ROOMS ${arg_USES} FILES ${arg_SOURCES})
    add_executable(${name} ${arg_SOURCES})
    loafwright_warnings(${name})
    list(TRANSFORM arg_USES PREPEND loafwright::)
    target_link_libraries(${name} PRIVATE ${arg_USES} ${arg_LIBRARIES})
    target_include_directories(${name} PRIVATE "${PROJECT_SOURCE_DIR}")
    target_compile_definitions(${name} PRIVATE "LOAFWRIGHT_ROOT=\"${PROJECT_SOURCE_DIR}\"")
endfunction()

# Makes test_<name>. Further arguments: LIBRARIES, for libraries the tests themselves use; TOGETHER,
# where something that is slow to start serves all tests of the program: ctest then runs it once and
# not once for each test.
function(room_tests name)
    cmake_parse_arguments(PARSE_ARGV 1 arg "TOGETHER" "" "")
    loafwright_side_program(test_${name} ${arg_UNPARSED_ARGUMENTS}
        LIBRARIES GTest::gtest_main rapidcheck rapidcheck_gtest)
    if(arg_TOGETHER OR LOAFWRIGHT_WHOLE_TESTS)
        add_test(NAME ${name}.together COMMAND test_${name} --gtest_brief=1
            WORKING_DIRECTORY "${PROJECT_SOURCE_DIR}")
        set_tests_properties(${name}.together PROPERTIES LABELS "${name}" TIMEOUT 3600)
        return()
    endif()
    gtest_discover_tests(test_${name}
        DISCOVERY_MODE PRE_TEST
        WORKING_DIRECTORY "${PROJECT_SOURCE_DIR}"
        PROPERTIES LABELS "${name}" TIMEOUT 300)
endfunction()

# Makes fuzz_<name> from a file that defines LLVMFuzzerTestOneInput. In the asan preset libFuzzer
# drives it; in every other build a plain main does. Either runs its corpus as the test fuzz.<name>.
function(fuzz_target name)
    if(LOAFWRIGHT_FUZZ)
        loafwright_side_program(fuzz_${name} ${ARGN})
        if(TARGET fuzz_${name})
            target_link_options(fuzz_${name} PRIVATE -fsanitize=fuzzer)
        endif()
    else()
        loafwright_side_program(fuzz_${name} ${ARGN} LIBRARIES loafwright_fuzz_entry)
    endif()
    if(NOT TARGET fuzz_${name})
        return()
    endif()
    set(corpus "${PROJECT_SOURCE_DIR}/fuzz/corpus/${name}")
    if(NOT IS_DIRECTORY "${corpus}")
        message(FATAL_ERROR "fuzz_target(${name}) needs its first inputs in fuzz/corpus/${name}/")
    endif()
    set_property(GLOBAL APPEND PROPERTY LOAFWRIGHT_FUZZ_TARGETS ${name})
    set(once "")
    if(LOAFWRIGHT_FUZZ)
        set(once -runs=0)
    endif()
    add_test(NAME fuzz.${name} COMMAND fuzz_${name} ${once} "${corpus}")
    set_tests_properties(fuzz.${name} PROPERTIES LABELS fuzz TIMEOUT 300)
endfunction()

# Makes bench_<name> with Google Benchmark.
function(bench_target name)
    loafwright_side_program(bench_${name} ${ARGN} LIBRARIES benchmark::benchmark_main)
    if(TARGET bench_${name})
        set_property(GLOBAL APPEND PROPERTY LOAFWRIGHT_BENCH_TARGETS ${name})
        add_dependencies(benches bench_${name})
    endif()
endfunction()

# Writes the names kept in a global property to a file in the build folder, one a line, for scripts.
function(write_names property file)
    get_property(names GLOBAL PROPERTY ${property})
    list(TRANSFORM names APPEND "\n")
    list(JOIN names "" lines)
    file(CONFIGURE OUTPUT "${PROJECT_BINARY_DIR}/${file}" CONTENT "${lines}" @ONLY)
endfunction()
