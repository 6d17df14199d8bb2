// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/store/store.hpp"

#include <gtest/gtest.h>

#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <vector>

/// Places to keep things in while a test runs.
namespace loafwright::store {

enum class Where { folder, postgresql };

std::string name_of(Where where);

/// A folder that goes with its owner.
class Folder {
public:
    /// Below the system's folder for such things.
    Folder();
    ~Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    [[nodiscard]] const std::string& path() const { return path_; }
    [[nodiscard]] std::string in(const std::string& name) const { return path_ + "/" + name; }

private:
    std::string path_;
};

/// An empty place of one kind: open() any number of times gives openings of the same store.
class Place {
public:
    /// Needs: a cluster where it is postgresql.
    explicit Place(Where where);

    [[nodiscard]] const std::string& address() const { return address_; }
    [[nodiscard]] std::string photos() const { return folder_.in("photos"); }
    /// Throws when it does not open.
    [[nodiscard]] std::unique_ptr<Store> open() const;

private:
    Folder folder_;
    std::string address_;
};

/// The value of an answer; throws, in the answer's words, where there is none.
template <typename Value, typename Fault>
Value taken(tl::expected<Value, Fault> answer) {
    if (!answer) {
        if constexpr (std::is_same_v<Fault, Diagnostics>) {
            throw std::runtime_error(one_line(answer.error().at(0)));
        } else {
            throw std::runtime_error(answer.error().code + ": " + one_line(answer.error()));
        }
    }
    return std::move(*answer);
}

/// All events of a bake, in order.
std::vector<StoredEvent> events_of(Store& store, const std::string& bake);

/// Fails where the sequences of a bake are not 1, 2, 3…, an id stands twice, or the bake's own last
/// number is another. Gives the number of each id.
std::map<std::string, std::int64_t> numbered(Store& store, const std::string& bake);

/// A test that runs on both databases, and says so where one is not there.
class OnBoth : public testing::TestWithParam<Where> {
protected:
    void SetUp() override;
    [[nodiscard]] std::unique_ptr<Store> open() const { return place_->open(); }

    std::unique_ptr<Place> place_;
    std::unique_ptr<Store> store_;
};

#define LOAFWRIGHT_ON_BOTH(suite)                                                                  \
    INSTANTIATE_TEST_SUITE_P(on,                                                                   \
                             suite,                                                                \
                             testing::Values(Where::folder, Where::postgresql),                    \
                             [](const auto& about) { return name_of(about.param); })

} // namespace loafwright::store
