// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <memory>
#include <string>

namespace loafwright::store {

/// A PostgreSQL cluster of the tests' own, on a socket in a folder of its own: no port, no network.
/// It is started when it is first asked for and goes with the test program, however that ends.
class Cluster {
public:
    /// Null where no server program is installed.
    static Cluster* get();

    ~Cluster();

    /// A database that nobody has used, as the address of a store.
    std::string new_address();
    /// Runs statements without answers: execute(address, "UPDATE …").
    void execute(const std::string& address, const std::string& statements) const;

    /// `mode` as pg_ctl has it: fast lets it close its books, immediate does not.
    void stop(const std::string& mode);
    void start();

private:
    Cluster();

    void control(const std::string& arguments) const;
    [[nodiscard]] std::string address_of(const std::string& database) const;

    std::string folder_;
    std::string programs_;
    int databases_ = 0;
    int guard_pipe_ = -1;
    int guard_ = -1;
};

} // namespace loafwright::store
