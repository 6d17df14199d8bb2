// SPDX-License-Identifier: Apache-2.0
//
// The server over real sockets on loopback, spoken to byte by byte.
#include "shell/server/http_server.hpp"

#include <arpa/inet.h>
#include <gtest/gtest.h>
#include <netinet/in.h>
#include <rapidcheck/gtest.h>
#include <sys/socket.h>
#include <unistd.h>

#include <chrono>
#include <string>
#include <thread>

namespace loafwright::server {
namespace {

class Socket {
public:
    explicit Socket(std::uint16_t port) : socket_(::socket(AF_INET, SOCK_STREAM, 0)) {
        sockaddr_in address{};
        address.sin_family = AF_INET;
        address.sin_port = htons(port);
        address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
        connected_ =
            ::connect(socket_, reinterpret_cast<sockaddr*>(&address), sizeof(address)) == 0;
        const timeval patience{5, 0};
        ::setsockopt(socket_, SOL_SOCKET, SO_RCVTIMEO, &patience, sizeof(patience));
    }
    ~Socket() { ::close(socket_); }
    Socket(const Socket&) = delete;
    Socket& operator=(const Socket&) = delete;

    [[nodiscard]] bool connected() const { return connected_; }
    void send(const std::string& bytes) const {
        ::send(socket_, bytes.data(), bytes.size(), MSG_NOSIGNAL);
    }
    void end() const { ::shutdown(socket_, SHUT_WR); }
    // Until the other side closes, `mark` has come, or nothing comes for five seconds.
    std::string receive(const std::string& mark = "") {
        char bytes[4096];
        const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(20);
        while ((mark.empty() || got_.find(mark) == std::string::npos) &&
               std::chrono::steady_clock::now() < end) {
            const ssize_t count = ::recv(socket_, bytes, sizeof(bytes), 0);
            if (count <= 0) {
                break;
            }
            got_.append(bytes, static_cast<std::size_t>(count));
        }
        return got_;
    }

private:
    int socket_;
    bool connected_ = false;
    std::string got_;
};

// A server with a few handlers, on a free port.
class Running {
public:
    explicit Running(HttpOptions options = {}) : access_({"127.0.0.1", "localhost"}, "") {
        router_.add("POST", "/echo", {1000, false}, [](const Request& request, const Respond& to) {
            Response response = json_response(200, request.body);
            response.headers.emplace_back("X-Query", request.query("q"));
            to(response);
        });
        router_.add("GET", "/throws", {}, [](const Request& /*request*/, const Respond& /*to*/) {
            throw std::runtime_error("as asked");
        });
        router_.add("GET", "/stream", {}, [this](const Request& request, const Respond& to) {
            Response response;
            const std::int64_t after =
                request.last_event_id.empty() ? 0 : std::stoll(request.last_event_id);
            response.stream = hub_.subscribe("rye", after, [](const auto& give) {
                give(1, "{\"n\":1}");
                give(2, "{\"n\":2}");
            });
            to(response);
        });
        options.log = false;
        server_ =
            std::make_unique<HttpServer>(options, HttpParts{router_, nullptr, access_, metrics_});
        port = server_->listen().value();
        thread_ = std::thread([this] { server_->run(false); });
    }
    ~Running() {
        server_->stop();
        thread_.join();
    }
    Running(const Running&) = delete;
    Running& operator=(const Running&) = delete;

    // The answer to bytes after which the connection is closed.
    [[nodiscard]] std::string answer(const std::string& bytes) const {
        Socket socket(port);
        socket.send(bytes);
        return socket.receive();
    }
    EventHub& hub() { return hub_; }

    std::uint16_t port = 0;

private:
    Router router_;
    EventHub hub_;
    Access access_;
    Metrics metrics_;
    std::unique_ptr<HttpServer> server_;
    std::thread thread_;
};

std::string
request(const std::string& line, const std::string& more = "", const std::string& body = "") {
    return line + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n" + more + "\r\n" + body;
}

std::string status_of(const std::string& answer) {
    return answer.substr(0, 12);
}

TEST(http, a_body_comes_to_its_handler_and_an_answer_back) {
    const Running server;
    const std::string answer =
        server.answer(request("POST /echo?q=a%20b", "Content-Length: 5\r\n", "hello"));
    EXPECT_EQ(status_of(answer), "HTTP/1.1 200");
    EXPECT_NE(answer.find("X-Query: a b\r\n"), std::string::npos);
    EXPECT_EQ(answer.substr(answer.size() - 9), "\r\n\r\nhello");
    EXPECT_NE(answer.find("Content-Security-Policy: default-src 'self'"), std::string::npos);
    EXPECT_NE(answer.find("X-Content-Type-Options: nosniff"), std::string::npos);
}

// RFC 9112 section 9.3.2: requests may be sent without waiting; answers keep their order.
TEST(http, two_requests_in_one_breath_are_answered_one_after_the_other) {
    const Running server;
    Socket socket(server.port);
    const std::string one = "POST /echo HTTP/1.1\r\nHost: localhost\r\nContent-Length: 3\r\n\r\n";
    socket.send(one + "one" + request("POST /echo", "Content-Length: 3\r\n", "two"));
    const std::string answer = socket.receive();
    EXPECT_LT(answer.find("one"), answer.find("two"));
    EXPECT_NE(answer.find("two"), std::string::npos);
}

TEST(http, chunks_are_put_together) {
    const Running server;
    const std::string answer = server.answer(request(
        "POST /echo", "Transfer-Encoding: chunked\r\n", "3\r\nabc\r\n2\r\nde\r\n0\r\n\r\n"));
    EXPECT_EQ(answer.substr(answer.size() - 5), "abcde");
}

TEST(http, a_body_that_is_too_long_is_refused_before_it_is_read) {
    const Running server;
    Socket socket(server.port);
    // Only the head: had the body to be read first, no answer would come.
    socket.send(request("POST /echo", "Content-Length: 1000000000\r\n"));
    EXPECT_EQ(status_of(socket.receive()), "HTTP/1.1 413");
    std::string chunked;
    for (int n = 0; n < 20; ++n) {
        chunked += "64\r\n" + std::string(100, 'a') + "\r\n";
    }
    EXPECT_EQ(status_of(server.answer(
                  request("POST /echo", "Transfer-Encoding: chunked\r\n", chunked + "0\r\n\r\n"))),
              "HTTP/1.1 413");
}

TEST(http, what_cannot_be_read_is_refused_kindly) {
    const Running server;
    EXPECT_EQ(status_of(server.answer("nonsense\r\n\r\n")), "HTTP/1.1 400");
    EXPECT_EQ(status_of(server.answer(request("GET /../etc/passwd"))), "HTTP/1.1 400");
    EXPECT_EQ(status_of(server.answer(request("GET /%2e%2e/etc/passwd"))), "HTTP/1.1 400");
    EXPECT_EQ(status_of(server.answer(request("GET /nowhere"))), "HTTP/1.1 404");
    EXPECT_EQ(status_of(server.answer(request("GET /echo"))), "HTTP/1.1 405");
    EXPECT_EQ(status_of(server.answer(request("GET /throws"))), "HTTP/1.1 500");
    EXPECT_EQ(status_of(server.answer(
                  request("GET /throws", "X-Long: " + std::string(20000, 'a') + "\r\n"))),
              "HTTP/1.1 431");
    EXPECT_EQ(status_of(server.answer("GET /throws HTTP/1.1\r\nHost: elsewhere.example\r\n"
                                      "Connection: close\r\n\r\n")),
              "HTTP/1.1 421");
}

// RFC 9112 section 6.1: a request with both is an attempt to smuggle another one in.
TEST(http, a_length_beside_chunks_is_refused) {
    const Running server;
    const std::string answer = server.answer(
        request("POST /echo", "Content-Length: 3\r\nTransfer-Encoding: chunked\r\n", "0\r\n\r\n"));
    EXPECT_EQ(status_of(answer), "HTTP/1.1 400");
}

// RFC 9112 section 3.2: no host, or two, is 400.
TEST(http, a_request_names_one_host) {
    const Running server;
    EXPECT_EQ(status_of(server.answer("GET /throws HTTP/1.1\r\nConnection: close\r\n\r\n")),
              "HTTP/1.1 400");
    EXPECT_EQ(status_of(server.answer(request("GET /throws", "Host: elsewhere.example\r\n"))),
              "HTTP/1.1 400");
}

// RFC 9112 section 9.6: closing while the other side sends would take the answer away from it.
TEST(http, who_sends_too_much_is_heard_out_and_reads_why) {
    const Running server;
    Socket socket(server.port);
    socket.send(request("POST /echo", "Content-Length: 3000000\r\n", std::string(3000000, 'a')));
    EXPECT_EQ(status_of(socket.receive()), "HTTP/1.1 413");
}

TEST(http, bodies_that_are_promised_count_together) {
    HttpOptions options;
    options.most_bodies_bytes = 1500;
    const Running server(options);
    const Socket slow(server.port);
    slow.send(request("POST /echo", "Content-Length: 1000\r\n", "a"));
    const std::string more =
        request("POST /echo", "Content-Length: 600\r\n", std::string(600, 'b'));
    std::string status;
    for (int tries = 0; tries < 100 && status != "HTTP/1.1 503"; ++tries) {
        status = status_of(server.answer(more)); // 200 until the slow one has been seen
    }
    EXPECT_EQ(status, "HTTP/1.1 503");
    EXPECT_EQ(status_of(server.answer(request("POST /echo", "Content-Length: 2\r\n", "ok"))),
              "HTTP/1.1 200");
}

TEST(http, slow_and_silent_connections_are_let_go) {
    HttpOptions options;
    options.reading = std::chrono::seconds(1);
    options.idle = std::chrono::seconds(1);
    const Running server(options);
    Socket silent(server.port);
    Socket slow(server.port);
    slow.send("POST /echo HTTP/1.1\r\nHo");
    EXPECT_EQ(slow.receive(), "");
    EXPECT_EQ(silent.receive(), "");
}

TEST(http, more_connections_than_there_is_room_for_are_closed) {
    HttpOptions options;
    options.most_connections = 2;
    const Running server(options);
    Socket one(server.port);
    Socket two(server.port);
    const std::string ask = "POST /echo HTTP/1.1\r\nHost: localhost\r\nContent-Length: 2\r\n\r\nhi";
    one.send(ask);
    two.send(ask);
    EXPECT_NE(one.receive("hi"), "");
    EXPECT_NE(two.receive("hi"), "");
    Socket three(server.port);
    three.send(ask);
    EXPECT_EQ(three.receive(), "");
}

TEST(http, a_stream_tells_the_past_then_the_present_and_goes_on_where_it_broke_off) {
    Running server;
    Socket socket(server.port);
    socket.send("GET /stream HTTP/1.1\r\nHost: localhost\r\n\r\n");
    const std::string past = socket.receive("id: 2");
    EXPECT_NE(past.find("text/event-stream"), std::string::npos);
    EXPECT_NE(past.find("id: 1\nevent: event\ndata: {\"n\":1}\n\n"), std::string::npos);
    server.hub().publish("rye", 3, "{\"n\":3}");
    EXPECT_NE(socket.receive("\"n\":3").find("id: 3"), std::string::npos);
    Socket again(server.port);
    again.send("GET /stream HTTP/1.1\r\nHost: localhost\r\nLast-Event-ID: 1\r\n\r\n");
    const std::string rest = again.receive("id: 2");
    EXPECT_EQ(rest.find("id: 1\n"), std::string::npos);
}

TEST(http, a_quiet_stream_beats_its_heart) {
    HttpOptions options;
    options.heartbeat = std::chrono::seconds(1);
    const Running server(options);
    Socket socket(server.port);
    socket.send("GET /stream HTTP/1.1\r\nHost: localhost\r\nLast-Event-ID: 2\r\n\r\n");
    // The first tells that it is heard, the second comes a second later: a chunk of 14 bytes each.
    const std::string beat = "e\r\n: still here\n\n\r\n";
    EXPECT_NE(socket.receive(beat + beat).find(beat + beat), std::string::npos);
}

TEST(http, it_stops_while_streams_are_open) {
    auto server = std::make_unique<Running>();
    Socket socket(server->port);
    socket.send("GET /stream HTTP/1.1\r\nHost: localhost\r\n\r\n");
    socket.receive("id: 2");
    const auto before = std::chrono::steady_clock::now();
    server.reset();
    // The end of a chunked body, not a connection cut off.
    EXPECT_EQ(socket.receive().substr(socket.receive().size() - 5), "0\r\n\r\n");
    EXPECT_LT(std::chrono::steady_clock::now() - before, std::chrono::seconds(5));
}

TEST(http, a_port_that_is_taken_and_an_address_that_is_none_are_told) {
    const Running server;
    Router router;
    Access access({}, "");
    Metrics metrics;
    HttpOptions options;
    options.port = server.port;
    HttpServer second(options, {router, nullptr, access, metrics});
    EXPECT_EQ(second.listen().error().code, "port_taken");
    options.host = "kitchen";
    HttpServer third(options, {router, nullptr, access, metrics});
    EXPECT_EQ(third.listen().error().code, "address_unusable");
}

RC_GTEST_PROP(http, any_bytes_are_answered_or_let_go_and_the_next_one_is_served, ()) {
    static const Running server;
    const auto bytes = *rc::gen::arbitrary<std::string>();
    const auto lead = *rc::gen::element<std::string>(
        "", "GET ", "POST /echo HTTP/1.1\r\n", "POST /echo HTTP/1.1\r\nHost: localhost\r\n");
    {
        Socket socket(server.port);
        socket.send(lead + bytes);
        socket.end();
        const std::string answer = socket.receive();
        RC_ASSERT(answer.empty() || answer.rfind("HTTP/1.1 ", 0) == 0);
    }
    const std::string answer = server.answer(request("POST /echo", "Content-Length: 2\r\n", "ok"));
    RC_ASSERT(answer.substr(answer.size() - 2) == "ok");
}

} // namespace
} // namespace loafwright::server
