// SPDX-License-Identifier: Apache-2.0
//
// Appends without end and says what was answered: store_appender ADDRESS PHOTOS NAME THREADS.
// Each answer is one line on standard output, "bake id number", written at once; trouble is a line
// "trouble CODE", after which the same events are sent again. The tests kill it.
#include "shell/store/store.hpp"

#include <unistd.h>

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <random>
#include <string>
#include <thread>
#include <vector>

namespace loafwright::store {
namespace {

void say(const std::string& lines) {
    // Up to 4096 bytes go into a pipe whole (POSIX, PIPE_BUF), so no line is torn by a kill.
    if (::write(1, lines.data(), lines.size()) != static_cast<ssize_t>(lines.size())) {
        std::_Exit(3);
    }
}

std::unique_ptr<Store> opened(const std::string& address, const std::string& photos) {
    auto store = open(address, photos);
    if (!store) {
        say("cannot open: " + one_line(store.error()) + "\n");
        std::_Exit(4);
    }
    return std::move(*store);
}

void append_for_ever(Store& store, const std::string& me) {
    std::mt19937 random(static_cast<unsigned>(std::hash<std::string>{}(me)));
    for (int n = 0;;) {
        std::vector<Append> appends;
        for (const char* bake : {"a", "b", "c"}) {
            Append append{bake, {}};
            for (auto more = random() % 7; more > 0; --more) {
                append.events.push_back({me + "-" + std::to_string(++n), "{\"n\":1}"});
            }
            appends.push_back(append);
        }
        auto answer = store.append_all(appends);
        while (!answer) {
            say("trouble " + answer.error().code + "\n");
            std::this_thread::sleep_for(std::chrono::milliseconds(50));
            answer = store.append_all(appends);
        }
        std::string lines;
        for (std::size_t a = 0; a < appends.size(); ++a) {
            for (std::size_t e = 0; e < appends[a].events.size(); ++e) {
                lines += appends[a].bake + " " + appends[a].events[e].id + " " +
                         std::to_string((*answer)[a]->at(e)) + "\n";
            }
        }
        say(lines);
    }
}

} // namespace
} // namespace loafwright::store

int main(int argc, char** argv) {
    if (argc != 5) {
        return 2;
    }
    const std::string address = argv[1];
    const std::string photos = argv[2];
    const std::string name = argv[3];
    // All are open before the first is told of: what is killed then is no store that opens.
    std::vector<std::unique_ptr<loafwright::store::Store>> stores;
    for (int n = 0; n < std::atoi(argv[4]); ++n) {
        stores.push_back(loafwright::store::opened(address, photos));
    }
    std::vector<std::jthread> threads;
    for (std::size_t n = 0; n < stores.size(); ++n) {
        threads.emplace_back([&, n] {
            loafwright::store::append_for_ever(*stores[n], name + "-" + std::to_string(n));
        });
    }
    return 0;
}
