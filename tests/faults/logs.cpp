// SPDX-License-Identifier: Apache-2.0
#include "tests/faults/logs.hpp"

namespace loafwright::faults {

LogMaker::LogMaker() : clock_{1795597200} {
    log_.bread = "Plain tin loaf";
    log_.leaven = "yeast";
}

LogMaker& LogMaker::went(StepKind kind, std::int64_t real, std::int64_t planned) {
    LoggedLine line;
    line.stage = static_cast<int>(log_.lines.size()) + 1;
    line.kind = kind;
    line.attention = attention_of(kind);
    line.minutes = {planned, planned, planned};
    line.usual_minutes = static_cast<double>(planned);
    line.begun = clock_;
    clock_ = later_by_minutes(clock_, real);
    line.done = clock_;
    line.timed = true;
    if (kind == StepKind::rise || kind == StepKind::prove) {
        line.wanted_growth = kind == StepKind::rise ? 1.0 : 0.8;
    }
    log_.lines.push_back(line);
    return *this;
}

LogMaker& LogMaker::at_c(double celsius) {
    log_.lines.back().stands = Celsius(celsius);
    return *this;
}

LogMaker& LogMaker::grown(Growth growth) {
    log_.lines.back().grown = LoggedGrowth{clock_, growth};
    return *this;
}

LogMaker& LogMaker::read(Measured what, double celsius) {
    if (log_.lines.empty()) {
        went(StepKind::mix, 10, 10);
    }
    log_.lines.back().temperatures.push_back({clock_, what, Celsius(celsius)});
    return *this;
}

LogMaker& LogMaker::baked_at(double setting, double read_c) {
    went(StepKind::bake, 35, 35);
    log_.lines.back().setting = Celsius(setting);
    return read(Measured::oven, read_c);
}

LogMaker& LogMaker::happened(Trouble trouble) {
    if (log_.lines.empty()) {
        went(StepKind::mix, 10, 10);
    }
    log_.lines.back().troubles.push_back(trouble);
    return *this;
}

LogMaker& LogMaker::percents(double water, double salt, double sugar, double fat) {
    log_.dough.water = water;
    log_.dough.salt = salt;
    log_.dough.sugar = sugar;
    log_.dough.fat = fat;
    return *this;
}

LogMaker& LogMaker::raised_by(const std::string& leaven) {
    log_.leaven = leaven;
    return *this;
}

LogMaker& LogMaker::family(DoughFamily family) {
    log_.family = family;
    return *this;
}

LogMaker& LogMaker::changed(const std::string& what) {
    log_.told.changed.push_back(what);
    return *this;
}

} // namespace loafwright::faults
