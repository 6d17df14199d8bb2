// SPDX-License-Identifier: Apache-2.0
#include "shell/store/listener.hpp"

#include <libpq-fe.h>

#include <utility>

namespace loafwright::store {

void Listener::Finish::operator()(pg_conn* connection) const {
    PQfinish(connection);
}

Listener::Listener(std::string address) : address_(std::move(address)) {
    connect();
}

void Listener::connect() {
    connection_.reset(PQconnectdb(address_.c_str()));
    if (PQstatus(connection_.get()) != CONNECTION_OK) {
        connection_.reset();
        return;
    }
    const std::string listen = std::string("LISTEN ") + channel;
    PGresult* result = PQexec(connection_.get(), listen.c_str());
    const bool listens = PQresultStatus(result) == PGRES_COMMAND_OK;
    PQclear(result);
    if (!listens) {
        connection_.reset();
    }
}

std::optional<int> Listener::descriptor() const {
    if (!connection_) {
        return std::nullopt;
    }
    return PQsocket(connection_.get());
}

std::vector<std::string> Listener::drain() {
    std::vector<std::string> names;
    const bool lost = !connection_ || PQconsumeInput(connection_.get()) == 0;
    if (lost) {
        connect();
        if (connection_) {
            names.emplace_back(); // whatever was told meanwhile
        }
        return names;
    }
    while (PGnotify* notice = PQnotifies(connection_.get())) {
        names.emplace_back(notice->extra);
        PQfreemem(notice);
    }
    return names;
}

} // namespace loafwright::store
