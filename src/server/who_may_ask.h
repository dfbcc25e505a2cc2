// Who may ask: only whoever has this server's own address, and no page of another one.
//
// A page elsewhere can make a browser send requests here, under any name that leads to this machine
// (DNS rebinding). So there must be exactly one Host, and it must be this server's; an Origin must
// be its own; and what a browser says of itself (Sec-Fetch-Site) must not name another site, but
// where a person goes to a page of this one: the file that leads to it (cli/desktop.h) is of none.
// Nothing is ever shared across origins: there are no headers that would allow it.
#pragma once

#include "server/door.h"
#include "server/http_message.h"
#include "server/refusal.h"

#include <optional>

namespace keenfall::server {

// Nothing: it may. A transfer coding other than exactly "chunked" is refused here too, since two
// readers could take it for two different requests.
[[nodiscard]] std::optional<Refusal> not_to_be_asked(const HttpRequest& request,
                                                     const OwnAddress& own);

}  // namespace keenfall::server
