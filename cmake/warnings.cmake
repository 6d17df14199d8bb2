# SPDX-License-Identifier: Apache-2.0
#
# The warnings every target of ours is built with. They are errors, except in the sanitizer presets
# (LOAFWRIGHT_WERROR=OFF): there the instrumented code makes compilers report things about library
# headers that the plain build does not. Headers of libraries come in as SYSTEM and are not judged.
include_guard(GLOBAL)

option(LOAFWRIGHT_WERROR "Warnings are errors" ON)

function(loafwright_warnings target)
    target_compile_options(${target} PRIVATE
        -Wall
        -Wextra
        -Wpedantic
        -Wconversion
        -Wsign-conversion
        -Wshadow
        -Wold-style-cast
        -Wnon-virtual-dtor
        -Woverloaded-virtual
        -Wmissing-declarations
        -Wsuggest-override
        -Wcast-qual
        -Wundef
        # g++ alone knows these two.
        $<$<CXX_COMPILER_ID:GNU>:-Wduplicated-cond>
        $<$<CXX_COMPILER_ID:GNU>:-Wlogical-op>
        # g++ 12 reports overlapping copies inside std::string that cannot be (GCC bug 105651).
        $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict>
        $<$<BOOL:${LOAFWRIGHT_WERROR}>:-Werror>)
endfunction()
