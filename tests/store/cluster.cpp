// SPDX-License-Identifier: Apache-2.0
#include "tests/store/cluster.hpp"

#include <fcntl.h>
#include <libpq-fe.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <utility>

namespace loafwright::store {

namespace {

namespace fs = std::filesystem;

std::string programs_folder() {
    for (const char* folder : {"/usr/lib/postgresql/15/bin", "/usr/local/pgsql/bin"}) {
        if (fs::exists(fs::path(folder) / "initdb")) {
            return folder;
        }
    }
    return "";
}

// The server does not run as root.
std::string as_somebody(const std::string& command) {
    return ::geteuid() == 0 ? "runuser -u postgres -- " + command : command;
}

void run(const std::string& command) {
    if (std::system(command.c_str()) != 0) {
        throw std::runtime_error("did not work: " + command);
    }
}

} // namespace

Cluster* Cluster::get() {
    static const std::unique_ptr<Cluster> only(programs_folder().empty() ? nullptr : new Cluster);
    return only.get();
}

Cluster::Cluster() : programs_(programs_folder()) {
    std::string pattern = (fs::temp_directory_path() / "loaf-pg-XXXXXX").string();
    // The name of a socket is at most 107 bytes long, ".s.PGSQL.5432.lock" in the folder included.
    if (pattern.size() > 85 || ::mkdtemp(pattern.data()) == nullptr) {
        throw std::runtime_error("no folder for the cluster");
    }
    folder_ = pattern;
    if (::geteuid() == 0) {
        run("chown postgres " + folder_);
    }
    // It waits for the end of this process, by whatever cause, and clears up.
    int ends[2] = {-1, -1};
    if (::pipe2(ends, O_CLOEXEC) != 0) {
        throw std::runtime_error("no pipe");
    }
    const std::string clear = "trap '' INT TERM HUP; cd " + folder_ + "; read -r _; " +
                              as_somebody(programs_ + "/pg_ctl -D data -m immediate -s stop") +
                              " >/dev/null 2>&1; cd /; rm -rf " + folder_;
    guard_ = ::fork();
    if (guard_ == 0) {
        ::setsid();
        ::dup2(ends[0], 0);
        ::execl("/bin/sh", "sh", "-c", clear.c_str(), static_cast<char*>(nullptr));
        ::_exit(127);
    }
    ::close(ends[0]);
    guard_pipe_ = ends[1];
    run("cd " + folder_ + " && " +
        as_somebody(programs_ +
                    "/initdb -D data -U app --auth=trust --no-sync -E UTF8 --locale=C.UTF-8") +
        " >initdb.txt");
    start();
}

Cluster::~Cluster() {
    ::close(guard_pipe_);
    ::waitpid(guard_, nullptr, 0);
}

void Cluster::control(const std::string& arguments) const {
    run("cd " + folder_ + " && " + as_somebody(programs_ + "/pg_ctl -D data -w -s " + arguments) +
        " </dev/null >/dev/null");
}

void Cluster::start() {
    // Without fsync a power cut would lose what was answered; a killed server, which is what is
    // tried here, does not, because the kernel has it. synchronous_commit stays on.
    control("-l server.log -o \"-c listen_addresses='' -c unix_socket_directories=" + folder_ +
            " -c fsync=off -c full_page_writes=off -c max_connections=60\" start");
}

void Cluster::stop(const std::string& mode) {
    control("-m " + mode + " stop");
}

std::string Cluster::address_of(const std::string& database) const {
    return "postgresql:///" + database + "?host=" + folder_ + "&user=app";
}

std::string Cluster::new_address() {
    const std::string name = "app" + std::to_string(++databases_);
    execute(address_of("postgres"), "CREATE DATABASE " + name);
    return address_of(name);
}

void Cluster::execute(const std::string& address, const std::string& statements) const {
    const std::unique_ptr<PGconn, void (*)(PGconn*)> connection(PQconnectdb(address.c_str()),
                                                                PQfinish);
    const std::unique_ptr<PGresult, void (*)(PGresult*)> result(
        PQexec(connection.get(), statements.c_str()), PQclear);
    const ExecStatusType status = PQresultStatus(result.get());
    if (status != PGRES_COMMAND_OK && status != PGRES_TUPLES_OK) {
        throw std::runtime_error(statements + ": " + PQerrorMessage(connection.get()));
    }
}

} // namespace loafwright::store
