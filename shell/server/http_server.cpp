// SPDX-License-Identifier: Apache-2.0
//
// The only file that knows Boost.Beast. One coroutine for each connection, all on one thread; a
// handler runs on another and its answer comes back here.
#include "shell/server/http_server.hpp"

#include <boost/asio/as_tuple.hpp>
#include <boost/asio/awaitable.hpp>
#include <boost/asio/co_spawn.hpp>
#include <boost/asio/detached.hpp>
#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/signal_set.hpp>
#include <boost/asio/steady_timer.hpp>
#include <boost/asio/thread_pool.hpp>
#include <boost/asio/use_awaitable.hpp>
#include <boost/asio/write.hpp>
#include <boost/beast/core/flat_buffer.hpp>
#include <boost/beast/core/tcp_stream.hpp>
#include <boost/beast/http.hpp>
#include <fmt/format.h>

#include <array>
#include <atomic>
#include <cstdio>
#include <list>
#include <optional>
#include <utility>

namespace loafwright::server {

namespace {

namespace asio = boost::asio;
namespace beast = boost::beast;
namespace http = beast::http;
using Tcp = asio::ip::tcp;
using Clock = std::chrono::steady_clock;

constexpr auto quietly = asio::as_tuple(asio::use_awaitable);
constexpr std::chrono::seconds patience{5}; // with what runs when the server stops
constexpr std::size_t largest_read = 65536;
constexpr std::chrono::seconds hearing_out{2};
constexpr std::size_t most_heard_out = 33554432; // a few photos

constexpr std::string_view page_policy =
    "default-src 'self'; img-src 'self' data: blob:; style-src 'self'; script-src 'self'; "
    "connect-src 'self'; worker-src 'self'; manifest-src 'self'; object-src 'none'; "
    "frame-ancestors 'none'; base-uri 'none'; form-action 'self'";

using Head = http::request_parser<http::empty_body>;

std::string text_of(beast::string_view view) {
    return std::string(view.data(), view.size());
}

// A connection as the server keeps hold of it, to end it when it stops.
struct Connection {
    explicit Connection(Tcp::socket socket) : stream(std::move(socket)) {}

    beast::tcp_stream stream;
    bool waiting = false;                        // between two requests
    std::shared_ptr<asio::steady_timer> listens; // set while it is an event stream
};

// Room for a body that has been promised, until the request is answered.
class Promised {
public:
    Promised(std::size_t& all, std::size_t bytes) : all_(all), bytes_(bytes) { all_ += bytes_; }
    ~Promised() { all_ -= bytes_; }
    Promised(const Promised&) = delete;
    Promised& operator=(const Promised&) = delete;

private:
    std::size_t& all_;
    std::size_t bytes_;
};

// What a request is known by in counts and logs.
struct Told {
    std::string route = "-";
    std::string method = "-";
    Clock::time_point since = Clock::now();
};

} // namespace

struct HttpServer::Inside {
    Inside(HttpOptions given, HttpParts from)
        : options(std::move(given)), parts(from), acceptor(io), pool(options.workers) {}

    HttpOptions options;
    HttpParts parts;
    asio::io_context io{1};
    Tcp::acceptor acceptor;
    asio::thread_pool pool;
    std::list<std::shared_ptr<Connection>> connections;
    std::size_t listeners = 0;
    std::size_t bodies = 0; // bytes, of all requests that are being read or answered
    bool stopping = false;
    std::optional<asio::steady_timer> last_call;

    void told(const Told& about, unsigned status, std::size_t bytes) const {
        const auto took =
            std::chrono::duration_cast<std::chrono::microseconds>(Clock::now() - about.since);
        parts.metrics.answered(about.route, about.method, status, took);
        if (options.log) {
            const auto now = std::chrono::system_clock::now().time_since_epoch();
            fmt::print(stderr,
                       "{{\"at\":{},\"method\":\"{}\",\"route\":\"{}\",\"status\":{},\"ms\":{:.3f},"
                       "\"bytes\":{}}}\n",
                       std::chrono::duration_cast<std::chrono::milliseconds>(now).count(),
                       about.method,
                       about.route,
                       status,
                       static_cast<double>(took.count()) / 1000.0,
                       bytes);
        }
    }

    // The handler's answer, whichever thread it comes from.
    asio::awaitable<Response> answer_of(const Handler& handler, Request request) {
        const auto initiate = [this, &handler](auto completion, Request asked) {
            using Completion = decltype(completion);
            struct Once {
                explicit Once(Completion then) : completion(std::move(then)) {}
                Completion completion;
                std::atomic<bool> over{false};
            };
            const auto once = std::make_shared<Once>(std::move(completion));
            const Respond respond = [this, once](Response response) {
                if (!once->over.exchange(true)) {
                    asio::post(io, [once, answer = std::move(response)]() mutable {
                        std::move(once->completion)(std::move(answer));
                    });
                }
            };
            asio::post(pool, [handler, respond, asked = std::move(asked)]() mutable {
                try {
                    handler(std::move(asked), respond);
                } catch (const std::exception& fault) {
                    respond(error_response(500,
                                           "internal",
                                           std::string("something went wrong in the server: ") +
                                               fault.what(),
                                           "Try again; if it stays, tell whoever runs it."));
                }
            });
        };
        co_return co_await asio::async_initiate<const asio::use_awaitable_t<>, void(Response)>(
            initiate, asio::use_awaitable, std::move(request));
    }

    template <typename Message>
    void add_headers(Message& message, const Response& response) const {
        message.set(http::field::server, "loafwright");
        message.set(http::field::content_type, response.content_type);
        message.set("X-Content-Type-Options", "nosniff");
        message.set("Referrer-Policy", "no-referrer");
        message.set("Cross-Origin-Opener-Policy", "same-origin");
        message.set("Cross-Origin-Resource-Policy", "same-origin");
        message.set("Content-Security-Policy", page_policy);
        message.set("Permissions-Policy",
                    "camera=(self), microphone=(self), screen-wake-lock=(self), geolocation=()");
        bool cached = false;
        for (const auto& [name, value] : response.headers) {
            message.set(name, value);
            cached = cached || name == "Cache-Control";
        }
        if (!cached) {
            message.set(http::field::cache_control, "no-store");
        }
    }

    // False when the connection is over.
    asio::awaitable<bool>
    write(Connection& connection, const Response& response, bool keep, bool head_only) {
        static const auto nothing = std::make_shared<const std::string>();
        const auto body = response.body ? response.body : nothing;
        connection.stream.expires_after(options.writing);
        const bool no_body = head_only || response.status == 304 || response.status == 204;
        if (no_body) {
            http::response<http::empty_body> message(static_cast<http::status>(response.status),
                                                     11);
            add_headers(message, response);
            message.keep_alive(keep);
            if (response.status != 304 && response.status != 204) {
                message.content_length(body->size());
            }
            http::response_serializer<http::empty_body> serializer(message);
            const auto [fault, ignored] =
                co_await http::async_write_header(connection.stream, serializer, quietly);
            co_return !fault && keep;
        }
        http::response<http::span_body<const char>> message(
            static_cast<http::status>(response.status), 11);
        add_headers(message, response);
        message.keep_alive(keep);
        message.body() = beast::span<const char>(body->data(), body->size());
        message.prepare_payload();
        const auto [fault, ignored] =
            co_await http::async_write(connection.stream, message, quietly);
        co_return !fault && keep;
    }

    // What the client still sends after it was refused. To close on it would take the answer away
    // from it before it is read (RFC 9112 section 9.6).
    asio::awaitable<void> hear_out(Connection& connection) {
        beast::error_code ignored;
        connection.stream.socket().shutdown(Tcp::socket::shutdown_send, ignored);
        connection.stream.expires_after(hearing_out);
        std::array<char, 4096> rest{};
        std::size_t heard = 0;
        while (heard < most_heard_out) {
            const auto [fault, count] =
                co_await connection.stream.async_read_some(asio::buffer(rest), quietly);
            if (fault) {
                break;
            }
            heard += count;
        }
    }

    asio::awaitable<void> write_stream(Connection& connection, const Response& response) {
        http::response<http::empty_body> message(http::status::ok, 11);
        Response as_stream = response;
        as_stream.content_type = "text/event-stream; charset=utf-8";
        add_headers(message, as_stream);
        message.chunked(true);
        http::response_serializer<http::empty_body> serializer(message);
        connection.stream.expires_after(options.writing);
        const auto [begun, ignored] =
            co_await http::async_write_header(connection.stream, serializer, quietly);
        if (begun) {
            co_return;
        }
        const auto timer = std::make_shared<asio::steady_timer>(io);
        connection.listens = timer;
        parts.metrics.listeners(static_cast<std::int64_t>(++listeners));
        response.stream->on_news([this, weak = std::weak_ptr(timer)] {
            asio::post(io, [weak] {
                if (const auto wakes = weak.lock()) {
                    wakes->cancel();
                }
            });
        });
        static const auto heartbeat = std::make_shared<const std::string>(": still here\n\n");
        bool first = true;
        while (!stopping && !response.stream->too_slow()) {
            std::vector<EventText> news = response.stream->take();
            if (news.empty() && first) {
                news.push_back(heartbeat); // so that the other side knows it is heard
            }
            first = false;
            if (news.empty()) {
                timer->expires_after(options.heartbeat);
                const auto [woken] = co_await timer->async_wait(quietly);
                if (woken) {
                    continue;
                }
                news.push_back(heartbeat);
            }
            std::vector<asio::const_buffer> buffers;
            buffers.reserve(news.size());
            for (const EventText& text : news) {
                buffers.emplace_back(text->data(), text->size());
            }
            connection.stream.expires_after(options.writing);
            const auto [fault, written] =
                co_await asio::async_write(connection.stream, http::make_chunk(buffers), quietly);
            if (fault) {
                break;
            }
        }
        connection.listens.reset();
        parts.metrics.listeners(static_cast<std::int64_t>(--listeners));
        connection.stream.expires_after(options.writing);
        co_await asio::async_write(connection.stream, http::make_chunk_last(), quietly);
    }

    // An answer that needs no body of the request: it is wrong, or too long, or nothing is there.
    std::optional<Response>
    early(const Head& head, const std::optional<Target>& target, const Routed& routed) const {
        const auto& message = head.get();
        if (message.count(http::field::host) != 1) { // RFC 9112 section 3.2
            return error_response(400,
                                  "request_unreadable",
                                  "found no host, or more than one",
                                  "Open the address in a browser.");
        }
        if (!target) {
            return error_response(
                400, "address_unreadable", "that address cannot be read", "Check the address.");
        }
        const Credentials credentials{text_of(message.method_string()),
                                      text_of(message[http::field::host]),
                                      text_of(message[http::field::origin]),
                                      text_of(message["Sec-Fetch-Site"]),
                                      text_of(message[http::field::cookie]),
                                      text_of(message[http::field::authorization])};
        const bool reads =
            message.method() == http::verb::get || message.method() == http::verb::head;
        const bool open = routed.route != nullptr && routed.route->rules.open;
        if (auto refused = parts.access.refusal(credentials, open)) {
            return refused;
        }
        if (routed.route == nullptr && !routed.allowed.empty()) {
            Response response = error_response(405,
                                               "method_unknown",
                                               "this address does not take that method",
                                               "Use one of " + routed.allowed + ".");
            response.headers.emplace_back("Allow", routed.allowed);
            return response;
        }
        const bool api = !target->segments.empty() && target->segments.front() == "api";
        if (routed.route == nullptr && (!reads || api || parts.files == nullptr)) {
            return error_response(
                404, "not_here", "there is nothing at this address", "Check the address.");
        }
        const std::size_t most = routed.route != nullptr ? routed.route->rules.most_body_bytes : 0;
        const auto length = head.content_length();
        if (length && *length > most) {
            return too_long(most);
        }
        return std::nullopt;
    }

    static Response too_long(std::size_t most) {
        return error_response(
            413,
            "body_too_long",
            fmt::format("that is more than the {} KiB that are taken here", most / 1024),
            "Send less at a time.");
    }

    // One request and its answer. False when the connection is over.
    asio::awaitable<bool> exchange(Connection& connection, beast::flat_buffer& buffer) {
        Head head;
        head.header_limit(static_cast<std::uint32_t>(options.most_header_bytes));
        head.body_limit(boost::none);
        connection.waiting = true;
        connection.stream.expires_after(options.idle);
        if (buffer.size() == 0) {
            const auto [gone, bytes] =
                co_await connection.stream.async_read_some(buffer.prepare(4096), quietly);
            if (gone) {
                co_return false;
            }
            buffer.commit(bytes);
        }
        connection.waiting = false;
        Told about;
        connection.stream.expires_after(options.reading);
        const auto [unread, ignored] =
            co_await http::async_read_header(connection.stream, buffer, head, quietly);
        if (unread) {
            if (unread == http::error::end_of_stream || unread == beast::error::timeout) {
                co_return false;
            }
            const unsigned status = unread == http::error::header_limit ? 431U : 400U;
            told(about, status, 0);
            co_await write(connection,
                           error_response(status,
                                          "request_unreadable",
                                          "that is not a request this server can read",
                                          "Open the address in a browser."),
                           false,
                           false);
            co_return false;
        }
        const auto target = target_of({head.get().target().data(), head.get().target().size()});
        about.method = text_of(head.get().method_string());
        if (head.get().method() == http::verb::unknown) {
            about.method = "other";
        }
        Routed routed;
        if (target) {
            routed = parts.router.route(about.method, *target);
            about.route = routed.route != nullptr ? routed.route->path : "pages";
        }
        const bool head_only = head.get().method() == http::verb::head;
        if (const auto refused = early(head, target, routed)) {
            // A body that was not read would be taken for the next request.
            const bool has_body = head.chunked() || head.content_length().value_or(0) > 0;
            const bool keep = head.get().keep_alive() && !has_body && !stopping;
            told(about, refused->status, refused->body->size());
            const bool goes_on = co_await write(connection, *refused, keep, head_only);
            if (has_body) {
                co_await hear_out(connection);
            }
            co_return goes_on;
        }
        const std::size_t most = routed.route != nullptr ? routed.route->rules.most_body_bytes : 0;
        // The parser takes the room for a whole body at once, so that what was promised counts.
        const std::size_t promised =
            head.chunked() ? most : static_cast<std::size_t>(head.content_length().value_or(0));
        if (bodies + promised > options.most_bodies_bytes) {
            told(about, 503, 0);
            co_await write(connection,
                           error_response(503,
                                          "too_busy",
                                          "too much is being sent at the same time",
                                          "Try again in a moment."),
                           false,
                           head_only);
            co_await hear_out(connection);
            co_return false;
        }
        const Promised counted(bodies, promised);
        http::request_parser<http::string_body> whole(std::move(head));
        whole.body_limit(most);
        if (beast::iequals(whole.get()[http::field::expect], "100-continue")) {
            http::response<http::empty_body> go_on(http::status::continue_, 11);
            co_await http::async_write(connection.stream, go_on, quietly);
        }
        const auto [broken, count] =
            co_await http::async_read(connection.stream, buffer, whole, quietly);
        if (broken) {
            if (broken == http::error::body_limit) {
                told(about, 413, 0);
                co_await write(connection, too_long(most), false, head_only);
                co_await hear_out(connection);
            } else if (broken != beast::error::timeout) {
                told(about, 400, 0);
                co_await write(connection,
                               error_response(400,
                                              "request_unreadable",
                                              "that request ended before it was whole",
                                              "Send it again."),
                               false,
                               false);
            }
            co_return false;
        }
        const bool keep = whole.get().keep_alive() && !stopping;
        const std::string if_none_match = text_of(whole.get()[http::field::if_none_match]);
        Request request;
        request.method = about.method;
        request.target = *target;
        request.parameters = routed.parameters;
        request.content_type = text_of(whole.get()[http::field::content_type]);
        request.last_event_id = text_of(whole.get()["Last-Event-ID"]);
        request.gzip = accepts_gzip(text_of(whole.get()[http::field::accept_encoding]));
        request.body = std::move(whole.get().body());
        // Not in one expression: g++ 12 destroys the answer of a co_await in a conditional twice.
        Response response;
        if (routed.route != nullptr) {
            response = co_await answer_of(routed.route->handler, std::move(request));
        } else {
            response = parts.files->answer(request, if_none_match);
        }
        told(about, response.status, response.body ? response.body->size() : 0);
        if (response.stream && !head_only) {
            buffer.clear();
            buffer.shrink_to_fit();
            co_await write_stream(connection, response);
            co_return false;
        }
        co_return co_await write(connection, response, keep, head_only);
    }

    asio::awaitable<void> serve(std::shared_ptr<Connection> connection) {
        const auto place = connections.insert(connections.end(), connection);
        parts.metrics.connections(static_cast<std::int64_t>(connections.size()));
        try {
            beast::flat_buffer buffer(largest_read);
            while (!stopping && co_await exchange(*connection, buffer)) {
            }
        } catch (const std::exception& fault) {
            fmt::print(stderr, "{{\"fault\":\"{}\"}}\n", fault.what());
        }
        beast::error_code ignored;
        connection->stream.socket().shutdown(Tcp::socket::shutdown_send, ignored);
        connections.erase(place);
        parts.metrics.connections(static_cast<std::int64_t>(connections.size()));
        if (stopping && connections.empty()) {
            io.stop();
        }
    }

    asio::awaitable<void> accept() {
        while (!stopping) {
            auto [fault, socket] = co_await acceptor.async_accept(quietly);
            if (fault) {
                if (stopping || fault == asio::error::operation_aborted) {
                    co_return;
                }
                // No descriptors left, most likely: others will end.
                asio::steady_timer pause(io, std::chrono::milliseconds(50));
                co_await pause.async_wait(quietly);
                continue;
            }
            if (connections.size() >= options.most_connections) {
                continue; // closes it
            }
            beast::error_code ignored;
            socket.set_option(Tcp::no_delay(true), ignored);
            asio::co_spawn(
                io, serve(std::make_shared<Connection>(std::move(socket))), asio::detached);
        }
    }

    void stop_here() {
        if (stopping) {
            return;
        }
        stopping = true;
        beast::error_code ignored;
        acceptor.close(ignored);
        for (const auto& connection : connections) {
            if (connection->listens) {
                connection->listens->cancel();
            } else if (connection->waiting) {
                connection->stream.cancel();
            }
        }
        if (connections.empty()) {
            io.stop();
            return;
        }
        last_call.emplace(io, patience);
        last_call->async_wait([this](beast::error_code) { io.stop(); });
    }
};

HttpServer::HttpServer(HttpOptions options, HttpParts parts)
    : inside_(std::make_unique<Inside>(std::move(options), parts)) {}

HttpServer::~HttpServer() {
    inside_->pool.join();
    inside_->connections.clear();
}

tl::expected<std::uint16_t, Diagnostic> HttpServer::listen() {
    const auto fault = [this](const char* code, std::string what, const char* do_this) {
        return tl::make_unexpected(
            Diagnostic{code,
                       Severity::error,
                       std::move(what),
                       fmt::format("{}:{}", inside_->options.host, inside_->options.port),
                       do_this});
    };
    beast::error_code trouble;
    const auto address = asio::ip::make_address(inside_->options.host, trouble);
    if (trouble) {
        return fault("address_unusable",
                     "that is no address to listen on",
                     "Write it as 127.0.0.1:8424, or 0.0.0.0:8424 for the whole house.");
    }
    const Tcp::endpoint endpoint(address, inside_->options.port);
    Tcp::acceptor& acceptor = inside_->acceptor;
    acceptor.open(endpoint.protocol(), trouble);
    if (!trouble) {
        acceptor.set_option(asio::socket_base::reuse_address(true), trouble);
        acceptor.bind(endpoint, trouble);
    }
    if (!trouble) {
        acceptor.listen(asio::socket_base::max_listen_connections, trouble);
    }
    if (trouble) {
        const bool taken = trouble == asio::error::address_in_use;
        return fault(taken ? "port_taken" : "address_unusable",
                     taken ? "something else listens there already"
                           : "it cannot listen there: " + trouble.message(),
                     taken ? "Choose another port, as in --listen 127.0.0.1:8425."
                           : "Choose an address of this machine.");
    }
    return acceptor.local_endpoint().port();
}

void HttpServer::run(bool on_signals) {
    Inside& in = *inside_;
    std::optional<asio::signal_set> signals;
    if (on_signals) {
        signals.emplace(in.io, SIGINT, SIGTERM);
        signals->async_wait([&in](beast::error_code fault, int) {
            if (!fault) {
                in.stop_here();
            }
        });
    }
    asio::co_spawn(in.io, in.accept(), asio::detached);
    in.io.run();
    in.pool.stop(); // what has not begun has nobody left who waits for it
    in.pool.join();
}

void HttpServer::stop() {
    asio::post(inside_->io, [in = inside_.get()] { in->stop_here(); });
}

} // namespace loafwright::server
