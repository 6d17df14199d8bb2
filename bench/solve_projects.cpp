// SPDX-License-Identifier: Apache-2.0
//
// Solves projects from files, one after the other, and prints a line for each: file, processor
// seconds of reading and solving, status, makespan or "none". solve_projects FILE…, ".sm" or
// ".sch".
#include "engine/schedule/project_check.hpp"
#include "engine/schedule/project_solve.hpp"
#include "engine/wire/project_files.hpp"

#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <variant>

namespace loafwright::bench {
namespace {

using namespace schedule;

bool solve_file(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    const std::string bytes{std::istreambuf_iterator<char>(in), {}};
    const std::clock_t begin = std::clock();
    const auto project = file.extension() == ".sm"
                             ? wire::project_from_psplib(bytes, file.string())
                             : wire::project_from_rcpspmax(bytes, file.string());
    if (!project) {
        std::cerr << one_line(project.error().front()) << "\n";
        return false;
    }
    const ProjectOutcome outcome = solve_project(*project);
    const double seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
    std::cout << file.filename().string() << " " << seconds << " ";
    if (const auto* solved = std::get_if<ProjectSolved>(&outcome)) {
        if (!violations(*project, solved->starts).empty()) {
            std::cerr << file.string() << ": the starts break a rule\n";
            return false;
        }
        std::cout << (solved->proof == Proof::best ? "optimal " : "unknown ") << solved->makespan;
    } else {
        std::cout << (std::holds_alternative<NoSchedule>(outcome) ? "infeasible" : "unknown")
                  << " none";
    }
    std::cout << std::endl;
    return true;
}

} // namespace
} // namespace loafwright::bench

int main(int count, char** files) {
    bool all_well = true;
    for (int k = 1; k < count; ++k) {
        all_well = loafwright::bench::solve_file(files[k]) && all_well;
    }
    return all_well ? EXIT_SUCCESS : EXIT_FAILURE;
}
