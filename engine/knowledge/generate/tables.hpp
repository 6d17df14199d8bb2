// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/generate/data_file.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loafwright::generate {

/// One table of data/: its name, which is also that of the generated file, and what turns its files
/// into a source file.
struct TableWriter {
    std::string_view name;
    std::string (*write)(std::vector<DataFile>& files);
};

const std::vector<TableWriter>& table_writers();

} // namespace loafwright::generate
