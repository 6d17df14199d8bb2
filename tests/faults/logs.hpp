// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/bake_log.hpp"

#include <cstdint>
#include <string>

/// Logs built by hand, one fact after the other. All figures are made up.
namespace loafwright::faults {

class LogMaker {
public:
    LogMaker();

    /// A timed line of this kind: so many real minutes where so many were planned.
    LogMaker& went(StepKind kind, std::int64_t real, std::int64_t planned);
    /// Where the dough of the last line stood.
    LogMaker& at_c(double celsius);
    LogMaker& grown(Growth growth);
    LogMaker& read(Measured what, double celsius);
    LogMaker& baked_at(double setting, double read);
    LogMaker& happened(Trouble trouble);
    LogMaker& percents(double water, double salt, double sugar, double fat);
    LogMaker& raised_by(const std::string& leaven);
    LogMaker& family(DoughFamily family);
    LogMaker& changed(const std::string& what);

    [[nodiscard]] const BakeLog& log() const { return log_; }

private:
    BakeLog log_;
    Instant clock_;
};

} // namespace loafwright::faults
