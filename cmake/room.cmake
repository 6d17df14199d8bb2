# SPDX-License-Identifier: Apache-2.0
#
# A room is one folder of engine/ or shell/ that the build knows by name. It says which rooms it
# uses and lists its files, and becomes one library:
#
#   room(reading
#       USES knowledge
#       SOURCES read.cpp numbers.cpp
#       HEADERS read.hpp numbers.hpp
#       LIBRARIES fmt::fmt)
#
#   USES              rooms, linked publicly; scripts/check-includes reads this list too
#   SOURCES           may be left out: a room of headers alone becomes an INTERFACE library
#   HEADERS           every one must compile alone: a source includes the header of its name first (scripts/
#                     check-includes), the others are compiled by all_verify_interface_header_sets
#   LIBRARIES         used inside .cpp files only
#   PUBLIC_LIBRARIES  needed by the room's own headers (tl::expected is given to every room)
#   SHELL             the folder stands under shell/ and not under engine/
#
# The library is loafwright_<name>, with the alias loafwright::<name>. Includes are written from the
# root of the repository: #include "engine/quantity/units.hpp".
include_guard(GLOBAL)

set(CMAKE_VERIFY_INTERFACE_HEADER_SETS ON)

# Under the sanitizers half of the building is the optimiser's. Coroutines take it longest, and nothing is reckoned
# there. (Not for rooms that reckon, nor for tests: what they have inline, the linker takes for all.)
set(LOAFWRIGHT_UNOPTIMISED "" CACHE STRING "Rooms built with -O0")

# Stops with the names of all listed rooms and files that are not there.
function(loafwright_require)
    cmake_parse_arguments(PARSE_ARGV 0 arg "" "" "ROOMS;FILES")
    set(missing "")
    foreach(used IN LISTS arg_ROOMS)
        if(NOT TARGET loafwright_${used})
            list(APPEND missing "room ${used}")
        endif()
    endforeach()
    foreach(file IN LISTS arg_FILES)
        # Absolute paths are files made during the build.
        if(NOT IS_ABSOLUTE "${file}" AND NOT EXISTS "${CMAKE_CURRENT_SOURCE_DIR}/${file}")
            list(APPEND missing "${file}")
        endif()
    endforeach()
    if(missing)
        list(JOIN missing ", " words)
        message(FATAL_ERROR "${CMAKE_CURRENT_SOURCE_DIR}: not found: ${words}")
    endif()
endfunction()

function(room name)
    cmake_parse_arguments(PARSE_ARGV 1 arg
        "SHELL" "" "USES;SOURCES;HEADERS;LIBRARIES;PUBLIC_LIBRARIES")
    if(arg_UNPARSED_ARGUMENTS)
        message(FATAL_ERROR "room(${name}): did not expect '${arg_UNPARSED_ARGUMENTS}'")
    endif()
    set(side engine)
    if(arg_SHELL)
        set(side shell)
    endif()
    if(NOT CMAKE_CURRENT_SOURCE_DIR STREQUAL "${PROJECT_SOURCE_DIR}/${side}/${name}")
        message(FATAL_ERROR "room(${name}) belongs in ${side}/${name}/CMakeLists.txt")
    endif()
    loafwright_require(ROOMS ${arg_USES} FILES ${arg_SOURCES} ${arg_HEADERS})

    set(target loafwright_${name})
    set(scope PUBLIC)
    set(inside PRIVATE)
    if(arg_SOURCES)
        add_library(${target} STATIC ${arg_SOURCES})
        loafwright_warnings(${target})
        if(name IN_LIST LOAFWRIGHT_UNOPTIMISED)
            target_compile_options(${target} PRIVATE -O0)
        endif()
    else()
        add_library(${target} INTERFACE)
        set(scope INTERFACE)
        set(inside INTERFACE)
    endif()
    add_library(loafwright::${name} ALIAS ${target})
    set(alone "")
    foreach(header IN LISTS arg_HEADERS)
        string(REGEX REPLACE "\\.hpp$" ".cpp" source "${header}")
        if(NOT source IN_LIST arg_SOURCES)
            list(APPEND alone "${header}")
        endif()
    endforeach()
    target_sources(${target}
        ${scope}
            FILE_SET HEADERS BASE_DIRS "${PROJECT_SOURCE_DIR}" FILES ${arg_HEADERS}
            FILE_SET alone TYPE HEADERS BASE_DIRS "${PROJECT_SOURCE_DIR}" FILES ${alone})
    set_target_properties(${target} PROPERTIES INTERFACE_HEADER_SETS_TO_VERIFY alone)
    target_compile_features(${target} ${scope} cxx_std_20)
    target_link_libraries(${target} ${scope} tl::expected ${arg_PUBLIC_LIBRARIES})
    if(arg_LIBRARIES)
        target_link_libraries(${target} ${inside} ${arg_LIBRARIES})
    endif()
    foreach(used IN LISTS arg_USES)
        target_link_libraries(${target} ${scope} loafwright::${used})
    endforeach()

    list(JOIN arg_USES " " uses)
    set_property(GLOBAL APPEND PROPERTY LOAFWRIGHT_ROOMS "${side}/${name}: ${uses}")
endfunction()

# A program made of rooms: program(loafwright USES cli SOURCES main.cpp). It is put directly into
# the build folder, and its sources know LOAFWRIGHT_VERSION, a string.
function(program name)
    cmake_parse_arguments(PARSE_ARGV 1 arg "" "" "USES;SOURCES;LIBRARIES")
    loafwright_require(ROOMS ${arg_USES} FILES ${arg_SOURCES})
    add_executable(${name} ${arg_SOURCES})
    loafwright_warnings(${name})
    list(TRANSFORM arg_USES PREPEND loafwright::)
    target_link_libraries(${name} PRIVATE ${arg_USES} ${arg_LIBRARIES})
    # A library that no linked object calls is not loaded either.
    target_link_options(${name} PRIVATE -Wl,--as-needed)
    target_compile_definitions(${name} PRIVATE "LOAFWRIGHT_VERSION=\"${PROJECT_VERSION}\"")
    set_target_properties(${name} PROPERTIES RUNTIME_OUTPUT_DIRECTORY "${PROJECT_BINARY_DIR}")
endfunction()

# Writes the rooms and what each uses to rooms.txt in the build folder, one room a line.
function(write_room_list)
    get_property(rooms GLOBAL PROPERTY LOAFWRIGHT_ROOMS)
    list(JOIN rooms "\n" lines)
    file(CONFIGURE OUTPUT "${PROJECT_BINARY_DIR}/rooms.txt" CONTENT "${lines}\n" @ONLY)
endfunction()
