// SPDX-License-Identifier: Apache-2.0
#include "shell/server/static_files.hpp"

#include "shell/store/photos.hpp"

#include <fmt/format.h>
#include <zlib.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>

namespace loafwright::server {

namespace {

namespace fs = std::filesystem;

constexpr std::uintmax_t largest_file = 16777216;

std::string type_of(const fs::path& path) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 12> types{
        {{".html", "text/html; charset=utf-8"},
         {".js", "text/javascript; charset=utf-8"},
         {".css", "text/css; charset=utf-8"},
         {".json", "application/json"},
         {".webmanifest", "application/manifest+json"},
         {".svg", "image/svg+xml"},
         {".png", "image/png"},
         {".ico", "image/x-icon"},
         {".txt", "text/plain; charset=utf-8"},
         {".wasm", "application/wasm"},
         {".map", "application/json"},
         {".woff2", "font/woff2"}}};
    const std::string ending = path.extension().string();
    for (const auto& [known, type] : types) {
        if (ending == known) {
            return std::string(type);
        }
    }
    return "application/octet-stream";
}

bool is_text(std::string_view type) {
    return type.rfind("text/", 0) == 0 || type.find("json") != std::string_view::npos ||
           type.find("svg") != std::string_view::npos || type == "application/wasm";
}

// It tells versions of a page apart.
std::string etag_of(std::string_view bytes) {
    return fmt::format("\"{}\"", store::sha256(bytes).substr(0, 16));
}

// "assets/app-B3kd9_xZ.js": the build puts its content's mark into the name.
bool changes_with_content(const std::string& path) {
    return path.rfind("/assets/", 0) == 0;
}

} // namespace

std::string gzipped(std::string_view text) {
    z_stream stream{};
    constexpr int with_gzip_header = 16;
    if (deflateInit2(&stream, 9, Z_DEFLATED, MAX_WBITS + with_gzip_header, 8, Z_DEFAULT_STRATEGY) !=
        Z_OK) {
        throw std::runtime_error("zlib could not begin");
    }
    std::string out(deflateBound(&stream, static_cast<uLong>(text.size())), '\0');
    // zlib does not write to what it reads.
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(text.data()));
    stream.avail_in = static_cast<uInt>(text.size());
    stream.next_out = reinterpret_cast<Bytef*>(out.data());
    stream.avail_out = static_cast<uInt>(out.size());
    const int result = deflate(&stream, Z_FINISH);
    out.resize(stream.total_out);
    deflateEnd(&stream);
    if (result != Z_STREAM_END) {
        throw std::runtime_error("zlib could not finish");
    }
    return out;
}

tl::expected<StaticFiles, Diagnostic> StaticFiles::load(const std::string& folder) {
    StaticFiles all;
    std::error_code trouble;
    for (const auto& entry : fs::recursive_directory_iterator(folder, trouble)) {
        if (!entry.is_regular_file() || entry.file_size() > largest_file) {
            continue;
        }
        std::ifstream in(entry.path(), std::ios::binary);
        std::string bytes((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
        if (!in.good() && !in.eof()) {
            return tl::make_unexpected(Diagnostic{"file_unreadable",
                                                  Severity::error,
                                                  "a file of the pages could not be read",
                                                  entry.path().string(),
                                                  "Check its permissions."});
        }
        const std::string path = "/" + fs::relative(entry.path(), folder).generic_string();
        File file;
        file.type = type_of(entry.path());
        file.etag = etag_of(bytes);
        file.forever = changes_with_content(path);
        if (is_text(file.type)) {
            std::string packed = gzipped(bytes);
            if (packed.size() < bytes.size()) {
                file.packed = std::make_shared<const std::string>(std::move(packed));
            }
        }
        file.plain = std::make_shared<const std::string>(std::move(bytes));
        all.files_.emplace(path, std::move(file));
    }
    if (all.files_.find("/index.html") == all.files_.end()) {
        return tl::make_unexpected(Diagnostic{"pages_missing",
                                              Severity::error,
                                              "found no pages to show",
                                              folder,
                                              "Start it with ./run serve, which builds them."});
    }
    return all;
}

Response StaticFiles::answer(const Request& request, std::string_view if_none_match) const {
    std::string path = request.target.path();
    auto found = files_.find(path);
    if (found == files_.end()) {
        if (path.find('.') != std::string::npos) {
            return error_response(404,
                                  "not_here",
                                  "there is nothing at this address",
                                  "Check the address, or begin at the first page.");
        }
        // The first document has the first screen in it; the others are all one.
        found = files_.find(path == "/" ? "/index.html" : "/elsewhere.html");
        if (found == files_.end()) {
            found = files_.find("/index.html");
        }
    }
    const File& file = found->second;
    Response response;
    response.content_type = file.type;
    response.headers = {
        {"ETag", file.etag},
        {"Cache-Control", file.forever ? "public, max-age=31536000, immutable" : "no-cache"},
        {"Vary", "Accept-Encoding"}};
    if (if_none_match == file.etag) {
        response.status = 304;
        response.body = std::make_shared<const std::string>();
        return response;
    }
    const bool packed = request.gzip && file.packed;
    response.body = packed ? file.packed : file.plain;
    if (packed) {
        response.headers.emplace_back("Content-Encoding", "gzip");
    }
    return response;
}

} // namespace loafwright::server
