// Stopping Keenfall from its pages. As every route it asks for the key, so nobody else can.
#include "server/answers.h"
#include "server/app_parts.h"
#include "wire/app_json.h"

namespace keenfall::server {

void add_stopping_route(const AppParts& parts) {
  parts.routes.add("POST",
                   "/api/v1/stop",
                   [&open = parts.open, ask_to_stop = parts.ask_to_stop](const HttpRequest&,
                                                                         const PathParameters&) {
                     ask_to_stop();
                     return json_answer(wire::stopped_to_json(open.parting_words()));
                   },
                   {.does = RouteDoes::reads});
}

}  // namespace keenfall::server
