// SPDX-License-Identifier: Apache-2.0
//
// The numbers of events: without gaps, one for each id, whoever sends them and however often. The
// reference is a plain list of the ids in the order of their first coming.
#include "tests/store/cluster.hpp"
#include "tests/store/places.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <atomic>
#include <latch>
#include <map>
#include <set>
#include <string>
#include <thread>
#include <vector>

namespace loafwright::store {
namespace {

// What should come of appends: bakes that are there, and the ids that each has so far.
class Reference {
public:
    explicit Reference(std::set<std::string> bakes) : bakes_(std::move(bakes)) {}

    std::vector<Appended> append_all(const std::vector<Append>& appends) {
        std::vector<Appended> answer;
        for (const Append& append : appends) {
            if (bakes_.count(append.bake) == 0) {
                answer.emplace_back();
                continue;
            }
            auto& numbers = numbers_[append.bake];
            std::vector<std::int64_t> sequences;
            for (const NewEvent& event : append.events) {
                const auto next = static_cast<std::int64_t>(numbers.size()) + 1;
                sequences.push_back(numbers.emplace(event.id, next).first->second);
            }
            answer.emplace_back(std::move(sequences));
        }
        return answer;
    }
    const std::map<std::string, std::int64_t>& numbers(const std::string& bake) {
        return numbers_[bake];
    }

private:
    std::set<std::string> bakes_;
    std::map<std::string, std::map<std::string, std::int64_t>> numbers_;
};

std::vector<std::vector<Append>> any_calls() {
    const auto event = rc::gen::map(rc::gen::inRange(0, 12), [](int n) {
        return NewEvent{"e" + std::to_string(n), std::to_string(n)};
    });
    const auto append =
        rc::gen::construct<Append>(rc::gen::element<std::string>("one", "two", "nobody"),
                                   rc::gen::container<std::vector<NewEvent>>(event));
    return *rc::gen::resize(8,
                            rc::gen::container<std::vector<std::vector<Append>>>(
                                rc::gen::container<std::vector<Append>>(append)));
}

RC_GTEST_PROP(sequences, any_grouping_gives_one_number_for_each_id, ()) {
    static const Place folder(Where::folder);
    static const auto postgresql =
        Cluster::get() == nullptr ? nullptr : std::make_unique<Place>(Where::postgresql);
    static std::vector<std::unique_ptr<Store>> stores = [] {
        std::vector<std::unique_ptr<Store>> opened;
        opened.push_back(folder.open());
        if (postgresql) {
            opened.push_back(postgresql->open());
        }
        return opened;
    }();
    static int round = 0;
    // Each round has bakes of its own.
    const std::string mark = "-" + std::to_string(++round);
    auto calls = any_calls();
    for (auto& call : calls) {
        for (Append& append : call) {
            append.bake += mark;
        }
    }
    const std::set<std::string> bakes = {"one" + mark, "two" + mark};
    Reference reference(bakes);
    for (const auto& store : stores) {
        for (const std::string& bake : bakes) {
            taken(store->create_bake(bake, "{}", Instant{round}));
        }
    }
    for (const auto& call : calls) {
        const auto expected = reference.append_all(call);
        for (const auto& store : stores) {
            RC_ASSERT(taken(store->append_all(call)) == expected);
        }
    }
    for (const auto& store : stores) {
        for (const std::string& bake : bakes) {
            RC_ASSERT(numbered(*store, bake) == reference.numbers(bake));
        }
        RC_ASSERT(!testing::Test::HasFailure());
    }
}

using sequences_of_several = OnBoth;
LOAFWRIGHT_ON_BOTH(sequences_of_several);

// Every third event is also sent by the neighbour, as a phone does that heard no answer.
TEST_P(sequences_of_several, threads_that_append_at_once_leave_no_gap) {
    constexpr int threads = 4;
    constexpr int rounds = 40;
    const std::vector<std::string> bakes = {"a", "b", "c"};
    for (const std::string& bake : bakes) {
        taken(store_->create_bake(bake, "{}", Instant{}));
    }
    std::vector<std::map<std::string, std::int64_t>> told(threads);
    std::vector<std::string> troubles(threads);
    const auto send = [&](int me) {
        const auto mine = open();
        for (int n = 0; n < rounds; ++n) {
            std::vector<Append> appends;
            for (std::size_t b = 0; b < bakes.size(); ++b) {
                // Each names the bakes in an order of its own.
                const std::string& bake =
                    bakes[(b + static_cast<std::size_t>(me + n)) % bakes.size()];
                std::vector<NewEvent> events = {
                    {std::to_string(me) + "-" + std::to_string(n), "{}"}};
                if (n % 3 == 0) {
                    events.push_back(
                        {std::to_string((me + 1) % threads) + "-" + std::to_string(n), "{}"});
                }
                appends.push_back({bake, events});
            }
            const auto answer = taken(mine->append_all(appends));
            for (std::size_t a = 0; a < appends.size(); ++a) {
                for (std::size_t e = 0; e < appends[a].events.size(); ++e) {
                    const std::string key = appends[a].bake + " " + appends[a].events[e].id;
                    const std::int64_t number = answer[a]->at(e);
                    if (!told[static_cast<std::size_t>(me)].emplace(key, number).second) {
                        throw std::runtime_error(key + " was sent twice by one thread");
                    }
                }
            }
        }
    };
    {
        std::latch start(threads);
        std::vector<std::jthread> running;
        for (int me = 0; me < threads; ++me) {
            running.emplace_back([&, me] {
                start.arrive_and_wait();
                try {
                    send(me);
                } catch (const std::exception& fault) {
                    troubles[static_cast<std::size_t>(me)] = fault.what();
                }
            });
        }
    }
    for (const std::string& trouble : troubles) {
        EXPECT_EQ(trouble, "");
    }
    for (const std::string& bake : bakes) {
        const auto numbers = numbered(*store_, bake);
        EXPECT_EQ(numbers.size(), static_cast<std::size_t>(threads * rounds)) << "none is lost";
        for (const auto& thread : told) {
            for (const auto& [key, number] : thread) {
                if (key.compare(0, bake.size() + 1, bake + " ") == 0) {
                    EXPECT_EQ(numbers.at(key.substr(bake.size() + 1)), number) << key;
                }
            }
        }
    }
}

// A number is seen only after those before it, so who reads on from the last one seen misses none.
TEST_P(sequences_of_several, a_reader_that_follows_misses_none) {
    constexpr int threads = 3;
    constexpr int rounds = 30;
    taken(store_->create_bake("a", "{}", Instant{}));
    std::atomic<int> running{threads};
    std::vector<std::jthread> writers;
    for (int me = 0; me < threads; ++me) {
        writers.emplace_back([&, me] {
            const auto mine = open();
            for (int n = 0; n < rounds; ++n) {
                EXPECT_TRUE(mine->append_all(
                    {{"a", {{std::to_string(me) + "-" + std::to_string(n), "{}"}}}}));
            }
            --running;
        });
    }
    std::int64_t last = 0;
    bool finished = false;
    while (!finished) {
        finished = running == 0;
        for (const StoredEvent& event : taken(store_->events_after("a", last, 7))) {
            ASSERT_EQ(event.sequence, last + 1);
            last = event.sequence;
        }
    }
    for (std::size_t more = 1; more > 0;) {
        const auto rest = taken(store_->events_after("a", last, 7));
        more = rest.size();
        last = rest.empty() ? last : rest.back().sequence;
    }
    EXPECT_EQ(last, threads * rounds);
}

// All begin with an empty place: the tables are made once.
TEST_P(sequences_of_several, openings_at_once_of_an_empty_place) {
    const Place empty(GetParam());
    constexpr int threads = 6;
    std::latch start(threads);
    std::vector<std::string> troubles(threads);
    {
        std::vector<std::jthread> running;
        for (int me = 0; me < threads; ++me) {
            running.emplace_back([&, me] {
                start.arrive_and_wait();
                const auto opened = store::open(empty.address(), empty.photos());
                troubles[static_cast<std::size_t>(me)] = opened ? "" : one_line(opened.error());
            });
        }
    }
    for (const std::string& trouble : troubles) {
        EXPECT_EQ(trouble, "");
    }
    EXPECT_TRUE(taken(empty.open()->bakes(1)).empty());
}

} // namespace
} // namespace loafwright::store
