// SPDX-License-Identifier: Apache-2.0
#include "tests/store/places.hpp"

#include "tests/store/cluster.hpp"

#include <stdlib.h>

#include <filesystem>
#include <stdexcept>

namespace loafwright::store {

std::string name_of(Where where) {
    return where == Where::folder ? "a_folder" : "postgresql";
}

Folder::Folder() {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "loafwright-store-XXXXXX").string();
    if (::mkdtemp(pattern.data()) == nullptr) {
        throw std::runtime_error("no folder");
    }
    path_ = pattern;
}

Folder::~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

Place::Place(Where where)
    : address_(where == Where::folder ? folder_.in("kept") : Cluster::get()->new_address()) {}

std::unique_ptr<Store> Place::open() const {
    return taken(store::open(address_, photos()));
}

std::vector<StoredEvent> events_of(Store& store, const std::string& bake) {
    return taken(store.events_after(bake, 0, SIZE_MAX));
}

std::map<std::string, std::int64_t> numbered(Store& store, const std::string& bake) {
    std::map<std::string, std::int64_t> numbers;
    const auto before = taken(store.bake(bake));
    std::int64_t last = 0;
    for (const StoredEvent& event : events_of(store, bake)) {
        EXPECT_EQ(event.sequence, ++last) << "a gap in " << bake;
        EXPECT_TRUE(numbers.emplace(event.id, event.sequence).second) << event.id << " twice";
    }
    // Others may add meanwhile; where nobody does, the two are one.
    const auto after = taken(store.bake(bake));
    EXPECT_TRUE(before && before->last <= last) << bake;
    EXPECT_TRUE(after && after->last >= last) << bake;
    return numbers;
}

void OnBoth::SetUp() {
    if (GetParam() == Where::postgresql && Cluster::get() == nullptr) {
        GTEST_SKIP() << "no PostgreSQL server is installed (postgresql-15)";
    }
    place_ = std::make_unique<Place>(GetParam());
    store_ = open();
}

} // namespace loafwright::store
