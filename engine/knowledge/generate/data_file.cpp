// SPDX-License-Identifier: Apache-2.0
//
// Reading one file of data/ and holding it to the rules that data/README.md gives: every row has a
// source, every source is used, a band is in order, a number has its unit in its key, and no key is
// there that means nothing. All faults of a file are gathered, so that one build names them all.

#include "engine/knowledge/generate/data_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <sstream>
#include <utility>

namespace loafwright::generate {
namespace {

const std::vector<std::string_view> trusts{"read", "computed", "memory", "assumed"};
constexpr std::array<std::string_view, 11> units{"grams",
                                                 "ml",
                                                 "c",
                                                 "minutes",
                                                 "percent",
                                                 "count",
                                                 "factor",
                                                 "mm",
                                                 "metres",
                                                 "share",
                                                 "deviation"};
// Bare numbers by nature: an order of importance and a cost.
constexpr std::array<std::string_view, 3> unitless{"weight", "cost", "demand"};

std::string joined(const std::vector<std::string_view>& words) {
    return fmt::format("{}", fmt::join(words, ", "));
}

bool holds_numbers(const toml::node& node) {
    if (node.is_number()) {
        return true;
    }
    const toml::array* list = node.as_array();
    return list != nullptr && !list->empty() && list->front().is_number();
}

bool names_its_unit(std::string_view key) {
    if (std::find(unitless.begin(), unitless.end(), key) != unitless.end()) {
        return true;
    }
    const std::size_t mark = key.rfind('_');
    const std::string_view ending = mark == std::string_view::npos ? key : key.substr(mark + 1);
    return std::find(units.begin(), units.end(), ending) != units.end();
}

bool known_trust(std::string_view word) {
    return std::find(trusts.begin(), trusts.end(), word) != trusts.end();
}

} // namespace

std::string one_line(const Fault& fault) {
    return fmt::format("{}:{}: {}", fault.file, fault.line, fault.what);
}

// ---- Row

const toml::node* Row::node(std::string_view key) {
    known_.emplace(key);
    return table_.get(key);
}

std::int64_t Row::line() const {
    return table_.source().begin.line;
}

std::int64_t Row::line_of(std::string_view key) const {
    const toml::node* found = table_.get(key);
    return found != nullptr ? static_cast<std::int64_t>(found->source().begin.line) : line();
}

void Row::fault(std::string what) const {
    file_.fault(line(), std::move(what));
}

void Row::fault_at(std::string_view key, std::string what) const {
    file_.fault(line_of(key), std::move(what));
}

std::optional<std::string> Row::text_if(std::string_view key) {
    const toml::node* found = node(key);
    if (found == nullptr) {
        return std::nullopt;
    }
    const auto value = found->value_exact<std::string>();
    if (!value || value->empty()) {
        fault_at(key, fmt::format("{} is not a text, expected words in quotes", key));
        return std::nullopt;
    }
    return *value;
}

std::string Row::text(std::string_view key) {
    if (node(key) == nullptr) {
        fault(fmt::format("this row has no {}", key));
        return {};
    }
    return text_if(key).value_or("");
}

std::vector<std::string> Row::texts(std::string_view key) {
    std::vector<std::string> texts;
    const toml::node* found = node(key);
    if (found == nullptr) {
        return texts;
    }
    const toml::array* list = found->as_array();
    if (list == nullptr) {
        fault_at(key, fmt::format("{} is not a list, expected [\"…\", \"…\"]", key));
        return texts;
    }
    for (const toml::node& entry : *list) {
        const auto value = entry.value_exact<std::string>();
        if (!value || value->empty()) {
            fault_at(key, fmt::format("{} holds something that is not a text", key));
            continue;
        }
        if (std::find(texts.begin(), texts.end(), *value) != texts.end()) {
            fault_at(key, fmt::format("{} says \"{}\" twice", key, *value));
        }
        texts.push_back(*value);
    }
    return texts;
}

std::optional<double> Row::number_if(std::string_view key) {
    const toml::node* found = node(key);
    if (found == nullptr) {
        return std::nullopt;
    }
    const auto value = found->is_number() ? found->value<double>() : std::nullopt;
    if (!value || !std::isfinite(*value)) {
        fault_at(key, fmt::format("{} is not a number", key));
        return std::nullopt;
    }
    return *value;
}

bool Row::yes(std::string_view key) {
    const toml::node* found = node(key);
    if (found == nullptr) {
        return false;
    }
    const auto value = found->value_exact<bool>();
    if (!value) {
        fault_at(key, fmt::format("{} is neither true nor false", key));
    }
    return value.value_or(false);
}

std::optional<Figures> Row::figures_if(std::string_view key) {
    const toml::node* found = node(key);
    if (found == nullptr) {
        return std::nullopt;
    }
    if (found->is_number()) {
        const auto one = number_if(key);
        return one ? std::optional<Figures>(Figures{*one, *one, *one}) : std::nullopt;
    }
    const toml::array* list = found->as_array();
    std::vector<double> numbers;
    if (list != nullptr) {
        for (const toml::node& entry : *list) {
            const auto value = entry.is_number() ? entry.value<double>() : std::nullopt;
            if (value && std::isfinite(*value)) {
                numbers.push_back(*value);
            }
        }
    }
    if (list == nullptr || list->size() != 3 || numbers.size() != 3) {
        fault_at(key, fmt::format("{} is not a band, expected [low, likely, high]", key));
        return std::nullopt;
    }
    if (numbers[0] > numbers[1] || numbers[1] > numbers[2]) {
        fault_at(key,
                 fmt::format("{} is [{}, {}, {}], expected low <= likely <= high",
                             key,
                             numbers[0],
                             numbers[1],
                             numbers[2]));
        return std::nullopt;
    }
    return Figures{numbers[0], numbers[1], numbers[2]};
}

std::optional<Figures> Row::figures(std::string_view key) {
    if (node(key) == nullptr) {
        fault(fmt::format("this row has no {}", key));
        return std::nullopt;
    }
    return figures_if(key);
}

std::optional<Figures> Row::range(std::string_view key) {
    const toml::node* found = node(key);
    if (found == nullptr) {
        fault(fmt::format("this row has no {}", key));
        return std::nullopt;
    }
    if (found->is_number()) {
        return figures_if(key);
    }
    const toml::array* list = found->as_array();
    if (list == nullptr || list->size() != 2 || !list->get(0)->is_number() ||
        !list->get(1)->is_number()) {
        fault_at(key, fmt::format("{} is not a range, expected [low, high]", key));
        return std::nullopt;
    }
    const double low = list->get(0)->value<double>().value_or(0.0);
    const double high = list->get(1)->value<double>().value_or(0.0);
    if (!(low <= high)) {
        fault_at(key, fmt::format("{} is [{}, {}], expected low <= high", key, low, high));
        return std::nullopt;
    }
    return Figures{low, low + (high - low) / 2.0, high};
}

std::optional<Figures> Row::range_if(std::string_view key) {
    return node(key) == nullptr ? std::nullopt : range(key);
}

std::optional<std::string> Row::word_if(std::string_view key,
                                        const std::vector<std::string_view>& allowed) {
    const auto found = text_if(key);
    if (found && std::find(allowed.begin(), allowed.end(), *found) == allowed.end()) {
        fault_at(key,
                 fmt::format("{} is \"{}\", expected one of {}", key, *found, joined(allowed)));
        return std::nullopt;
    }
    return found;
}

std::string Row::word(std::string_view key, const std::vector<std::string_view>& allowed) {
    if (node(key) == nullptr) {
        fault(fmt::format("this row has no {}, expected one of {}", key, joined(allowed)));
        return {};
    }
    return word_if(key, allowed).value_or("");
}

Origin Row::origin() {
    std::vector<std::string> keys;
    const toml::node* found = node("source");
    if (found != nullptr && found->is_array()) {
        keys = texts("source");
    } else if (const auto one = text_if("source")) {
        keys = {*one};
    }
    auto because = text_if("because");
    auto trust = word_if("trust", trusts);
    // A remark for whoever reads the data; the program does not carry it.
    text_if("note");
    if (!trust && found == nullptr) {
        trust = file_.heading("trust");
    }
    if (found == nullptr) {
        if (const auto general = file_.heading("source")) {
            keys = {*general};
        }
    }
    if (!because) {
        because = file_.heading("because");
    }
    if (keys.empty()) {
        fault("this row has no source: name a [source.key] of this file, or write source = "
              "\"assumed\" with a because");
        return {};
    }
    return file_.origin_of(keys, because, trust, line_of("source"));
}

void Row::finish() {
    for (const auto& [key, value] : table_) {
        const std::string_view name = key.str();
        if (holds_numbers(value) && !names_its_unit(name)) {
            fault_at(name,
                     fmt::format("{} has no unit in its name, expected one that ends in {}",
                                 name,
                                 fmt::join(units, ", ")));
        } else if (known_.count(name) == 0) {
            const std::vector<std::string_view> expected(known_.begin(), known_.end());
            fault_at(
                name,
                fmt::format("{} means nothing here, expected one of {}", name, joined(expected)));
        }
    }
}

// ---- DataFile

DataFile::DataFile(std::string path, Faults& faults) : path_(std::move(path)), faults_(faults) {
    std::ifstream in(path_, std::ios::binary);
    if (!in) {
        fault(0, "the file cannot be read");
        return;
    }
    std::ostringstream text;
    text << in.rdbuf();
    try {
        root_ = toml::parse(text.str(), std::string_view(path_));
    } catch (const toml::parse_error& problem) {
        fault(problem.source().begin.line, std::string(problem.description()));
        return;
    }
    read_sources();
}

void DataFile::fault(std::int64_t line, std::string what) {
    faults_.push_back(Fault{path_, line, std::move(what)});
}

// "source" above the rows is either the default for all rows, a text, or the table of sources; TOML
// allows a key once, so a file whose rows share one source writes `default_source` beside the
// table.
void DataFile::read_sources() {
    const toml::node* all = root_.get("source");
    if (all == nullptr || all->is_string()) {
        return;
    }
    const toml::table* table = all->as_table();
    if (table == nullptr) {
        fault(all->source().begin.line, "source is neither a key nor a table of sources");
        return;
    }
    for (const auto& [key, value] : *table) {
        const std::int64_t line = value.source().begin.line;
        const toml::table* entry = value.as_table();
        if (entry == nullptr) {
            fault(line, fmt::format("source.{} is not a table, expected cite = \"…\"", key.str()));
            continue;
        }
        Source source;
        source.line = line;
        source.cite = (*entry)["cite"].value_or(std::string());
        source.trust = (*entry)["trust"].value_or(std::string());
        if (source.cite.empty()) {
            fault(line, fmt::format("source.{} has no cite", key.str()));
        }
        if (!source.trust.empty() && !known_trust(source.trust)) {
            fault(line,
                  fmt::format("source.{} has the trust \"{}\", expected one of {}",
                              key.str(),
                              source.trust,
                              joined(trusts)));
        }
        for (const auto& [inner, unused] : *entry) {
            if (inner.str() != "cite" && inner.str() != "trust") {
                fault(line,
                      fmt::format("source.{} has the key {}, expected cite and trust",
                                  key.str(),
                                  inner.str()));
            }
        }
        sources_.emplace(std::string(key.str()), std::move(source));
    }
}

std::vector<Row> DataFile::rows() {
    std::vector<Row> rows;
    const toml::node* found = root_.get("row");
    if (found == nullptr) {
        return rows;
    }
    const toml::array* list = found->as_array();
    if (list == nullptr) {
        fault(found->source().begin.line, "row is not a list, expected [[row]]");
        return rows;
    }
    for (const toml::node& entry : *list) {
        if (const toml::table* table = entry.as_table()) {
            rows.emplace_back(*this, *table);
        } else {
            fault(entry.source().begin.line, "this row is not a table, expected [[row]]");
        }
    }
    return rows;
}

std::optional<std::string> DataFile::heading(std::string_view key) {
    known_.emplace(key);
    const toml::node* found = root_.get(key);
    if (key == "source") {
        known_.emplace("default_source");
        if (found == nullptr || found->is_table()) {
            found = root_.get("default_source");
        }
    }
    return found == nullptr ? std::nullopt : found->value<std::string>();
}

void DataFile::finish() {
    for (const char* key : {"source", "because", "trust"}) {
        heading(key);
    }
    for (const auto& [key, value] : root_) {
        if (known_.count(key.str()) == 0) {
            fault(value.source().begin.line,
                  fmt::format("{} means nothing above the rows", key.str()));
        }
    }
    for (const auto& [key, source] : sources_) {
        if (!source.used) {
            fault(source.line, fmt::format("source.{} is used by no row", key));
        }
    }
}

Origin DataFile::origin_of(const std::vector<std::string>& keys,
                           const std::optional<std::string>& because,
                           const std::optional<std::string>& trust,
                           std::int64_t line) {
    Origin origin;
    // The row is no better known than its weakest source; `trusts` is in falling order.
    std::size_t weakest = 0;
    bool weighed = false;
    for (const std::string& key : keys) {
        std::string cite;
        std::string worth;
        if (key == "assumed") {
            if (!because) {
                fault(line, "the source is assumed and there is no because");
            }
            cite = "assumed: " + because.value_or("");
            worth = "assumed";
        } else {
            const auto found = sources_.find(key);
            if (found == sources_.end()) {
                fault(line, fmt::format("the source \"{}\" is not in this file", key));
                continue;
            }
            found->second.used = true;
            cite = found->second.cite;
            worth = found->second.trust;
        }
        origin.cite += (origin.cite.empty() ? "" : "; ") + cite;
        const auto place = std::find(trusts.begin(), trusts.end(), worth);
        if (place != trusts.end()) {
            weakest = std::max(weakest, static_cast<std::size_t>(place - trusts.begin()));
            weighed = true;
        }
    }
    if (trust && !known_trust(*trust)) {
        fault(line, fmt::format("trust is \"{}\", expected one of {}", *trust, joined(trusts)));
    }
    origin.trust = trust ? *trust : weighed ? std::string(trusts[weakest]) : "memory";
    return origin;
}

} // namespace loafwright::generate
