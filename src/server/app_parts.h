// What the routes of the app's API share: where they are added, who works long, what is open, and
// how all of it is stopped.
#pragma once

#include "server/routes.h"
#include "server/works.h"
#include "workbench/open_app.h"

#include <functional>

namespace keenfall::server {

class BenchDoor;

// All live as long as requests are answered.
struct AppParts {
  Routes& routes;
  Works& works;
  workbench::OpenApp& open;
  // Begins to end the app, without waiting for it: called while a request is answered.
  std::function<void()> ask_to_stop;
  BenchDoor* bench_door = nullptr;  // nullptr: no device is let in
};

// The desk's pages may be asked for, or the bench's alone.
enum class AtDesk { yes, no };

// Each adds the routes of one part of docs/wire/api.json. They decode, call one job and encode.
void add_notebook_routes(const AppParts& parts);   // /app, /notebooks, /home, /search, /journal
void add_trial_routes(const AppParts& parts);      // /trials/{trial} and its strikes
void add_asking_routes(const AppParts& parts);     // beginning trials, /asked, /seal, /name
void add_judging_routes(const AppParts& parts);    // judgements, reports, answers
void add_device_routes(const AppParts& parts);     // /devices
void add_kit_routes(const AppParts& parts);        // /kit
void add_planning_routes(const AppParts& parts);   // /planning
void add_reference_routes(const AppParts& parts);  // /reference, /export
void add_stopping_route(const AppParts& parts);    // /stop
void add_sheet_routes(const AppParts& parts);      // /sheets
void add_table_routes(const AppParts& parts);      // /tables

// /bench, /trials/{trial}/bench: those that a device at the bench is let in for.
void add_bench_routes(Routes& routes, workbench::OpenApp& open, AtDesk at_desk);

// /scale, likewise.
void add_scale_routes(Routes& routes, workbench::OpenApp& open, AtDesk at_desk);

// All of them.
void add_app_routes(const AppParts& parts);

}  // namespace keenfall::server
