// The desk's routes about devices at the bench: which are let in, letting one in, putting one out.
#include "server/answers.h"
#include "server/app_parts.h"
#include "server/bench_door.h"

#include <string>

namespace keenfall::server {

namespace {

HttpResponse told_of(BenchDoor* door) {
  return json_answer(wire::devices_to_json(door == nullptr ? no_devices_told() : door->told()));
}

HttpResponse not_open() {
  return problem_answer({.kind = base::ProblemKind::conflicting,
                         .sentence = "Keenfall was started without letting devices in.",
                         .accepted = "keenfall open --bench"});
}

}  // namespace

void add_device_routes(const AppParts& parts) {
  BenchDoor* const door = parts.bench_door;
  parts.routes.add("GET", "/api/v1/devices", [door](const HttpRequest&, const PathParameters&) {
    return told_of(door);
  });
  parts.routes.add("POST",
                   "/api/v1/devices/code",
                   [door](const HttpRequest&, const PathParameters&) {
                     if (door == nullptr) return not_open();
                     (void)door->devices().new_code();
                     return told_of(door);
                   },
                   {.does = RouteDoes::reads});
  parts.routes.add(
      "DELETE", "/api/v1/devices/{device}", [door](const HttpRequest&, const PathParameters& path) {
        if (door == nullptr) return not_open();
        if (!door->devices().put_out(path.at("device"))) {
          return not_found("No device with this id is let in.");
        }
        return told_of(door);
      });
}

}  // namespace keenfall::server
