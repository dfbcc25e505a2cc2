// GET and DELETE /api/v1/works/{work}, and GET of its result.
#pragma once

#include "server/routes.h"
#include "server/works.h"

namespace keenfall::server {

// The works must live as long as the routes.
void add_work_routes(Routes& routes, Works& works);

// 202 with the work that was begun: the answer of a request that starts it.
[[nodiscard]] HttpResponse begun_answer(const Works& works, const std::string& id);

}  // namespace keenfall::server
