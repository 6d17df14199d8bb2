// SPDX-License-Identifier: Apache-2.0
//
// Writes projects of the kinds of the public sets, each in its public layout and as data for
// project.mzn: make_projects FOLDER FROM TO makes numbers FROM to TO of every class.
//
// In folders of their own: j30 (.sm), and max10, max20, max30, max50 (.sch).
#include "bench/project_kinds.hpp"

#include <charconv>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <string>

namespace loafwright::bench {
namespace {

namespace fs = std::filesystem;
using schedule::Project;

std::string rule() {
    return std::string(72, '*') + "\n";
}

std::vector<schedule::TimeLag> lags_from(const Project& project, std::size_t i) {
    std::vector<schedule::TimeLag> lags;
    for (const schedule::TimeLag& lag : project.lags) {
        if (lag.from == i) {
            lags.push_back(lag);
        }
    }
    return lags;
}

void write_demands(std::ofstream& out, const Project& project, std::size_t i) {
    for (const std::int64_t demand : project.activities[i].demands) {
        out << "\t" << demand;
    }
    out << "\n";
}

void write_capacities(std::ofstream& out, const Project& project) {
    for (const std::int64_t capacity : project.capacities) {
        out << "\t" << capacity;
    }
    out << "\n";
}

void write_psplib(const Project& project, const fs::path& file) {
    std::ofstream out(file);
    out << rule() << "projects : 1\njobs (incl. supersource/sink ): " << project.activities.size()
        << "\nRESOURCES\n  - renewable : " << project.capacities.size()
        << " R\n  - nonrenewable : 0 N\n  - doubly constrained : 0 D\n"
        << rule() << "PRECEDENCE RELATIONS:\njobnr. #modes #successors successors\n";
    for (std::size_t i = 0; i < project.activities.size(); ++i) {
        const auto lags = lags_from(project, i);
        out << i + 1 << "\t1\t" << lags.size();
        for (const schedule::TimeLag& lag : lags) {
            out << "\t" << lag.to + 1;
        }
        out << "\n";
    }
    out << rule() << "REQUESTS/DURATIONS:\njobnr. mode duration demands\n";
    for (std::size_t i = 0; i < project.activities.size(); ++i) {
        out << i + 1 << "\t1\t" << project.activities[i].duration;
        write_demands(out, project, i);
    }
    out << rule() << "RESOURCEAVAILABILITIES:\n";
    write_capacities(out, project);
}

void write_rcpspmax(const Project& project, const fs::path& file) {
    std::ofstream out(file);
    out << project.activities.size() - 2 << "\t" << project.capacities.size() << "\t0\t0\n";
    for (std::size_t i = 0; i < project.activities.size(); ++i) {
        const auto lags = lags_from(project, i);
        out << i << "\t1\t" << lags.size();
        for (const schedule::TimeLag& lag : lags) {
            out << "\t" << lag.to;
        }
        for (const schedule::TimeLag& lag : lags) {
            out << "\t[" << lag.least << "]";
        }
        out << "\n";
    }
    for (std::size_t i = 0; i < project.activities.size(); ++i) {
        out << i << "\t1\t" << project.activities[i].duration;
        write_demands(out, project, i);
    }
    write_capacities(out, project);
}

template <typename Numbers, typename Number>
std::string listed(const Numbers& items, const Number& number) {
    std::string list;
    for (const auto& item : items) {
        list += (list.empty() ? "" : ", ") + std::to_string(number(item));
    }
    return "[" + list + "]";
}

void write_data(const Project& project, const fs::path& file) {
    using schedule::Activity;
    using schedule::TimeLag;
    std::ofstream out(file);
    out << "activities = " << project.activities.size()
        << ";\nresources = " << project.capacities.size() << ";\nlags = " << project.lags.size()
        << ";\nhorizon = " << schedule::length_in_a_row(project) << ";\nduration = "
        << listed(project.activities, [](const Activity& activity) { return activity.duration; })
        << ";\ncapacity = " << listed(project.capacities, [](std::int64_t units) { return units; })
        << ";\ndemand = [";
    for (std::size_t r = 0; r < project.capacities.size(); ++r) {
        out << "|";
        for (const Activity& activity : project.activities) {
            out << activity.demands[r] << ",";
        }
    }
    out << "|];\nlag_from = "
        << listed(project.lags, [](const TimeLag& lag) { return lag.from + 1; })
        << ";\nlag_to = " << listed(project.lags, [](const TimeLag& lag) { return lag.to + 1; })
        << ";\nlag_least = " << listed(project.lags, [](const TimeLag& lag) { return lag.least; })
        << ";\n";
}

template <typename Kind, typename Write>
void write_classes(const fs::path& folder,
                   const std::string& extension,
                   const std::vector<Kind>& classes,
                   unsigned from,
                   unsigned to,
                   const Write& write) {
    fs::create_directories(folder);
    for (std::size_t k = 0; k < classes.size(); ++k) {
        for (unsigned number = from; number <= to; ++number) {
            const unsigned seed = 1000 * static_cast<unsigned>(k) + number;
            const Project project = project_of(classes[k], seed);
            const std::string name = std::to_string(k + 1) + "_" + std::to_string(number);
            write(project, folder / (name + extension));
            write_data(project, folder / (name + ".dzn"));
        }
    }
}

int make(const fs::path& folder, unsigned from, unsigned to) {
    write_classes(folder / "j30", ".sm", project_classes(30), from, to, write_psplib);
    for (const int n : {10, 20, 30, 50}) {
        write_classes(
            folder / ("max" + std::to_string(n)), ".sch", max_classes(n), from, to, write_rcpspmax);
    }
    return EXIT_SUCCESS;
}

unsigned number_in(const std::string& words) {
    unsigned number = 0;
    std::from_chars(words.data(), words.data() + words.size(), number);
    return number;
}

} // namespace
} // namespace loafwright::bench

int main(int count, char** words) {
    const std::vector<std::string> given(words + 1, words + count);
    if (given.size() != 3 || loafwright::bench::number_in(given[2]) == 0) {
        std::cerr << "usage: make_projects FOLDER FROM TO\n";
        return 2;
    }
    return loafwright::bench::make(
        given[0], loafwright::bench::number_in(given[1]), loafwright::bench::number_in(given[2]));
}
