// SPDX-License-Identifier: Apache-2.0
//
// Nothing lost: what was answered is there, however the one who kept it ended. A process of its own
// appends under load (appender.cpp) and is killed; the numbers that it was given are the reference.
// LOAFWRIGHT_KILLS says how often, scripts/long asks for 200.
#include "tests/store/cluster.hpp"
#include "tests/store/places.hpp"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <poll.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <map>
#include <random>
#include <sstream>
#include <string>

namespace loafwright::store {
namespace {

using Clock = std::chrono::steady_clock;

// The numbers that were answered, by "bake id".
using Answered = std::map<std::string, std::int64_t>;

class Appender {
public:
    Appender(const Place& place, const std::string& name) {
        int ends[2] = {-1, -1};
        if (::pipe2(ends, O_CLOEXEC) != 0) {
            throw std::runtime_error("no pipe");
        }
        const std::string photos = place.photos();
        process_ = ::fork();
        if (process_ == 0) {
            ::dup2(ends[1], 1);
            ::execl(LOAFWRIGHT_APPENDER,
                    LOAFWRIGHT_APPENDER,
                    place.address().c_str(),
                    photos.c_str(),
                    name.c_str(),
                    "2",
                    static_cast<char*>(nullptr));
            ::_exit(127);
        }
        ::close(ends[1]);
        pipe_ = ends[0];
    }
    ~Appender() {
        kill();
        ::close(pipe_);
    }
    Appender(const Appender&) = delete;
    Appender& operator=(const Appender&) = delete;

    void kill() {
        if (process_ > 0) {
            ::kill(process_, SIGKILL);
            ::waitpid(process_, nullptr, 0);
            process_ = 0;
        }
    }
    // Listens for so long. False when it said its last.
    bool listen(std::chrono::milliseconds time) {
        for (const auto end = Clock::now() + time;;) {
            const auto left =
                std::chrono::duration_cast<std::chrono::milliseconds>(end - Clock::now());
            pollfd what{pipe_, POLLIN, 0};
            if (left.count() <= 0 || ::poll(&what, 1, static_cast<int>(left.count())) == 0) {
                return true;
            }
            if (!take()) {
                return false;
            }
        }
    }
    // Until there are more answers than `many`; a minute is for ever.
    bool listen_for_more_than(std::size_t many) {
        for (int second = 0; second < 600 && answered_.size() <= many; ++second) {
            if (!listen(std::chrono::milliseconds(100))) {
                break;
            }
        }
        return answered_.size() > many;
    }
    const Answered& answered() const { return answered_; }
    int troubles() const { return troubles_; }

private:
    bool take() {
        char bytes[65536];
        const ssize_t size = ::read(pipe_, bytes, sizeof bytes);
        if (size <= 0) {
            return false;
        }
        said_.append(bytes, static_cast<std::size_t>(size));
        for (std::size_t end = said_.find('\n'); end != std::string::npos; end = said_.find('\n')) {
            std::istringstream line(said_.substr(0, end));
            said_.erase(0, end + 1);
            std::string bake;
            std::string id;
            std::int64_t number = 0;
            line >> bake >> id;
            if (line >> number) {
                answered_[bake + " " + id] = number;
            } else {
                EXPECT_EQ(bake + " " + id, "trouble store_unreachable");
                ++troubles_;
            }
        }
        return true;
    }

    pid_t process_ = 0;
    int pipe_ = -1;
    int troubles_ = 0;
    std::string said_;
    Answered answered_;
};

// Every answered number is the one that is kept, and there are no gaps.
void expect_all_there(const Place& place, const Answered& answered) {
    const auto store = place.open();
    std::map<std::string, std::map<std::string, std::int64_t>> kept;
    for (const char* bake : {"a", "b", "c"}) {
        kept[bake] = numbered(*store, bake);
    }
    std::size_t lost = 0;
    for (const auto& [key, number] : answered) {
        const auto& bake = kept[key.substr(0, 1)];
        const auto found = bake.find(key.substr(2));
        lost += found == bake.end() || found->second != number ? 1U : 0U;
    }
    EXPECT_EQ(lost, 0U) << "of " << answered.size() << " that were answered";
}

int kills() {
    const char* asked = std::getenv("LOAFWRIGHT_KILLS");
    return asked == nullptr ? 3 : std::atoi(asked);
}

using killed = OnBoth;
LOAFWRIGHT_ON_BOTH(killed);

TEST_P(killed, what_was_answered_is_there) {
    for (const char* bake : {"a", "b", "c"}) {
        taken(store_->create_bake(bake, "{}", Instant{}));
    }
    store_.reset();
    std::mt19937 random(20240917);
    Answered answered;
    for (int n = 0; n < kills() && !HasFailure(); ++n) {
        Appender appender(*place_, "p" + std::to_string(n));
        ASSERT_TRUE(appender.listen_for_more_than(0)) << "nothing was kept at all";
        appender.listen(std::chrono::milliseconds(random() % 200));
        appender.kill();
        while (appender.listen(std::chrono::milliseconds(1000))) {
        }
        answered.insert(appender.answered().begin(), appender.answered().end());
        expect_all_there(*place_, answered);
    }
}

TEST(killed_database, what_was_answered_is_there_and_the_rest_is_sent_again) {
    Cluster* cluster = Cluster::get();
    if (cluster == nullptr) {
        GTEST_SKIP() << "no PostgreSQL server is installed (postgresql-15)";
    }
    const Place place(Where::postgresql);
    for (const char* bake : {"a", "b", "c"}) {
        taken(place.open()->create_bake(bake, "{}", Instant{}));
    }
    Appender appender(place, "p");
    ASSERT_TRUE(appender.listen_for_more_than(30));
    cluster->stop("immediate"); // no server process has the time to end in order
    appender.listen(std::chrono::milliseconds(300));
    const Answered before = appender.answered();
    cluster->start();
    expect_all_there(place, before);
    EXPECT_TRUE(appender.listen_for_more_than(before.size() + 30)) << "it goes on by itself";
    EXPECT_GT(appender.troubles(), 0);
    appender.kill();
    while (appender.listen(std::chrono::milliseconds(1000))) {
    }
    expect_all_there(place, appender.answered());
}

} // namespace
} // namespace loafwright::store
