// SPDX-License-Identifier: Apache-2.0
//
// Turns data/ into constants, when the program is built.
//
//   generate_knowledge FOLDER TABLE=FILE…
//
// Every table that is named gets FOLDER/knowledge_TABLE.cpp; a table may have several files. When a
// row is at fault nothing is written, every fault goes to standard error as "file:line: what", and
// the status is 1. A file that would not change is left alone, so that nothing is compiled for it.

#include "engine/knowledge/generate/data_file.hpp"
#include "engine/knowledge/generate/tables.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <exception>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

namespace {

using loafwright::generate::DataFile;
using loafwright::generate::Fault;
using loafwright::generate::Faults;
using loafwright::generate::TableWriter;

struct TableFiles {
    std::string table;
    std::vector<std::string> paths;
};

const TableWriter* writer_of(std::string_view table) {
    for (const TableWriter& writer : loafwright::generate::table_writers()) {
        if (writer.name == table) {
            return &writer;
        }
    }
    return nullptr;
}

int usage(const std::string& what) {
    fmt::print(
        stderr, "generate_knowledge: {}\nexpected: generate_knowledge FOLDER TABLE=FILE…\n", what);
    return 2;
}

std::string content_of(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

bool write_if_changed(const std::filesystem::path& path, const std::string& text) {
    if (std::filesystem::exists(path) && content_of(path) == text) {
        return true;
    }
    std::ofstream out(path, std::ios::binary | std::ios::trunc);
    out << text;
    out.close();
    return out.good();
}

int run(const std::vector<std::string>& arguments) {
    if (arguments.size() < 2) {
        return usage("too few arguments");
    }
    std::vector<TableFiles> tables;
    for (std::size_t index = 1; index < arguments.size(); ++index) {
        const std::string& argument = arguments[index];
        const std::size_t mark = argument.find('=');
        const std::string table = argument.substr(0, mark);
        if (mark == std::string::npos || writer_of(table) == nullptr) {
            return usage(fmt::format("\"{}\" names no table", argument));
        }
        const auto known = std::find_if(tables.begin(), tables.end(), [&](const TableFiles& files) {
            return files.table == table;
        });
        if (known != tables.end()) {
            known->paths.push_back(argument.substr(mark + 1));
        } else {
            tables.push_back({table, {argument.substr(mark + 1)}});
        }
    }

    Faults faults;
    std::vector<std::string> texts;
    for (const TableFiles& table : tables) {
        std::vector<DataFile> files;
        files.reserve(table.paths.size());
        for (const std::string& path : table.paths) {
            files.emplace_back(path, faults);
        }
        texts.push_back(writer_of(table.table)->write(files));
        for (DataFile& file : files) {
            file.finish();
        }
    }
    if (!faults.empty()) {
        std::sort(faults.begin(), faults.end(), [](const Fault& a, const Fault& b) {
            return std::tie(a.file, a.line, a.what) < std::tie(b.file, b.line, b.what);
        });
        for (const Fault& fault : faults) {
            fmt::print(stderr, "{}\n", one_line(fault));
        }
        return 1;
    }

    const std::filesystem::path folder(arguments.front());
    std::filesystem::create_directories(folder);
    for (std::size_t index = 0; index < tables.size(); ++index) {
        const auto path = folder / fmt::format("knowledge_{}.cpp", tables[index].table);
        if (!write_if_changed(path, texts[index])) {
            fmt::print(stderr, "{}: cannot be written\n", path.string());
            return 3;
        }
    }
    return 0;
}

} // namespace

int main(int count, char** values) {
    try {
        return run(std::vector<std::string>(values + 1, values + count));
    } catch (const std::exception& problem) {
        fmt::print(stderr, "generate_knowledge: {}\n", problem.what());
        return 3;
    }
}
