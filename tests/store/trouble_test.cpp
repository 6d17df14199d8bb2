// SPDX-License-Identifier: Apache-2.0
//
// When a thing goes wrong that is nobody's fault: it is told by its own name, nothing is half kept,
// and it works again when the cause has gone. The disks are real file systems in memory, the
// database is a real server that was stopped.
#include "tests/store/cluster.hpp"
#include "tests/store/places.hpp"

#include <gtest/gtest.h>
#include <sqlite3.h>
#include <stdlib.h>
#include <sys/mount.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

namespace loafwright::store {
namespace {

namespace fs = std::filesystem;

template <typename Value>
std::string code_of(const Answer<Value>& answer) {
    return answer ? "none" : answer.error().code;
}

std::string code_of(const tl::expected<Imported, Diagnostics>& answer) {
    return answer ? "none" : answer.error().at(0).code;
}

Answer<std::vector<Appended>> append(Store& store, const std::string& id, std::size_t bytes = 2) {
    return store.append_all({{"a", {{id, std::string(bytes, 'x')}}}});
}

// A small disk.
class Disk {
public:
    Disk() : mounted_(change(0, "size=2m")) {}
    ~Disk() {
        if (mounted_) {
            ::umount(folder_.path().c_str());
        }
    }
    Disk(const Disk&) = delete;
    Disk& operator=(const Disk&) = delete;

    [[nodiscard]] bool is_there() const { return mounted_; }
    [[nodiscard]] std::string in(const std::string& name) const { return folder_.in(name); }
    bool set_read_only(bool read_only) {
        return change(read_only ? MS_REMOUNT | MS_RDONLY : MS_REMOUNT, "size=2m");
    }

private:
    bool change(unsigned long flags, const char* options) {
        return ::mount("tmpfs", folder_.path().c_str(), "tmpfs", flags, options) == 0;
    }

    Folder folder_;
    bool mounted_;
};

class on_a_small_disk : public testing::Test {
protected:
    void SetUp() override {
        if (!disk_.is_there()) {
            GTEST_SKIP() << "only root may mount a small disk";
        }
        store_ = taken(store::open(disk_.in("kept"), ""));
        taken(store_->create_bake("a", "{}", Instant{}));
        taken(append(*store_, "first"));
    }
    void fill() {
        std::ofstream rest(disk_.in("rest"), std::ios::binary);
        const std::string block(4096, 'x');
        while (rest << block << std::flush) {
        }
        more_ = 0;
    }
    void make_room() const { fs::remove(disk_.in("rest")); }
    // Appends until something goes wrong; the log of SQLite has a little room of its own.
    std::string append_until_trouble() {
        for (; more_ < 1000; ++more_) {
            const auto answer = append(*store_, "more-" + std::to_string(more_), 5000);
            if (!answer) {
                EXPECT_FALSE(answer.error().do_this.empty());
                EXPECT_EQ(answer.error().where, disk_.in("kept"));
                return answer.error().code;
            }
        }
        return "none";
    }

    Disk disk_;
    std::unique_ptr<Store> store_;
    int more_ = 0;
};

TEST_F(on_a_small_disk, a_full_disk_is_told_and_what_was_kept_stays) {
    fill();
    EXPECT_EQ(append_until_trouble(), "store_full");
    EXPECT_EQ(code_of(store_->put_document("recipe", "rye", std::string(50000, 'x'))),
              "store_full");
    EXPECT_EQ(code_of(store_->create_bake("b", std::string(50000, 'x'), Instant{})), "store_full");
    EXPECT_EQ(code_of(store_->put_photo(std::string(50000, 'x'))), "store_full");
    const auto imported = store_->import_all(
        R"({"loafwright_export":1,"documents":[{"kind":"recipe","id":"big","revision":1,"json":{"x":")" +
        std::string(50000, 'x') + R"("}}],"bakes":[],"photos":[]})");
    EXPECT_EQ(code_of(imported), "store_full");
    // What is there can be read, by this one and by the next.
    EXPECT_EQ(numbered(*store_, "a").size(), static_cast<std::size_t>(more_) + 1);
    EXPECT_FALSE(taken(store_->bake("b")));
    EXPECT_TRUE(taken(store_->documents("recipe")).empty());
    make_room();
    EXPECT_EQ(code_of(append(*store_, "after", 5000)), "none");
    EXPECT_TRUE(store_->put_photo(std::string(50000, 'x')));
    EXPECT_TRUE(store_->put_document("recipe", "rye", std::string(50000, 'x')));
    const std::size_t before = numbered(*store_, "a").size();
    store_.reset();
    const auto after = taken(store::open(disk_.in("kept"), ""));
    EXPECT_EQ(numbered(*after, "a").size(), before);
    for (const auto& entry : fs::recursive_directory_iterator(disk_.in("kept/photos"))) {
        EXPECT_TRUE(entry.is_directory() || entry.path().filename().string().size() == 64)
            << entry.path() << " was left behind";
    }
}

TEST_F(on_a_small_disk, a_disk_that_is_full_from_the_start_is_told) {
    fill();
    EXPECT_EQ(code_of(store::open(disk_.in("new"), "")), "store_full");
    make_room();
    EXPECT_EQ(code_of(store::open(disk_.in("new"), "")), "none");
}

TEST_F(on_a_small_disk, one_that_may_only_be_read_is_told_and_works_again) {
    // A disk on which a file is open for writing cannot be closed for it.
    store_.reset();
    ASSERT_TRUE(disk_.set_read_only(true));
    EXPECT_EQ(code_of(store::open(disk_.in("kept"), "")), "store_read_only");
    EXPECT_EQ(code_of(store::open(disk_.in("new"), "")), "store_read_only");
    ASSERT_TRUE(disk_.set_read_only(false));
    store_ = taken(store::open(disk_.in("kept"), ""));
    EXPECT_EQ(code_of(append(*store_, "second")), "none");
    EXPECT_EQ(numbered(*store_, "a").size(), 2U);
}

// For who is not root, permissions say the same.
TEST(without_permission, a_folder_that_may_only_be_read_is_told) {
    const Place place(Where::folder);
    taken(place.open()->put_photo("abc"));
    if (::geteuid() == 0) {
        GTEST_SKIP() << "root may write everywhere";
    }
    for (const char* name : {"", "/loafwright.db"}) {
        fs::permissions(place.address() + name, fs::perms::owner_write, fs::perm_options::remove);
    }
    EXPECT_EQ(code_of(store::open(place.address(), "")), "store_read_only");
    EXPECT_EQ(code_of(store::open(place.address() + "/below", "")), "store_read_only");
    fs::permissions(place.address(), fs::perms::owner_all);
    fs::permissions(place.address() + "/loafwright.db", fs::perms::owner_all);
    EXPECT_EQ(code_of(store::open(place.address(), "")), "none");
}

std::string bytes_of(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

TEST(damaged, a_file_that_is_no_database_is_told_and_left_alone) {
    const Place place(Where::folder);
    fs::create_directories(place.address());
    const std::string file = place.address() + "/loafwright.db";
    const std::string text = "Dear diary, " + std::string(5000, 'x');
    std::ofstream(file, std::ios::binary) << text;
    const auto opened = store::open(place.address(), "");
    EXPECT_EQ(code_of(opened), "store_damaged");
    EXPECT_TRUE(bytes_of(file) == text);
}

TEST(damaged, a_file_with_a_hole_in_it_is_told) {
    const Place place(Where::folder);
    {
        const auto store = place.open();
        taken(store->create_bake("a", "{}", Instant{}));
        for (int n = 0; n < 200; ++n) {
            taken(append(*store, std::to_string(n), 1000));
        }
    }
    const std::string file = place.address() + "/loafwright.db";
    const auto size = static_cast<std::streamoff>(fs::file_size(file));
    {
        // The first page, which says what there is, is left whole.
        std::fstream hole(file, std::ios::binary | std::ios::in | std::ios::out);
        hole.seekp(4096);
        hole << std::string(static_cast<std::size_t>(size - 4096), 'x');
    }
    std::string code = code_of(store::open(place.address(), ""));
    if (code == "none") {
        code = code_of(place.open()->events_after("a", 0, SIZE_MAX));
    }
    EXPECT_EQ(code, "store_damaged");
}

TEST(odd_names, the_one_kind_of_name_that_cannot_be_is_refused) {
    const Folder folder;
    EXPECT_EQ(code_of(store::open(folder.in("a = \"b\""), "")), "store_unreachable");
}

TEST(odd_names, a_folder_may_be_called_anything) {
    const Folder folder;
    for (const std::string name : {"two words",
                                   "a=b",
                                   "it's",
                                   "x y=z w",
                                   "caf\xC3\xA9",
                                   "?a&b#c%20",
                                   "the \"good\" one",
                                   "\"",
                                   "a=\"b"}) {
        const std::string path = folder.in(name);
        EXPECT_EQ(code_of(store::open(path, "")), "none") << name;
        EXPECT_TRUE(fs::exists(path + "/loafwright.db")) << name;
    }
}

using newer = OnBoth;
LOAFWRIGHT_ON_BOTH(newer);

TEST_P(newer, what_a_newer_program_wrote_is_left_alone) {
    taken(store_->put_document("recipe", "rye", "{}"));
    store_.reset();
    const std::string statement = "UPDATE loafwright_version SET version = 99";
    if (GetParam() == Where::postgresql) {
        Cluster::get()->execute(place_->address(), statement);
    } else {
        sqlite3* file = nullptr;
        ASSERT_EQ(sqlite3_open((place_->address() + "/loafwright.db").c_str(), &file), SQLITE_OK);
        EXPECT_EQ(sqlite3_exec(file, statement.c_str(), nullptr, nullptr, nullptr), SQLITE_OK);
        sqlite3_close(file);
    }
    const auto opened = store::open(place_->address(), place_->photos());
    ASSERT_FALSE(opened);
    EXPECT_EQ(opened.error().code, "store_newer");
    EXPECT_EQ(opened.error().where, place_->address());
}

class away : public testing::Test {
protected:
    void SetUp() override {
        if (Cluster::get() == nullptr) {
            GTEST_SKIP() << "no PostgreSQL server is installed (postgresql-15)";
        }
        place_ = std::make_unique<Place>(Where::postgresql);
    }
    std::unique_ptr<Place> place_;
};

TEST_F(away, a_database_that_is_stopped_is_told_and_used_again_when_it_is_back) {
    const auto store = place_->open();
    taken(store->create_bake("a", "{}", Instant{}));
    taken(append(*store, "first"));
    for (int turn = 0; turn < 2; ++turn) {
        Cluster::get()->stop("fast");
        EXPECT_EQ(code_of(append(*store, "second")), "store_unreachable");
        EXPECT_EQ(code_of(append(*store, "second")), "store_unreachable");
        EXPECT_EQ(code_of(store->bakes(1)), "store_unreachable");
        EXPECT_EQ(code_of(store->export_all()), "store_unreachable");
        EXPECT_EQ(code_of(store::open(place_->address(), place_->photos())), "store_unreachable");
        Cluster::get()->start();
        EXPECT_EQ(code_of(append(*store, "second")), "none") << "at once";
    }
    EXPECT_EQ(numbered(*store, "a").size(), 2U);
}

TEST_F(away, a_database_that_may_only_be_read_is_told) {
    const auto store = place_->open();
    taken(store->create_bake("a", "{}", Instant{}));
    const std::string name = place_->address().substr(14, place_->address().find('?') - 14);
    const std::string set = "ALTER DATABASE " + name + " SET default_transaction_read_only = ";
    Cluster::get()->execute(place_->address(), set + "on");
    EXPECT_EQ(code_of(store::open(place_->address(), place_->photos())), "store_read_only");
    Cluster::get()->execute(place_->address(), "BEGIN READ WRITE; " + set + "off; COMMIT");
    EXPECT_EQ(code_of(store::open(place_->address(), place_->photos())), "none");
}

TEST_F(away, what_is_told_of_an_address_has_no_password_in_it) {
    for (const char* address : {"postgresql://app:secret@/nobody?host=/nowhere",
                                "postgres://app:se@secret@localhost:1/nobody?application_name=a@b",
                                "postgresql:///nobody?host=/nowhere&user=app&password=secret",
                                "postgresql:///nobody?password=secret&host=/nowhere"}) {
        const auto opened = store::open(address, "photos");
        ASSERT_FALSE(opened);
        EXPECT_EQ(opened.error().code, "store_unreachable");
        EXPECT_EQ(one_line(opened.error()).find("secret"), std::string::npos)
            << one_line(opened.error());
    }
}

} // namespace
} // namespace loafwright::store
