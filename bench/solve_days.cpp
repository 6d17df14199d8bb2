// SPDX-License-Identifier: Apache-2.0
//
// Days in files, for scripts/bench-days.
//
//   solve_days make FOLDER BREADS SEEDS   writes days of each kind there, seeds 1 to SEEDS
//   solve_days solve FILE…                for each: its name, processor seconds of the scheduler
//                                         alone, status, violations, tied, earliest
//   solve_days data FILE…                 writes FILE.dzn, the data of day.mzn, beside each
#include "bench/day_files.hpp"
#include "bench/day_kinds.hpp"
#include "engine/schedule/check.hpp"
#include "engine/schedule/solve.hpp"
#include "engine/wire/schedule_problem.hpp"

#include <charconv>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <variant>
#include <vector>

namespace loafwright::bench {
namespace {

namespace fs = std::filesystem;
using namespace schedule;

unsigned number_in(const std::string& words) {
    unsigned number = 0;
    std::from_chars(words.data(), words.data() + words.size(), number);
    return number;
}

bool make(const fs::path& folder, unsigned breads, unsigned seeds) {
    fs::create_directories(folder);
    for (const DayKind kind : all_day_kinds) {
        for (unsigned seed = 1; seed <= seeds; ++seed) {
            const Problem problem = day_of(kind, breads, seed);
            std::ofstream(folder / (problem.id + ".json")) << day_json(problem);
        }
    }
    return breads > 0 && seeds > 0;
}

std::optional<Problem> read(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    const std::string bytes{std::istreambuf_iterator<char>(in), {}};
    auto problem = wire::schedule_problem_from_json(bytes, file.string());
    if (!problem) {
        std::cerr << one_line(problem.error().front()) << "\n";
        return std::nullopt;
    }
    return std::move(problem->problem);
}

bool solve_file(const fs::path& file) {
    const auto problem = read(file);
    if (!problem) {
        return false;
    }
    const std::clock_t begin = std::clock();
    const Outcome outcome = solve(*problem);
    const double seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
    std::cout << file.filename().string() << " " << seconds << " ";
    if (const auto* solved = std::get_if<Solved>(&outcome)) {
        if (!violations(*problem, solved->schedule).empty()) {
            std::cerr << file.string() << ": the schedule breaks a rule\n";
            return false;
        }
        const Objective& reached = solved->objective;
        std::cout << (solved->proof == Proof::best ? "optimal " : "unknown ") << reached.violations
                  << " " << reached.tied << " " << reached.earliest;
    } else {
        std::cout << (std::holds_alternative<NoSchedule>(outcome) ? "infeasible" : "unknown")
                  << " none none none";
    }
    std::cout << std::endl;
    return true;
}

bool write_data(const fs::path& file) {
    const auto problem = read(file);
    if (problem) {
        std::ofstream(file.string() + ".dzn") << day_data(*problem);
    }
    return problem.has_value();
}

int run(const std::vector<std::string>& words) {
    bool well = true;
    if (words.size() == 4 && words[0] == "make") {
        well = make(words[1], number_in(words[2]), number_in(words[3]));
    } else if (words.size() > 1 && (words[0] == "solve" || words[0] == "data")) {
        for (std::size_t k = 1; k < words.size(); ++k) {
            well = (words[0] == "solve" ? solve_file(words[k]) : write_data(words[k])) && well;
        }
    } else {
        std::cerr << "usage: solve_days make FOLDER BREADS SEEDS | solve FILE… | data FILE…\n";
        return 2;
    }
    return well ? EXIT_SUCCESS : EXIT_FAILURE;
}

} // namespace
} // namespace loafwright::bench

int main(int count, char** words) {
    return loafwright::bench::run({words + 1, words + count});
}
