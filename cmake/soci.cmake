# SPDX-License-Identifier: Apache-2.0
#
# SOCI as Debian 12 has it comes without a CMake package: loafwright::soci is the core and the two
# backends.
find_path(SOCI_INCLUDE soci/soci.h REQUIRED)
add_library(loafwright_soci INTERFACE)
add_library(loafwright::soci ALIAS loafwright_soci)
target_include_directories(loafwright_soci SYSTEM INTERFACE
    "${SOCI_INCLUDE}" "${SOCI_INCLUDE}/soci" ${LIBPQ_INCLUDE_DIRS})
foreach(part IN ITEMS core sqlite3 postgresql)
    find_library(SOCI_${part} soci_${part} REQUIRED)
    target_link_libraries(loafwright_soci INTERFACE "${SOCI_${part}}")
endforeach()
