// SPDX-License-Identifier: Apache-2.0
#include "shell/server/bakes.hpp"

#include <fmt/format.h>

#include <iterator>
#include <utility>
#include <variant>

namespace loafwright::server {

namespace {

// With its length in front, so that no text can look like two.
void add(std::string& key, std::string_view text) {
    fmt::format_to(std::back_inserter(key), "{}:{};", text.size(), text);
}

void add(std::string& key, double number) {
    fmt::format_to(std::back_inserter(key), "{};", number);
}

template <typename Value>
void add(std::string& key, const std::optional<Value>& degrees) {
    fmt::format_to(std::back_inserter(key), "{};", degrees ? degrees->degrees() : -1000.0);
}

void add(std::string& key, const breads::Wanted& wanted) {
    if (wanted.size) {
        struct Adder {
            std::string& key;
            void operator()(const PiecesWanted& wish) const { add(key, wish.pieces); }
            void operator()(const DoughWanted& wish) const { add(key, wish.dough.count()); }
            void operator()(const FactorWanted& wish) const { add(key, wish.factor); }
            void operator()(const TinWanted& wish) const {
                add(key, wish.tin.length.count());
                add(key, wish.tin.width.count());
                add(key, wish.tin.height.count());
            }
        };
        add(key, static_cast<double>(wanted.size->index()));
        std::visit(Adder{key}, *wanted.size);
    }
    add(key, wanted.yeast ? name_of(*wanted.yeast) : std::string_view());
}

} // namespace

std::string key_of(const breads::BakeRequest& request, const Kitchen& kitchen) {
    std::string key;
    for (const breads::BreadText& bread : request.breads) {
        add(key, bread.name);
        add(key, bread.text.view());
        for (const Answer& answer : bread.answers) {
            add(key, answer.key);
            add(key, answer.value);
        }
        add(key, bread.wanted);
        key += '|';
    }
    for (const RoomPeriod& period : kitchen.room) {
        add(key, static_cast<double>(period.from.hour * 60 + period.from.minute));
        add(key, period.temperature.degrees());
    }
    key += '|';
    add(key, kitchen.flour);
    add(key, kitchen.tap.degrees());
    add(key, kitchen.fridge.degrees());
    add(key, kitchen.altitude.count());
    add(key, kitchen.warm_spot);
    add(key, kitchen.warm_spot_is_oven ? 1.0 : 0.0);
    add(key, kitchen.mixing == MixingMethod::mixer ? 1.0 : 0.0);
    add(key, kitchen.yeast.value_or(""));
    add(key, kitchen.oven.max.degrees());
    add(key, kitchen.oven.heat_up.count());
    add(key, kitchen.oven.fan ? 1.0 : 0.0);
    add(key, static_cast<double>(kitchen.oven.shelves));
    add(key, kitchen.oven.offset.count());
    for (const KindFactor& factor : kitchen.factors.kinds) {
        if (factor.group_bakes > 0) {
            key += name_of(factor.kind);
            add(key, factor.leaven);
            add(key, factor.log_mean);
            add(key, factor.factor_deviation);
            add(key, factor.within_deviation);
            add(key, factor.prior_deviation);
        }
    }
    add(key, kitchen.factors.oven.likely.count());
    add(key, static_cast<double>(kitchen.factors.oven.measured));
    for (const Tin& tin : kitchen.tins) {
        add(key, tin.name);
        add(key, tin.length.count());
        add(key, tin.width.count());
        add(key, tin.height.count());
    }
    return key;
}

tl::expected<breads::Bake, Diagnostics> Planner::bake(breads::BakeRequest request) {
    auto ready = fitted(request);
    if (!ready) {
        return tl::make_unexpected(std::move(ready.error()));
    }
    return breads::planned(std::move(request), std::move(ready->kitchen), std::move(ready->known));
}

tl::expected<Planner::Fitted, Diagnostics> Planner::fitted(const breads::BakeRequest& request) {
    auto kitchen = breads::kitchen_of(request);
    if (!kitchen) {
        return tl::make_unexpected(std::move(kitchen.error()));
    }
    const std::string key = key_of(request, *kitchen);
    auto known = known_.find(key);
    if (!known) {
        auto read = breads::read_breads(request.breads, *kitchen, knowledge_, reader_);
        if (!read) {
            return tl::make_unexpected(std::move(read.error()));
        }
        known = std::make_shared<const breads::KnownBreads>(std::move(*read));
        known_.keep(key, known);
    }
    return Fitted{std::move(*kitchen), std::move(known)};
}

} // namespace loafwright::server
