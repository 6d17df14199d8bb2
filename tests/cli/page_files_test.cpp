// SPDX-License-Identifier: Apache-2.0
//
// Pages written to files by the built program, several at once, and what cannot be written.
#include "shell/cli/page_files.hpp"
#include "tests/cli/program.hpp"
#include "tests/output/readers.hpp"

#include <gtest/gtest.h>
#include <sys/mount.h>

#include <cstdlib>
#include <string>
#include <vector>

namespace loafwright {
namespace {

std::vector<std::string> written_to(const std::vector<std::string>& files,
                                    const std::vector<std::string>& more = {}) {
    std::vector<std::string> words = {"plan",
                                      "loaf.txt",
                                      "--start",
                                      "10:00",
                                      "--room-c",
                                      "21",
                                      "--now",
                                      "2026-11-28T09:00:00Z",
                                      "--zone",
                                      "UTC"};
    for (const std::string& file : files) {
        words.insert(words.end(), {"--out", file});
    }
    words.insert(words.end(), more.begin(), more.end());
    return words;
}

TEST(page_files, an_ending_is_known_in_any_case) {
    for (const char* path : {"a.pdf", "a.PDF", "b/c.svg", "x.png", "x.txt", "x.Json"}) {
        EXPECT_TRUE(cli::has_page_ending(path)) << path;
    }
    for (const char* path : {"", ".pdf", "pdf", "a.pdfx", "a.doc", "a.pdf/"}) {
        EXPECT_FALSE(cli::has_page_ending(path)) << path;
    }
}

TEST_F(program, writes_every_kind_of_page_at_once) {
    const Outcome outcome =
        run(written_to({"page.pdf", "page.svg", "page.png", "page.txt", "page.json"}));
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_EQ(outcome.err, "");
    // The first bytes say what each is: ISO 32000-1 7.5.2, XML 1.0 2.8, PNG 5.2.
    EXPECT_EQ(bytes_of(in("page.pdf")).substr(0, 5), "%PDF-");
    EXPECT_EQ(bytes_of(in("page.svg")).substr(0, 5), "<?xml");
    EXPECT_EQ(bytes_of(in("page.png")).substr(0, 4), "\x89PNG");
    EXPECT_EQ(bytes_of(in("page.txt")), outcome.out);
    EXPECT_EQ(bytes_of(in("page.json")).substr(0, 1), "{");
}

TEST_F(program, the_same_bake_is_the_same_pdf) {
    EXPECT_EQ(run(written_to({"one.pdf"})).status, 0);
    EXPECT_EQ(run(written_to({"two.pdf"})).status, 0);
    const std::string pdf = bytes_of(in("one.pdf"));
    EXPECT_FALSE(pdf.empty());
    EXPECT_EQ(pdf, bytes_of(in("two.pdf")));
    EXPECT_NE(pdf.find("/CreationDate (20261128100000"), std::string::npos)
        << "the time to begin, not the clock's";
}

TEST_F(program, paper_and_print_are_chosen) {
    EXPECT_EQ(run(written_to({"letter.pdf"}, {"--paper", "letter"})).status, 0);
    EXPECT_EQ(run(written_to({"a4.pdf"}, {"--paper", "a4"})).status, 0);
    EXPECT_EQ(run(written_to({"large.svg"}, {"--large-print"})).status, 0);
    EXPECT_EQ(run(written_to({"usual.svg"})).status, 0);
    EXPECT_NE(bytes_of(in("letter.pdf")).find("[ 0 0 612 792 ]"), std::string::npos);
    EXPECT_NE(bytes_of(in("a4.pdf")).find("[ 0 0 595.2"), std::string::npos);
    EXPECT_NE(bytes_of(in("large.svg")), bytes_of(in("usual.svg")));
    expect_refused(written_to({"a.pdf"}, {"--paper", "a3"}), {"a3", "a4 or letter"});
}

TEST(page_files, an_address_is_absolute_and_of_the_web) {
    for (const char* address : {"https://loaf.example/p/7Q2M",
                                "HTTP://192.0.2.1:8080/?day=sat#3",
                                "http://[2001:db8::1]/"}) {
        EXPECT_TRUE(cli::is_web_address(address)) << address;
    }
    for (const char* address : {"",
                                "loaf.example",
                                "/page",
                                "https://",
                                "https:///page",
                                "ftp://loaf.example",
                                "javascript:alert(1)",
                                "https://loaf.example/a b",
                                "https://loaf.example/\n",
                                "https://l\xC3\xB6"
                                "af.example"}) {
        EXPECT_FALSE(cli::is_web_address(address)) << address;
    }
}

// Read back by zbar.
TEST_F(program, an_address_is_a_short_code_on_the_page) {
    const std::string address = "https://loaf.example/p/7Q2M-9XKD"; // example: RFC 2606
    const Outcome outcome = run(written_to({"page.png"}, {"--address", address}));
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    expect_refused(written_to({"a.pdf"}, {"--address", "loaf.example"}),
                   {"'loaf.example'", "a web address"});
    expect_refused(
        written_to({"a.pdf"}, {"--address", "https://e.example/" + std::string(300, 'x')}),
        {"318 letters", "213"});
    const Said read = said_by({"zbarimg", "--nodbus", "--quiet", "--raw", in("page.png")});
    if (read.status == 127) {
        GTEST_SKIP() << "zbarimg of zbar-tools is not there";
    }
    EXPECT_EQ(read.out, address + "\n");
}

TEST_F(program, a_first_bake_is_told_what_is_normal) {
    EXPECT_EQ(run(written_to({})).out.find("Normal, though it may worry you:"), std::string::npos);
    const Outcome told = run(written_to({"page.pdf"}, {"--first-bake"}));
    EXPECT_EQ(told.status, 0) << told.err;
    EXPECT_NE(told.out.find("Normal, though it may worry you:"), std::string::npos) << told.out;
    const Outcome heard = run(written_to({}, {"--first-bake", "--linear"}));
    EXPECT_NE(heard.out.find("\nThis is normal: "), std::string::npos) << heard.out;
}

TEST_F(program, an_ending_that_means_nothing_is_named_and_nothing_is_written) {
    expect_refused(written_to({"page.pdf", "page.odt"}), {"page.odt", ".pdf"});
    EXPECT_FALSE(fs::exists(in("page.pdf")));
}

TEST_F(program, a_page_that_cannot_be_written_is_said) {
    expect_refused(written_to({"nowhere/page.pdf"}), {"nowhere/page.pdf"});
    fs::create_directory(in("folder.pdf"));
    expect_refused(written_to({"folder.pdf"}), {"folder.pdf"});
    EXPECT_TRUE(fs::is_directory(in("folder.pdf")));
}

TEST_F(program, a_full_disk_is_said_and_leaves_the_old_page_whole) {
    fs::create_directory(in("small"));
    if (::mount("tmpfs", in("small").c_str(), "tmpfs", 0, "size=64k") != 0) {
        GTEST_SKIP() << "a small disk of memory needs root";
    }
    EXPECT_EQ(run(written_to({"small/page.txt"})).status, 0);
    const std::string old = bytes_of(in("small/page.txt"));
    write("small/filler", std::string(48 * 1024, 'x'));
    fs::copy_file(in("small/page.txt"), in("small/page.svg"));
    const Outcome outcome = run(written_to({"small/page.svg"}));
    const std::string kept = bytes_of(in("small/page.svg"));
    const auto entries =
        std::distance(fs::directory_iterator(in("small")), fs::directory_iterator());
    EXPECT_EQ(::umount(in("small").c_str()), 0);
    EXPECT_EQ(outcome.status, 2) << outcome.err;
    EXPECT_NE(outcome.err.find("small/page.svg"), std::string::npos) << outcome.err;
    EXPECT_EQ(kept, old);
    EXPECT_EQ(entries, 3) << "nothing half written";
}

} // namespace
} // namespace loafwright
