// SPDX-License-Identifier: Apache-2.0
//
// Any bytes as a project in either public layout. What is accepted has no fault; what is small is
// solved with little effort, and an answer keeps every rule.
#include "engine/schedule/project_check.hpp"
#include "engine/schedule/project_solve.hpp"
#include "engine/wire/project_files.hpp"
#include "fuzz/promise.hpp"

#include <string_view>
#include <variant>

namespace loafwright::fuzz {
namespace {

constexpr std::string_view name = "p.txt";
constexpr std::size_t small = 12;
constexpr std::int64_t short_enough = 200;
constexpr std::int64_t few_conflicts = 100;

void one_project(const tl::expected<schedule::Project, Diagnostics>& read) {
    if (!read) {
        promise_told(read.error());
        for (const Diagnostic& reason : read.error()) {
            promise(reason.where.compare(0, name.size(), name) == 0, "a reason names the file");
        }
        return;
    }
    promise(schedule::faults_in(*read).empty(), "what is accepted has no faults");
    if (read->activities.size() > small || schedule::length_in_a_row(*read) > short_enough) {
        return;
    }
    const auto outcome = schedule::solve_project(*read, few_conflicts);
    if (const auto* solved = std::get_if<schedule::ProjectSolved>(&outcome)) {
        promise(schedule::violations(*read, solved->starts).empty(), "starts keep every rule");
        promise(schedule::makespan_of(*read, solved->starts) == solved->makespan,
                "the makespan is that of the starts");
        promise(solved->lower_bound <= solved->makespan, "bounds are in order");
    }
}

} // namespace
} // namespace loafwright::fuzz

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text = loafwright::fuzz::text_of(data, size);
    loafwright::fuzz::one_project(
        loafwright::wire::project_from_psplib(text, loafwright::fuzz::name));
    loafwright::fuzz::one_project(
        loafwright::wire::project_from_rcpspmax(text, loafwright::fuzz::name));
    return 0;
}
