# SPDX-License-Identifier: Apache-2.0
#
# Shared by run, test, .ci/run and scripts/. Sourced with `root` set to the repository's folder.
# shellcheck shell=bash disable=SC2154

# With the minutes since .ci/run began, where it did: a limit on them is easier kept when one sees where they go.
say() {
    local since=
    [ -z "${CI_BEGAN:-}" ] || since=" (minute $((($(date +%s) - CI_BEGAN) / 60)))"
    printf '%s: %s%s\n' "${0##*/}" "$*" "$since" >&2
}

# One process at a time in a build folder. The lock is held on descriptor 9 until this process ends
# or calls unlock.
lock_build() {
    mkdir -p "$root/build"
    exec 9>"$root/build/.lock-$1"
    flock 9
}
unlock_build() { exec 9>&-; }

# Runs a command quietly; shows what it said only when it failed.
quietly() {
    local said status=0
    said=$("$@" 2>&1) || status=$?
    [ "$status" -eq 0 ] || printf '%s\n' "$said" >&2
    return "$status"
}

# Makes build/<preset> ready for ninja. A folder that was configured for another place (a moved or
# copied clone) is made anew; one that is older than the presets is configured again, since ninja
# itself does not watch them.
configure() {
    local preset=$1 folder=$root/build/$1
    if [ -f "$folder/CMakeCache.txt" ] &&
        ! grep -qxF "CMAKE_HOME_DIRECTORY:INTERNAL=$root" "$folder/CMakeCache.txt"; then
        rm -rf "$folder"
    fi
    if [ ! -f "$folder/build.ninja" ] || [ ! "$folder/.configured" -nt "$root/CMakePresets.json" ]; then
        (cd "$root" && quietly cmake --preset "$preset") || return 1
        touch "$folder/.configured"
    fi
}

# The files of the project: what git tracks and what it would add. NUL between names.
project_files() {
    if git -C "$root" rev-parse --is-inside-work-tree >/dev/null 2>&1; then
        git -C "$root" ls-files -z --cached --others --exclude-standard -- "$@"
    else
        (cd "$root" && find . -path ./build -prune -o -path ./.git -prune -o -type f -print0 | sed -z 's|^\./||')
    fi
}

# Counts of a JUnit file that ctest wrote: "passed failed skipped".
junit_counts() {
    awk '
        function number(name) {
            if (!match(head, "[ \t]" name "=\"[0-9]+\"")) return 0
            value = substr(head, RSTART, RLENGTH); gsub(/[^0-9]/, "", value)
            return value + 0
        }
        /<testsuite / { inside = 1 }
        inside { head = head " " $0 }
        inside && />/ { exit }
        END {
            all = number("tests"); failed = number("failures")
            skipped = number("skipped") + number("disabled")
            print all - failed - skipped, failed, skipped
        }' "$1"
}

# Counting. A script that calls check() ends with finish().
passed=0 failed=0 skipped=0

# check NAME COMMAND…: runs the command, its output on standard error, and counts the outcome.
check() {
    local name=$1 status=0
    shift
    say "$name"
    "$@" >&2 || status=$?
    if [ "$status" -eq 0 ]; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        say "$name: failed"
    fi
    return 0
}

# run_counted NAME COMMAND…: runs a command whose last line is a summary like ours, and adds its
# counts. One that ends without such a line, or badly without a failure in it, counts as a failure.
run_counted() {
    local name=$1 status=0 answer line
    shift
    say "$name"
    answer=$("$@") || status=$?
    line=${answer##*$'\n'}
    if [[ $line =~ ^([0-9]+)\ passed,\ ([0-9]+)\ failed,\ ([0-9]+)\ skipped$ ]]; then
        passed=$((passed + BASH_REMATCH[1])) failed=$((failed + BASH_REMATCH[2]))
        skipped=$((skipped + BASH_REMATCH[3]))
        [ "$status" -eq 0 ] || [ "${BASH_REMATCH[2]}" -gt 0 ] || failed=$((failed + 1))
    else
        printf '%s\n' "$answer" >&2
        say "$name: ended with status $status and without counts"
        failed=$((failed + 1))
    fi
}

summary() { printf '%s passed, %s failed, %s skipped\n' "$passed" "$failed" "$skipped"; }

finish() {
    summary
    [ "$failed" -eq 0 ]
}

build() {
    local preset=$1
    shift
    configure "$preset" && ninja -C "$root/build/$preset" --quiet -j 2 "$@"
}

# Runs the tests of a preset and adds their counts.
run_tests() {
    local preset=$1 folder=$root/build/$1 status=0 p f s
    local report=$folder/tests.xml log=$folder/tests.log
    say "tests ($preset)"
    rm -f "$report"
    (cd "$root" && ctest --preset "$preset" --output-junit "$report") >"$log" 2>&1 || status=$?
    if [ "$status" -ne 0 ]; then
        # Only what did not pass; the whole stands in the log.
        grep -vE '^ *[0-9]+/[0-9]+ Test +#[0-9]+: .* Passed |^ +Start ' "$log" >&2 || true
        say "the whole output is in ${log#"$root"/}"
    fi
    if [ -f "$report" ]; then
        read -r p f s < <(junit_counts "$report")
        passed=$((passed + p)) failed=$((failed + f)) skipped=$((skipped + s))
        # A failure that ctest did not count, such as a test program that could not list its tests.
        [ "$status" -eq 0 ] || [ "$f" -gt 0 ] || failed=$((failed + 1))
    else
        failed=$((failed + 1))
    fi
}

# One fuzz target for so many seconds. What it finds is kept in build/asan/found/, not in the corpus:
# that is written by hand, one file a behaviour.
fuzz_one() {
    local name=$1 seconds=$2 found=$root/build/asan/found/$1 extra=()
    mkdir -p "$found/inputs"
    [ ! -f "$root/fuzz/$name.dict" ] || extra+=("-dict=$root/fuzz/$name.dict")
    # The same inputs every time where a change is judged; scripts/long looks for new ones.
    [ -z "${FUZZ_SEED:-}" ] || extra+=("-seed=$FUZZ_SEED")
    quietly env UBSAN_OPTIONS=print_stacktrace=1 "$root/build/asan/fuzz/fuzz_$name" \
        "-max_total_time=$seconds" -timeout=20 -rss_limit_mb=3000 "-artifact_prefix=$found/" \
        -print_final_stats=1 "${extra[@]}" "$found/inputs" "$root/fuzz/corpus/$name"
}

# All fuzz targets; the second argument says whether the seconds are for each or for all together.
fuzz_all() {
    local seconds=$1 share=$2 failed_before=$failed names=() name
    check "build (fuzz targets)" build asan all
    [ "$failed" -eq "$failed_before" ] || return 0
    mapfile -t names <"$root/build/asan/fuzz_targets.txt"
    if [ "$share" = together ] && [ ${#names[@]} -gt 0 ]; then
        seconds=$((seconds / ${#names[@]} > 0 ? seconds / ${#names[@]} : 1))
    fi
    for name in "${names[@]}"; do
        check "fuzz $name, $seconds seconds" fuzz_one "$name" "$seconds"
    done
}

# All benchmarks, each for at least so many seconds a measurement.
bench_all() {
    local seconds=$1 failed_before=$failed names=() name
    # The library may have come after the folder was configured.
    check "build (benchmarks)" build_benches
    [ "$failed" -eq "$failed_before" ] || return 0
    mapfile -t names <"$root/build/release/bench_targets.txt"
    for name in "${names[@]}"; do
        check "bench $name" "$root/build/release/bench/bench_$name" "--benchmark_min_time=$seconds"
    done
}
build_benches() {
    (cd "$root" && quietly cmake --preset release) && build release benches
}
