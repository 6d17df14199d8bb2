# SPDX-License-Identifier: Apache-2.0
#
# CaDiCaL as Debian packages it brings a header and a static library, and neither a .pc file nor a
# CMake one: the target is made here.
include_guard(GLOBAL)

find_path(CADICAL_INCLUDE_DIR cadical.hpp REQUIRED)
find_library(CADICAL_LIBRARY cadical REQUIRED)
add_library(cadical::cadical STATIC IMPORTED GLOBAL)
set_target_properties(cadical::cadical PROPERTIES
    IMPORTED_LOCATION "${CADICAL_LIBRARY}"
    INTERFACE_INCLUDE_DIRECTORIES "${CADICAL_INCLUDE_DIR}")
mark_as_advanced(CADICAL_INCLUDE_DIR CADICAL_LIBRARY)
