// In which units a request wants to be told: the header X-Keenfall-Told-In, "N,in". Without it all
// is told as it was recorded.
#pragma once

#include "materials/told_in.h"
#include "server/routes.h"

#include <functional>

namespace keenfall::server {

using ToldHandler = std::function<HttpResponse(
    const HttpRequest&, const PathParameters&, const materials::ToldIn&)>;

// Reads the header for `answer`; a request that asks for what nothing is told in is refused.
[[nodiscard]] RouteHandler telling_in_units(ToldHandler answer);

}  // namespace keenfall::server
