#include "server/app_parts.h"

namespace keenfall::server {

void add_app_routes(const AppParts& parts) {
  add_notebook_routes(parts);
  add_trial_routes(parts);
  add_asking_routes(parts);
  add_judging_routes(parts);
  add_bench_routes(parts.routes, parts.open, AtDesk::yes);
  add_scale_routes(parts.routes, parts.open, AtDesk::yes);
  add_device_routes(parts);
  add_kit_routes(parts);
  add_planning_routes(parts);
  add_reference_routes(parts);
  add_stopping_route(parts);
  add_sheet_routes(parts);
  add_table_routes(parts);
}

}  // namespace keenfall::server
