// SPDX-License-Identifier: Apache-2.0
//
// Files are written whole or not at all.
#include "shell/output/write_file.hpp"

#include <gtest/gtest.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>

namespace loafwright::output {
namespace {

namespace fs = std::filesystem;

class Folder : public testing::Test {
protected:
    void SetUp() override {
        std::string pattern = (fs::temp_directory_path() / "loafwright-test-XXXXXX").string();
        ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
        path_ = pattern;
    }
    void TearDown() override {
        std::error_code ignored;
        fs::remove_all(path_, ignored);
    }
    [[nodiscard]] std::string in(const std::string& name) const { return (path_ / name).string(); }
    [[nodiscard]] long entries() const {
        return std::distance(fs::directory_iterator(path_), fs::directory_iterator());
    }
    static std::string bytes_of(const std::string& path) {
        std::ifstream file(path, std::ios::binary);
        std::ostringstream bytes;
        bytes << file.rdbuf();
        return bytes.str();
    }
    fs::path path_;
};

using write_file_in = Folder;

TEST_F(write_file_in, a_new_file_holds_exactly_the_bytes) {
    const std::string bytes("a\0b\r\n", 5);
    EXPECT_FALSE(write_file(in("page.txt"), bytes));
    EXPECT_EQ(bytes_of(in("page.txt")), bytes);
    EXPECT_EQ(entries(), 1) << "nothing else is left beside it";
}

TEST_F(write_file_in, an_old_file_is_replaced_and_keeps_its_permissions) {
    std::ofstream(in("page.txt")) << "a much longer page than the new one";
    ASSERT_EQ(::chmod(in("page.txt").c_str(), 0640), 0);
    EXPECT_FALSE(write_file(in("page.txt"), "new"));
    EXPECT_EQ(bytes_of(in("page.txt")), "new");
    struct stat found {};
    ASSERT_EQ(::stat(in("page.txt").c_str(), &found), 0);
    EXPECT_EQ(found.st_mode & 0777U, 0640U);
}

TEST_F(write_file_in, a_link_is_followed_and_stays_a_link) {
    std::ofstream(in("real.txt")) << "old";
    fs::create_symlink(in("real.txt"), in("link.txt"));
    EXPECT_FALSE(write_file(in("link.txt"), "new"));
    EXPECT_TRUE(fs::is_symlink(in("link.txt")));
    EXPECT_EQ(bytes_of(in("real.txt")), "new");
}

TEST_F(write_file_in, a_folder_that_is_not_there_is_named) {
    const auto fault = write_file(in("nowhere/page.txt"), "x");
    ASSERT_TRUE(fault);
    EXPECT_EQ(fault->code, "unwritable");
    EXPECT_EQ(fault->where, in("nowhere/page.txt"));
    EXPECT_FALSE(fault->do_this.empty());
    EXPECT_EQ(entries(), 0);
}

TEST_F(write_file_in, a_folder_is_not_written_over) {
    EXPECT_TRUE(write_file(path_.string(), "x"));
    EXPECT_TRUE(fs::is_directory(path_));
}

TEST_F(write_file_in, a_device_is_written_to_as_it_is) {
    EXPECT_FALSE(write_file("/dev/null", "x"));
    EXPECT_TRUE(fs::is_character_file("/dev/null"));
    const auto full = write_file("/dev/full", "x");
    ASSERT_TRUE(full);
    EXPECT_EQ(full->code, "unwritable");
}

} // namespace
} // namespace loafwright::output
