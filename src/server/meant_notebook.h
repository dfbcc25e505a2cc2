// Which notebook a request means: the header X-Keenfall-Notebook says the id that the open one was
// told with (App in docs/wire/api.json).
//
// A page that is left open goes on to ask after another tab, or a later Keenfall on the same port,
// has opened another notebook. What it asks is refused then, with 409 and which one is open now: as
// it is answered, so no change comes between. Whoever only reads may leave the header out; a change
// that does not say which notebook is refused with 400.
#pragma once

#include "base/result.h"
#include "server/http_message.h"
#include "workbench/open_app.h"

#include <string>

namespace keenfall::server {

// The open notebook's path, or the answer that refuses the request.
using PathOrRefused = tl::expected<std::string, HttpResponse>;

[[nodiscard]] PathOrRefused notebook_to_read(const workbench::OpenApp& open,
                                             const HttpRequest& request);
[[nodiscard]] PathOrRefused notebook_to_change(const workbench::OpenApp& open,
                                               const HttpRequest& request);
// To read where one is open; empty where none is.
[[nodiscard]] PathOrRefused notebook_if_open(const workbench::OpenApp& open,
                                             const HttpRequest& request);

}  // namespace keenfall::server
