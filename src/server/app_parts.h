// What the routes of the app's API share: where they are added, who works long, and what is open.
#pragma once

#include "server/routes.h"
#include "server/works.h"
#include "workbench/open_app.h"

namespace keenfall::server {

// All live as long as requests are answered.
struct AppParts {
  Routes& routes;
  Works& works;
  workbench::OpenApp& open;
};

// Each adds the routes of one part of docs/wire/api.json. They decode, call one job and encode.
void add_notebook_routes(
    const AppParts& parts);                     // /app, /notebooks, /home, /search, /journal, /undo
void add_trial_routes(const AppParts& parts);   // /trials/{trial} and its strikes
void add_asking_routes(const AppParts& parts);  // beginning trials, /asked, /seal, /name
void add_judging_routes(const AppParts& parts);    // judgements, reports, answers
void add_kit_routes(const AppParts& parts);        // /kit
void add_planning_routes(const AppParts& parts);   // /planning
void add_reference_routes(const AppParts& parts);  // /reference, /export

// All of them.
void add_app_routes(const AppParts& parts);

}  // namespace keenfall::server
