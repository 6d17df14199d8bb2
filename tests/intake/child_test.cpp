// SPDX-License-Identifier: Apache-2.0
//
// Children that behave badly: small shell scripts stand in for a reader that was taken over by the
// file it read. The walls themselves are tested on the real program, in tests/paper.
#include "shell/intake/child.hpp"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <stdlib.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <stop_token>
#include <string>
#include <thread>
#include <vector>

namespace loafwright::intake {
namespace {

namespace fs = std::filesystem;

class child : public testing::Test {
protected:
    void SetUp() override {
        std::string pattern = (fs::temp_directory_path() / "loafwright-test-XXXXXX").string();
        ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
        ::setenv("TMPDIR", (folder_ / "tmp").c_str(), 1);
        fs::create_directory(folder_ / "tmp");
    }
    void TearDown() override {
        EXPECT_TRUE(fs::is_empty(folder_ / "tmp")) << "something was left behind";
        ::unsetenv("TMPDIR");
        fs::remove_all(folder_);
    }
    [[nodiscard]] std::string script(const std::string& lines) const {
        const fs::path path = folder_ / "reader";
        std::ofstream(path) << "#!/bin/sh\n" << lines;
        fs::permissions(path, fs::perms::owner_all);
        return path.string();
    }

    fs::path folder_;
};

TEST_F(child, says_what_it_was_told) {
    const ChildRun run = run_child(script("cat"), "words\n", {});
    EXPECT_EQ(run.end, End::answered);
    EXPECT_EQ(run.said, "words\n");
}

TEST_F(child, knows_nothing_of_its_parent) {
    ::setenv("LOAFWRIGHT_TEST_SECRET", "flour", 1);
    const int open_file = ::open("/etc/hostname", 0);
    const ChildRun run = run_child(
        script("echo \"[$LOAFWRIGHT_TEST_SECRET][$HOME]\"; ls /proc/self/fd | wc -l"), "", {});
    ::close(open_file);
    ::unsetenv("LOAFWRIGHT_TEST_SECRET");
    // The three streams, the progress, and the folder that ls has open itself.
    EXPECT_EQ(run.said, "[][]\n5\n");
}

TEST_F(child, can_make_no_file_where_it_stands) {
    const ChildRun run = run_child(script("(: > left-behind) 2>/dev/null || echo no"), "", {});
    EXPECT_EQ(run.said, "no\n");
}

TEST_F(child, that_is_not_there_is_missing) {
    const ChildRun run = run_child((folder_ / "nobody").string(), "", {});
    EXPECT_EQ(run.end, End::missing);
    EXPECT_NE(run.reason, "");
}

TEST_F(child, that_fails_or_is_killed_fell) {
    EXPECT_EQ(run_child(script("exit 1"), "", {}).end, End::fell);
    EXPECT_EQ(run_child(script("kill -SEGV $$"), "", {}).end, End::fell);
    EXPECT_EQ(run_child(script("exit 9"), "", {}).end, End::out_of_room);
}

TEST_F(child, that_never_ends_is_ended) {
    Wish wish;
    wish.limits.wall_seconds = 1;
    EXPECT_EQ(run_child(script("exec sleep 1000"), "", wish).end, End::out_of_time);
}

TEST_F(child, that_never_stops_talking_is_ended) {
    EXPECT_EQ(run_child(script("exec cat /dev/zero"), "", {}).end, End::out_of_room);
}

TEST_F(child, that_reads_nothing_of_a_long_message_does_no_harm) {
    EXPECT_EQ(run_child(script("exit 0"), std::string(8'000'000, 'x'), {}).end, End::answered);
}

TEST_F(child, is_stopped_when_asked) {
    std::stop_source source;
    Wish wish;
    wish.stop = source.get_token();
    wish.progress = [&source](int) { source.request_stop(); };
    EXPECT_EQ(run_child(script("printf '\\001' >&3; exec sleep 1000"), "", wish).end, End::stopped);
}

TEST_F(child, tells_how_far_it_is_and_never_back) {
    std::vector<int> steps;
    Wish wish;
    wish.progress = [&steps](int step) { steps.push_back(step); };
    const ChildRun run = run_child(script("printf '\\001' >&3; sleep 0.2; printf '\\062' >&3; "
                                          "sleep 0.2; printf '\\005\\377' >&3"),
                                   "",
                                   wish);
    EXPECT_EQ(run.end, End::answered);
    EXPECT_EQ(steps, (std::vector<int>{1, 50}));
}

TEST_F(child, several_at_once_do_not_meet) {
    const std::string program = script("cat");
    std::vector<std::string> said(6);
    {
        std::vector<std::jthread> threads;
        for (std::size_t i = 0; i < said.size(); ++i) {
            threads.emplace_back([&, i] {
                said[i] =
                    run_child(program, std::string(100'000, static_cast<char>('a' + i)), {}).said;
            });
        }
    }
    for (std::size_t i = 0; i < said.size(); ++i) {
        EXPECT_EQ(said[i], std::string(100'000, static_cast<char>('a' + i)));
    }
}

} // namespace
} // namespace loafwright::intake
