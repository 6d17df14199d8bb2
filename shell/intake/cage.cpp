// SPDX-License-Identifier: Apache-2.0
//
// Limits by setrlimit(2), system calls by seccomp(2) through libseccomp: what is not on the list
// fails with EPERM, so that a library that merely asks (for its locale, say) goes on without.
#include "shell/intake/cage.hpp"

#include <fcntl.h>
#include <seccomp.h>
#include <signal.h>
#include <sys/mman.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>

namespace loafwright::intake {

namespace {

bool limit(__rlimit_resource_t resource, std::uint64_t least, std::uint64_t most) {
    const struct rlimit both { least, most };
    return ::setrlimit(resource, &both) == 0;
}

// What a program needs that computes: memory, its open files, its clock, its end.
constexpr std::array allowed = {SCMP_SYS(read),          SCMP_SYS(readv),
                                SCMP_SYS(pread64),       SCMP_SYS(write),
                                SCMP_SYS(writev),        SCMP_SYS(lseek),
                                SCMP_SYS(close),         SCMP_SYS(fstat),
                                SCMP_SYS(brk),           SCMP_SYS(munmap),
                                SCMP_SYS(mremap),        SCMP_SYS(mprotect),
                                SCMP_SYS(madvise),       SCMP_SYS(futex),
                                SCMP_SYS(sched_yield),   SCMP_SYS(sched_getaffinity),
                                SCMP_SYS(clock_gettime), SCMP_SYS(gettimeofday),
                                SCMP_SYS(times),         SCMP_SYS(getrusage),
                                SCMP_SYS(getrandom),     SCMP_SYS(getpid),
                                SCMP_SYS(gettid),        SCMP_SYS(sysinfo),
                                SCMP_SYS(rt_sigaction),  SCMP_SYS(rt_sigprocmask),
                                SCMP_SYS(rt_sigreturn),  SCMP_SYS(sigaltstack),
                                SCMP_SYS(exit),          SCMP_SYS(exit_group)};

struct Part {
    int call;
    scmp_arg_cmp when;
};

// Memory, but none that could be run as a program; an open file's state, but no path's.
const std::array<Part, 3> allowed_without = {
    {{SCMP_SYS(mmap), SCMP_CMP64(2, SCMP_CMP_MASKED_EQ, PROT_EXEC, 0)},
     {SCMP_SYS(mprotect), SCMP_CMP64(2, SCMP_CMP_MASKED_EQ, PROT_EXEC, 0)},
     {SCMP_SYS(newfstatat), SCMP_CMP64(3, SCMP_CMP_MASKED_EQ, AT_EMPTY_PATH, AT_EMPTY_PATH)}}};

// A sanitizer maps terabytes before main.
#if defined(__SANITIZE_ADDRESS__)
constexpr bool is_sanitized = true;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
constexpr bool is_sanitized = true;
#else
constexpr bool is_sanitized = false;
#endif
#else
constexpr bool is_sanitized = false;
#endif

} // namespace

bool memory_is_limited() {
    return !is_sanitized;
}

bool set_limits(const Limits& limits) {
    const unsigned seconds = limits.processor_seconds;
    return ::prctl(PR_SET_PDEATHSIG, SIGKILL) == 0 && ::prctl(PR_SET_DUMPABLE, 0) == 0 &&
           (!memory_is_limited() || limit(RLIMIT_AS, limits.memory_bytes, limits.memory_bytes)) &&
           limit(RLIMIT_CPU, seconds, seconds + 1) && limit(RLIMIT_FSIZE, 0, 0) &&
           limit(RLIMIT_CORE, 0, 0) && limit(RLIMIT_NPROC, 0, 0);
}

bool close_the_door() {
    if (::prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) != 0) {
        return false;
    }
    const scmp_filter_ctx filter = ::seccomp_init(SCMP_ACT_ERRNO(EPERM));
    if (filter == nullptr) {
        return false;
    }
    const bool listed =
        std::all_of(allowed.begin(),
                    allowed.end(),
                    [filter](int call) {
                        return ::seccomp_rule_add_array(filter, SCMP_ACT_ALLOW, call, 0, nullptr) ==
                               0;
                    }) &&
        std::all_of(allowed_without.begin(), allowed_without.end(), [filter](const Part& part) {
            return ::seccomp_rule_add_array(filter, SCMP_ACT_ALLOW, part.call, 1, &part.when) == 0;
        });
    const bool loaded = listed && ::seccomp_load(filter) == 0;
    ::seccomp_release(filter);
    return loaded;
}

} // namespace loafwright::intake
