// SPDX-License-Identifier: Apache-2.0
//
// One child process: started, listened to, ended. posix_spawn and not fork, since the server has
// threads. The message stands in memory (memfd), so that a child that dies early breaks no pipe.
// Its working folder is removed before it starts: nothing can be made there.
#include "shell/intake/child.hpp"

#include "shell/intake/message.hpp"

#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <spawn.h>
#include <stdlib.h>
#include <sys/eventfd.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <filesystem>
#include <memory>
#include <optional>
#include <system_error>
#include <utility>

namespace loafwright::intake {

namespace {

using Clock = std::chrono::steady_clock;

constexpr std::size_t longest_answer_bytes = 64 * one_mebibyte;

/// A descriptor that closes itself.
class Descriptor {
public:
    explicit Descriptor(int number = -1) : number_(number) {}
    Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
    Descriptor& operator=(Descriptor&& other) noexcept {
        std::swap(number_, other.number_);
        return *this;
    }
    ~Descriptor() { close(); }

    [[nodiscard]] int number() const { return number_; }
    [[nodiscard]] bool is_open() const { return number_ >= 0; }
    void close() {
        if (number_ >= 0) {
            ::close(std::exchange(number_, -1));
        }
    }

private:
    int number_;
};

struct Pipe {
    Descriptor from;
    Descriptor to;
};

std::optional<Pipe> open_pipe() {
    std::array<int, 2> ends{};
    if (::pipe2(ends.data(), O_CLOEXEC) != 0) {
        return std::nullopt;
    }
    return Pipe{Descriptor(ends[0]), Descriptor(ends[1])};
}

Descriptor in_memory(std::string_view message) {
    Descriptor file(::memfd_create("intake", MFD_CLOEXEC));
    std::size_t written = 0;
    while (file.is_open() && written < message.size()) {
        const ssize_t count =
            ::write(file.number(), message.data() + written, message.size() - written);
        if (count < 0 && errno == EINTR) {
            continue;
        }
        if (count <= 0) {
            file.close();
            break;
        }
        written += static_cast<std::size_t>(count);
    }
    if (file.is_open()) {
        ::lseek(file.number(), 0, SEEK_SET);
    }
    return file;
}

/// An empty folder of its own that has no name any more: one can stand in it, and make nothing
/// there.
Descriptor nameless_folder() {
    std::error_code unknown;
    std::string path =
        (std::filesystem::temp_directory_path(unknown) / "loafwright-XXXXXX").string();
    if (::mkdtemp(path.data()) == nullptr) {
        return Descriptor();
    }
    Descriptor folder(::open(path.c_str(), O_DIRECTORY | O_PATH | O_CLOEXEC));
    const int reason = errno;
    ::rmdir(path.c_str());
    errno = reason;
    return folder;
}

struct Files {
    Descriptor input;
    Pipe output;
    Pipe progress;
};

int spawn(const std::string& program, const Files& files, pid_t& child) {
    const Descriptor folder = nameless_folder();
    if (!folder.is_open()) {
        return errno;
    }
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addfchdir_np(&actions, folder.number());
    // The child's low numbers may be the parent's own: dup2 in this order never closes one that is
    // still needed, since ours are all above the three standard ones or equal to their place.
    posix_spawn_file_actions_adddup2(&actions, files.input.number(), STDIN_FILENO);
    posix_spawn_file_actions_adddup2(&actions, files.output.to.number(), STDOUT_FILENO);
    posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
    posix_spawn_file_actions_adddup2(&actions, files.progress.to.number(), progress_descriptor);
    posix_spawn_file_actions_addclosefrom_np(&actions, progress_descriptor + 1);

    posix_spawnattr_t attributes;
    posix_spawnattr_init(&attributes);
    sigset_t none;
    sigset_t all;
    sigemptyset(&none);
    sigfillset(&all);
    posix_spawnattr_setsigmask(&attributes, &none);
    posix_spawnattr_setsigdefault(&attributes, &all);
    posix_spawnattr_setflags(&attributes,
                             POSIX_SPAWN_SETSIGMASK | POSIX_SPAWN_SETSIGDEF | POSIX_SPAWN_SETSID);

    std::string name = program;
    // Tesseract's threads would fight over one core and hold memory each.
    std::string one_thread = "OMP_THREAD_LIMIT=1";
    const std::array<char*, 2> words = {name.data(), nullptr};
    const std::array<char*, 2> environment = {one_thread.data(), nullptr};
    const int reason = ::posix_spawn(
        &child, program.c_str(), &actions, &attributes, words.data(), environment.data());
    posix_spawnattr_destroy(&attributes);
    posix_spawn_file_actions_destroy(&actions);
    return reason;
}

/// Moves a descriptor out of the way of the numbers that the child's files get.
bool raise(Descriptor& descriptor) {
    if (descriptor.number() > progress_descriptor) {
        return true;
    }
    Descriptor higher(::fcntl(descriptor.number(), F_DUPFD_CLOEXEC, progress_descriptor + 1));
    if (!higher.is_open()) {
        return false;
    }
    descriptor = std::move(higher);
    return true;
}

// What there is to read; false at the end.
bool drain(int from, std::string& into) {
    std::array<char, 65536> block{};
    const ssize_t count = ::read(from, block.data(), block.size());
    if (count < 0) {
        return errno == EINTR;
    }
    into.append(block.data(), static_cast<std::size_t>(count));
    return count > 0;
}

int milliseconds_until(Clock::time_point end) {
    const auto left = std::chrono::ceil<std::chrono::milliseconds>(end - Clock::now()).count();
    return static_cast<int>(std::clamp<decltype(left)>(left, 0, 3'600'000));
}

// Reads both pipes until the answer's one ends; why it had to stop before, if it had to.
std::optional<End> listen(Files& files, int stop, const Wish& wish, std::string& said) {
    const auto end = Clock::now() + std::chrono::seconds(wish.limits.wall_seconds);
    int told = -1;
    for (;;) {
        std::array<pollfd, 3> waiting = {{{files.output.from.number(), POLLIN, 0},
                                          {stop, POLLIN, 0},
                                          {files.progress.from.number(), POLLIN, 0}}};
        const int ready = ::poll(waiting.data(), waiting.size(), milliseconds_until(end));
        if (ready < 0 && errno != EINTR) {
            return End::fell;
        }
        if (ready < 0) {
            continue;
        }
        if (waiting[1].revents != 0) {
            return End::stopped;
        }
        if (Clock::now() >= end) {
            return End::out_of_time;
        }
        if (waiting[2].revents != 0) {
            std::string steps;
            if (!drain(files.progress.from.number(), steps)) {
                files.progress.from.close(); // poll leaves out what has a negative number
            }
            const int step = steps.empty() ? -1 : static_cast<unsigned char>(steps.back());
            if (wish.progress && step > told && step <= 100) {
                told = step;
                wish.progress(step);
            }
        }
        if (waiting[0].revents != 0) {
            if (!drain(files.output.from.number(), said)) {
                return std::nullopt;
            }
            if (said.size() > longest_answer_bytes) {
                return End::out_of_room;
            }
        }
    }
}

int wait_for(pid_t child) {
    int state = 0;
    while (::waitpid(child, &state, 0) < 0 && errno == EINTR) {
    }
    return state;
}

End end_of(int state) {
    if (WIFEXITED(state)) {
        return WEXITSTATUS(state) == 0                ? End::answered
               : WEXITSTATUS(state) == memory_used_up ? End::out_of_room
                                                      : End::fell;
    }
    return WIFSIGNALED(state) && WTERMSIG(state) == SIGXCPU ? End::out_of_time : End::fell;
}

} // namespace

ChildRun run_child(const std::string& program, std::string_view message, const Wish& wish) {
    ChildRun run;
    auto output = open_pipe();
    auto progress = open_pipe();
    Descriptor stop(::eventfd(0, EFD_CLOEXEC));
    Descriptor input = in_memory(message);
    if (!output || !progress || !stop.is_open() || !input.is_open() || !raise(input) ||
        !raise(output->to) || !raise(progress->to)) {
        return {End::missing, "", std::generic_category().message(errno)};
    }
    Files files{std::move(input), std::move(*output), std::move(*progress)};
    pid_t child = 0;
    const int reason = spawn(program, files, child);
    files.input.close();
    files.output.to.close();
    files.progress.to.close();
    if (reason != 0) {
        return {End::missing, "", std::generic_category().message(reason)};
    }
    const std::stop_callback wake(wish.stop, [&stop] {
        const std::uint64_t one = 1;
        // A full counter is as good as one more.
        [[maybe_unused]] const ssize_t written = ::write(stop.number(), &one, sizeof one);
    });
    const std::optional<End> early = listen(files, stop.number(), wish, run.said);
    if (early) {
        ::kill(child, SIGKILL);
    }
    const int state = wait_for(child);
    run.end = early.value_or(end_of(state));
    return run;
}

} // namespace loafwright::intake
