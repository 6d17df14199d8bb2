// SPDX-License-Identifier: Apache-2.0
//
// The third program: reads hostile bytes and answers in words. It is started by loafwright and
// talks to nobody else (shell/intake/message.hpp).
#include "shell/intake/cage.hpp"
#include "shell/intake/child.hpp"
#include "shell/intake/message.hpp"
#include "shell/intake_child/page_words.hpp"
#include "shell/paper/paper.hpp"

#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cstdint>
#include <exception>
#include <new>
#include <optional>
#include <string>
#include <string_view>

namespace {

using namespace loafwright;

constexpr int fallen = 1;

std::string_view standard_input() {
    struct stat state {};
    if (::fstat(STDIN_FILENO, &state) != 0 || state.st_size <= 0) {
        return {};
    }
    const auto size = static_cast<std::size_t>(state.st_size);
    void* const bytes = ::mmap(nullptr, size, PROT_READ, MAP_PRIVATE, STDIN_FILENO, 0);
    return bytes == MAP_FAILED ? std::string_view()
                               : std::string_view(static_cast<const char*>(bytes), size);
}

bool say(std::string_view message) {
    while (!message.empty()) {
        const ssize_t count = ::write(STDOUT_FILENO, message.data(), message.size());
        if (count <= 0) {
            return false;
        }
        message.remove_prefix(static_cast<std::size_t>(count));
    }
    return true;
}

void tell_progress(int percent) {
    const auto step = static_cast<unsigned char>(percent);
    // Nobody listening is no reason to stop.
    [[maybe_unused]] const ssize_t written = ::write(intake::progress_descriptor, &step, 1);
}

int serve() {
    const auto request = intake::request_from(standard_input());
    if (!request || !intake::set_limits(request->limits)) {
        return fallen;
    }
    if (request->files.size() == 1 &&
        intake::kind_of(request->files.front().bytes) == intake::Kind::html) {
        if (!intake::close_the_door()) {
            return fallen;
        }
        const intake::FileView& page = request->files.front();
        return say(intake::answer_message(intake_child::page_words(page.bytes, page.name)))
                   ? 0
                   : fallen;
    }
    const paper::Reader reader(request->language_folder);
    if (!intake::close_the_door()) {
        return fallen;
    }
    return say(intake::answer_message(reader.read(*request, tell_progress))) ? 0 : fallen;
}

} // namespace

int main() {
    int status = fallen;
    try {
        status = serve();
    } catch (const std::bad_alloc&) {
        status = intake::memory_used_up;
    } catch (const std::exception&) {
        status = fallen;
    }
    // Destructors of libraries have nothing left to do here.
    ::_exit(status);
}
