#include "server/app_parts.h"

#include "server/table_routes.h"

namespace keenfall::server {

void add_app_routes(const AppParts& parts) {
  add_notebook_routes(parts);
  add_trial_routes(parts);
  add_asking_routes(parts);
  add_judging_routes(parts);
  add_kit_routes(parts);
  add_planning_routes(parts);
  add_reference_routes(parts);
  add_stopping_route(parts);
  workbench::OpenApp& open = parts.open;
  add_table_routes(parts.routes,
                   {.notebook = [&open] { return open.notebook().value_or(""); },
                    .hand = [&open] { return open.hand(); }});
}

}  // namespace keenfall::server
