// POST /api/v1/tables/read and /take: how tables that were dropped or typed would be taken, and
// taking them.
#pragma once

#include "server/routes.h"
#include "workbench/notebook_opening.h"

#include <functional>
#include <string>

namespace keenfall::server {

// What the routes work on, asked for at each request.
struct TablesGoInto {
  std::function<std::string()> notebook;  // its path; empty: none is open
  std::function<workbench::Hand()> hand;
};

void add_table_routes(Routes& routes, const TablesGoInto& into);

}  // namespace keenfall::server
