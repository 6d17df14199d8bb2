// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <toml++/toml.h>

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::generate {

/// One thing that is wrong with the data.
struct Fault {
    std::string file;
    std::int64_t line = 0;
    std::string what;
};
using Faults = std::vector<Fault>;

/// "file:line: what".
std::string one_line(const Fault& fault);

/// low <= likely <= high, already checked.
struct Figures {
    double low = 0.0;
    double likely = 0.0;
    double high = 0.0;
};

/// Where a row's figures come from, as the program will carry it.
struct Origin {
    std::string cite;
    std::string trust; // "read", "computed", "memory" or "assumed"
};

class DataFile;

/// One [[row]] of a data file. Every look at a key notes it as known; `finish` then names the
/// others.
class Row {
public:
    Row(DataFile& file, const toml::table& table) : file_(file), table_(table) {}

    /// A text that must be there.
    std::string text(std::string_view key);
    std::optional<std::string> text_if(std::string_view key);
    /// A list of texts; no key, no texts.
    std::vector<std::string> texts(std::string_view key);
    std::optional<double> number_if(std::string_view key);
    bool yes(std::string_view key);
    /// A band: [low, likely, high], or one number for all three. Nothing after a fault.
    std::optional<Figures> figures(std::string_view key);
    std::optional<Figures> figures_if(std::string_view key);
    /// A range: [low, high], or one number for both. Nothing after a fault.
    std::optional<Figures> range(std::string_view key);
    std::optional<Figures> range_if(std::string_view key);
    /// A word that must be one of `allowed`.
    std::optional<std::string> word_if(std::string_view key,
                                       const std::vector<std::string_view>& allowed);
    std::string word(std::string_view key, const std::vector<std::string_view>& allowed);
    /// The row's own source, or the file's.
    Origin origin();
    /// Complains about keys that nobody asked for, and about numbers without a unit in their key.
    void finish();

    void fault(std::string what) const;
    void fault_at(std::string_view key, std::string what) const;
    [[nodiscard]] std::int64_t line() const;

private:
    const toml::node* node(std::string_view key);
    [[nodiscard]] std::int64_t line_of(std::string_view key) const;

    DataFile& file_;
    const toml::table& table_;
    std::set<std::string, std::less<>> known_;
};

/// One file of data/: its sources, its defaults and its rows.
class DataFile {
public:
    /// Errors: a file that cannot be read or is not TOML is a fault, and has no rows.
    DataFile(std::string path, Faults& faults);

    [[nodiscard]] std::vector<Row> rows();
    /// A key that stands above the rows and holds for all of them.
    std::optional<std::string> heading(std::string_view key);
    /// Complains about sources that no row names and about unknown keys above the rows.
    void finish();

    /// What `keys` name, or faults at `line`.
    Origin origin_of(const std::vector<std::string>& keys,
                     const std::optional<std::string>& because,
                     const std::optional<std::string>& trust,
                     std::int64_t line);
    void fault(std::int64_t line, std::string what);

private:
    struct Source {
        std::string cite;
        std::string trust;
        std::int64_t line = 0;
        bool used = false;
    };

    void read_sources();

    std::string path_;
    Faults& faults_;
    toml::table root_;
    std::map<std::string, Source, std::less<>> sources_;
    std::set<std::string, std::less<>> known_{"source", "row"};
};

} // namespace loafwright::generate
