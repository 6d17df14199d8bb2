// SPDX-License-Identifier: Apache-2.0
#include "shell/server/exchange.hpp"

#include "engine/wire/wire.hpp"

namespace loafwright::server {

Response json_response(unsigned status, std::string json) {
    Response response;
    response.status = status;
    response.body = std::make_shared<const std::string>(std::move(json));
    return response;
}

Response error_response(unsigned status, const Diagnostics& diagnostics) {
    return json_response(status, wire::error_json(diagnostics));
}

Response error_response(unsigned status, std::string code, std::string what, std::string do_this) {
    return error_response(
        status,
        Diagnostics{{std::move(code), Severity::error, std::move(what), "", std::move(do_this)}});
}

} // namespace loafwright::server
