// SPDX-License-Identifier: Apache-2.0
//
// The walls around the child, tried from inside: a process of our own shuts the door behind itself
// and then asks the kernel for what it should not get.
#include "shell/intake/cage.hpp"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/mman.h>
#include <sys/ptrace.h>
#include <sys/socket.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>

namespace loafwright::intake {
namespace {

constexpr int kept_in = 0;
constexpr int got_out = 1;
constexpr int no_door = 2;

// What a process behind the door got from one attempt.
template <typename Attempt>
int behind_the_door(Attempt attempt) {
    const pid_t child = ::fork();
    if (child == 0) {
        if (!set_limits({}) || !close_the_door()) {
            ::_exit(no_door);
        }
        ::_exit(attempt() == -1 && errno == EPERM ? kept_in : got_out);
    }
    int state = 0;
    ::waitpid(child, &state, 0);
    return WIFEXITED(state) ? WEXITSTATUS(state) : -1;
}

TEST(cage, no_file_is_opened) {
    EXPECT_EQ(behind_the_door([] { return ::open("/etc/passwd", O_RDONLY); }), kept_in);
    EXPECT_EQ(behind_the_door([] { return ::open("left-behind", O_WRONLY | O_CREAT, 0600); }),
              kept_in);
    EXPECT_EQ(behind_the_door([] { return ::unlink("left-behind"); }), kept_in);
}

TEST(cage, nobody_is_spoken_to) {
    EXPECT_EQ(behind_the_door([] { return ::socket(AF_INET, SOCK_STREAM, 0); }), kept_in);
    EXPECT_EQ(behind_the_door([] { return ::socket(AF_UNIX, SOCK_STREAM, 0); }), kept_in);
}

TEST(cage, no_program_is_started_and_no_process_touched) {
    EXPECT_EQ(behind_the_door([] { return ::execl("/bin/true", "true", nullptr); }), kept_in);
    EXPECT_EQ(behind_the_door([] { return ::fork(); }), kept_in);
    EXPECT_EQ(behind_the_door([] { return ::kill(::getppid(), 0); }), kept_in);
    EXPECT_EQ(behind_the_door([] { return static_cast<int>(::ptrace(PTRACE_TRACEME, 0, 0, 0)); }),
              kept_in);
}

TEST(cage, computing_goes_on) {
    EXPECT_EQ(behind_the_door([] {
                  void* const room = ::mmap(nullptr,
                                            std::size_t{1} << 20U,
                                            PROT_READ | PROT_WRITE,
                                            MAP_PRIVATE | MAP_ANONYMOUS,
                                            -1,
                                            0);
                  errno = EPERM;
                  return room == MAP_FAILED ? 0 : -1;
              }),
              kept_in);
}

TEST(cage, memory_ends_where_it_was_set) {
    if (!memory_is_limited()) {
        GTEST_SKIP() << "the address sanitizer needs more than any limit";
    }
    const pid_t child = ::fork();
    if (child == 0) {
        Limits limits;
        limits.memory_bytes = 300 * one_mebibyte;
        if (!set_limits(limits)) {
            ::_exit(no_door);
        }
        void* const room = ::mmap(nullptr,
                                  400 * one_mebibyte,
                                  PROT_READ | PROT_WRITE,
                                  MAP_PRIVATE | MAP_ANONYMOUS,
                                  -1,
                                  0);
        ::_exit(room == MAP_FAILED ? kept_in : got_out);
    }
    int state = 0;
    ::waitpid(child, &state, 0);
    EXPECT_EQ(WEXITSTATUS(state), kept_in);
}

} // namespace
} // namespace loafwright::intake
