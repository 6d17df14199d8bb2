// SPDX-License-Identifier: Apache-2.0
//
// Files of projects in the two public layouts, sound and broken. The projects are ours and small
// enough to see whole.
#include "engine/schedule/project_solve.hpp"
#include "engine/wire/project_answer.hpp"
#include "engine/wire/project_files.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <rapidcheck/gtest.h>

#include <string>

namespace loafwright::wire {
namespace {

// Columns and headings as PSPLIB writes them.
constexpr const char* psplib =
    R"(************************************************************************
file with basedata            : OURS.BAS
initial value random generator: 12345
************************************************************************
projects                      :  1
jobs (incl. supersource/sink ):  5
horizon                       :  9
RESOURCES
  - renewable                 :  2   R
  - nonrenewable              :  0   N
  - doubly constrained        :  0   D
************************************************************************
PROJECT INFORMATION:
pronr.  #jobs rel.date duedate tardcost  MPM-Time
    1      3      0        6        2        6
************************************************************************
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          2           2   3
   2        1          1           4
   3        1          1           5
   4        1          1           5
   5        1          0
************************************************************************
REQUESTS/DURATIONS:
jobnr. mode duration  R 1  R 2
------------------------------------------------------------------------
  1      1     0       0    0
  2      1     3       2    0
  3      1     4       2    1
  4      1     2       1    4
  5      1     0       0    0
************************************************************************
RESOURCEAVAILABILITIES:
  R 1  R 2
    3    4
************************************************************************
)";

// Three activities and the two ends; 3 starts at most 4 after 1.
constexpr const char* rcpspmax = "3\t1\t0\t0\t\n"
                                 "0\t1\t2\t1\t2\t[0]\t[0]\t\n"
                                 "1\t1\t1\t3\t[2]\t\n"
                                 "2\t1\t1\t4\t[5]\t\n"
                                 "3\t1\t2\t4\t1\t[3]\t[-4]\t\n"
                                 "4\t1\t0\t\n"
                                 "0\t1\t0\t0\t\n"
                                 "1\t1\t4\t2\t\n"
                                 "2\t1\t5\t1\t\n"
                                 "3\t1\t3\t2\t\n"
                                 "4\t1\t0\t0\t\n"
                                 "3\t\n";

std::string with(std::string text, const std::string& old, const std::string& fresh) {
    const std::size_t at = text.find(old);
    EXPECT_NE(at, std::string::npos) << old;
    return text.replace(at, old.size(), fresh);
}

std::string everywhere(std::string text, const std::string& old, const std::string& fresh) {
    for (std::size_t at = text.find(old); at != std::string::npos;
         at = text.find(old, at + fresh.size())) {
        text.replace(at, old.size(), fresh);
    }
    return text;
}

std::string fault(const tl::expected<schedule::Project, Diagnostics>& read) {
    return read ? "" : read.error().front().code + " " + one_line(read.error().front());
}
std::string psplib_fault(const std::string& bytes) {
    return fault(project_from_psplib(bytes, "p.sm"));
}
std::string max_fault(const std::string& bytes) {
    return fault(project_from_rcpspmax(bytes, "p.sch"));
}

std::int64_t makespan(const tl::expected<schedule::Project, Diagnostics>& read) {
    EXPECT_TRUE(read.has_value()) << fault(read);
    const auto outcome = schedule::solve_project(*read);
    const auto* solved = std::get_if<schedule::ProjectSolved>(&outcome);
    return solved != nullptr ? solved->makespan : -1;
}

void expect_words(const std::string& said, std::initializer_list<const char*> words) {
    for (const char* word : words) {
        EXPECT_NE(said.find(word), std::string::npos) << word << "\n" << said;
    }
}

// By hand: 2 and 3 share resource 1, 3 and 4 share resource 2, so all three follow each other.
TEST(wire_project, the_headings_of_psplib_hold_the_project) {
    const auto project = project_from_psplib(psplib, "p.sm");
    ASSERT_TRUE(project.has_value()) << fault(project);
    EXPECT_EQ(project->capacities, (std::vector<std::int64_t>{3, 4}));
    ASSERT_EQ(project->activities.size(), 5U);
    EXPECT_EQ(project->activities[3].duration, 2);
    EXPECT_EQ(project->activities[3].demands, (std::vector<std::int64_t>{1, 4}));
    EXPECT_EQ(makespan(project), 9);
}

// By hand: 2 runs beside either; 1 and 3 follow each other, 3 exactly when 1 is over.
TEST(wire_project, the_numbers_of_progen_max_hold_the_project) {
    const auto project = project_from_rcpspmax(rcpspmax, "p.sch");
    ASSERT_TRUE(project.has_value()) << fault(project);
    EXPECT_EQ(project->capacities, std::vector<std::int64_t>{3});
    EXPECT_EQ(makespan(project), 7);
    EXPECT_EQ(makespan(project_from_rcpspmax(with(rcpspmax, "[-4]", "[-3]"), "p.sch")), -1);
}

TEST(wire_project, blanks_line_ends_and_comments_change_nothing) {
    for (const std::string& text : {everywhere(psplib, "\n", "\r\n"),
                                    everywhere(psplib, "\n", "\r"),
                                    everywhere(psplib, "\n", "  \n\n"),
                                    everywhere(psplib, " ", "\t"),
                                    with(psplib, "R 1  R 2\n    3", "r1 r2 # units\n 3"),
                                    with(psplib, "2   3\n", "2\n 3\n"),
                                    with(psplib, "RESOURCEAVAIL", "Resource Avail"),
                                    with(psplib, "jobs (incl", "work (incl")}) {
        EXPECT_EQ(makespan(project_from_psplib(text, "p.sm")), 9) << text;
    }
    for (const std::string& text : {everywhere(rcpspmax, "\n", "\r\n"),
                                    everywhere(rcpspmax, "\t", " "),
                                    everywhere(rcpspmax, "[", " [ "),
                                    with(rcpspmax, "3\t1\t0\t0", "# ours\n\n 3 1"),
                                    with(rcpspmax, "\t[2]", "\n[2]")}) {
        EXPECT_EQ(makespan(project_from_rcpspmax(text, "p.sch")), 7) << text;
    }
}

TEST(wire_project, a_wrong_psplib_file_is_told_with_its_line) {
    expect_words(psplib_fault(with(psplib, "2      1     3", "2      1     x")),
                 {"project_unreadable p.sm:29: found \"x\", expected the duration of activity 2"});
    expect_words(
        psplib_fault(with(psplib, "2      1     3", "2      1    -3")),
        {"value_out_of_range p.sm:29: found -3, expected the duration of activity 2, 0 to"});
    expect_words(psplib_fault(with(psplib, "2      1     3", "2      1   3.5")), {"found \"3.5\""});
    expect_words(
        psplib_fault(with(psplib, "   2        1 ", "   2        3 ")),
        {"value_out_of_range p.sm:20: found 3, expected the number of modes of activity 2, 1"});
    expect_words(psplib_fault(with(psplib, "   4        1 ", "   5        1 ")),
                 {"p.sm:22: found 5, expected the number of the activity, 4"});
    expect_words(psplib_fault(with(psplib, "           4\n", "           6\n")),
                 {"value_out_of_range p.sm: activity 2 has the successor 6, expected 1 to 5"});
    expect_words(psplib_fault(with(psplib, "sink ):  5", "sink ):  6")),
                 {"p.sm:6: found 6, expected the number of \"jobs\"", "5"});
    expect_words(psplib_fault(with(psplib, ":  0   N", ":  1   N")), {"p.sm:10: found 1"});
    expect_words(psplib_fault(with(psplib, "    3    4\n", "    3\n")),
                 {"p.sm:28: found 0, expected the number of the activity, 2"});
    expect_words(
        psplib_fault(with(psplib, "    3    4\n", "")),
        {"project_unreadable p.sm:35: found the end of it, expected the units of resource 1"});
    expect_words(psplib_fault(with(psplib, "REQUESTS", "REQUEST")),
                 {"project_unreadable p.sm: found no line \"REQUESTS/DURATIONS\""});
    expect_words(psplib_fault(""), {"project_unreadable p.sm: found no line"});
    expect_words(psplib_fault(std::string(1048577, ' ')), {"text_too_long"});
    expect_words(psplib_fault(with(psplib, "3      1     4", "3      1 99999")),
                 {"value_out_of_range", "one after the other"});
}

TEST(wire_project, a_wrong_progen_max_file_is_told_with_its_line) {
    expect_words(max_fault(with(rcpspmax, "[2]", "2")),
                 {"project_unreadable p.sch:3: found \"2\", expected \"[\""});
    expect_words(max_fault(with(rcpspmax, "\t[-4]", "")), {"p.sch:6: found \"4\", expected \"[\""});
    expect_words(
        max_fault(with(rcpspmax, "[-4]", "[+4]")),
        {"p.sch:5: found \"+4\", expected the lag from activity 3 to 1, -100000 to 100000"});
    expect_words(max_fault(with(rcpspmax, "3\t1\t0\t0", "3\t1\t2\t0")),
                 {"p.sch:1: found 2, expected the number of other resources, 0"});
    expect_words(max_fault(with(rcpspmax, "3\t1\t0\t0", "4\t1\t0\t0")), {"p.sch:7: found 0"});
    expect_words(max_fault(with(rcpspmax, "3\t1\t0\t0", "99999999999999999999\t1")),
                 {"value_out_of_range p.sch:1: found 99999999999999999999"});
    expect_words(max_fault(with(rcpspmax, "4\t1\t0\t0\t\n3", "4\t1\t0\t0\t\n3 3")),
                 {"project_unreadable p.sch:12: found \"3\", expected nothing more"});
    expect_words(max_fault(""), {"project_unreadable p.sch: found nothing in it"});
    expect_words(max_fault("3 \x1b[2J"), {"found \"?\", expected the number of resources"});
}

// Broken at random places, so that every question a reader asks is answered wrongly at times.
void bend(std::string text, const char* layout) {
    const int changes = *rc::gen::inRange(1, 6);
    for (int k = 0; k < changes && !text.empty(); ++k) {
        const std::size_t at = *rc::gen::inRange<std::size_t>(0, text.size());
        switch (*rc::gen::inRange(0, 4)) {
        case 0:
            text.erase(at, *rc::gen::inRange<std::size_t>(1, 12));
            break;
        case 1:
            text.insert(at, *rc::gen::element<std::string>("9", "-", "[", "]", "\n", "1 ", "x"));
            break;
        case 2:
            text[at] = *rc::gen::arbitrary<char>();
            break;
        default:
            text.insert(at, text.substr(text.size() - at));
        }
    }
    const auto read = std::string(layout) == "psplib" ? project_from_psplib(text, "p")
                                                      : project_from_rcpspmax(text, "p");
    if (read) {
        RC_ASSERT(schedule::faults_in(*read).empty());
    } else {
        RC_ASSERT(!read.error().empty());
        RC_ASSERT(is_known_code(read.error().front().code));
        RC_ASSERT(read.error().front().where.compare(0, 1, "p") == 0);
        RC_ASSERT(!read.error().front().do_this.empty());
    }
}

RC_GTEST_PROP(wire_project, a_bent_psplib_file_is_read_or_told, ()) {
    bend(psplib, "psplib");
}

RC_GTEST_PROP(wire_project, a_bent_progen_max_file_is_read_or_told, ()) {
    bend(rcpspmax, "rcpspmax");
}

RC_GTEST_PROP(wire_project, any_bytes_are_read_or_told, (const std::string& bytes)) {
    bend(bytes, "psplib");
    bend(bytes, "rcpspmax");
}

TEST(wire_project, an_answer_has_its_bounds_and_a_start_for_each_activity) {
    using Json = nlohmann::json;
    EXPECT_EQ(Json::parse(project_json("a", {{0, 1}, 5, 4, schedule::Proof::best_found})),
              Json::parse(R"({"version": 1, "id": "a", "status": "best", "makespan": 5,
                              "lower_bound": 4, "starts": [0, 1]})"));
    EXPECT_EQ(Json::parse(project_json("a", {{0}, 5, 5, schedule::Proof::best}))["status"],
              "optimal");
    EXPECT_EQ(Json::parse(no_project_json("b\"")),
              Json::parse(R"({"version": 1, "id": "b\"", "status": "infeasible", "makespan": null,
                              "lower_bound": 0, "starts": []})"));
}

} // namespace
} // namespace loafwright::wire
