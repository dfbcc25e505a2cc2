// For tests: an app on a folder of its own, asked as pages ask it, and its answers held against
// docs/wire/api.json.
#pragma once

#include "server/app_parts.h"
#include "wire/schema_faults_test.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <string>
#include <thread>
#include <vector>

#include <unistd.h>

namespace keenfall::server::testing {

using nlohmann::json;

// Of two blades in one medium, two runs of each, in an order.
inline json a_plan(const std::vector<double>& checkpoint_cuts) {
  const json edge = {{"bevel_angle_per_side_deg", 17}};
  return {{"cuttings",
           {{{"medium", "sisal rope"},
             {"method", {{"motion", "slice"}, {"cut_length_mm", 25}}},
             {"checkpoint_cuts", checkpoint_cuts}}}},
          {"arms",
           {{{"blade", "A"}, {"edge", edge}, {"cutting", 0}},
            {{"blade", "B"}, {"edge", edge}, {"cutting", 0}}}},
          {"reading", {{"kind", "thread_push"}, {"repeats", 7}}},
          {"start_gate", {{"target_reading", 104}, {"tolerance_fraction", 0.12}}},
          {"stop", {{"level", 4}, {"force_cap_newton", 60}}},
          {"runs_each", 2},
          {"order_seed", 7},
          {"runs",
           {{{"arm", 0}, {"block", 1}, {"order", 1}},
            {{"arm", 1}, {"block", 1}, {"order", 2}},
            {{"arm", 1}, {"block", 2}, {"order", 3}},
            {{"arm", 0}, {"block", 2}, {"order", 4}}}}};
}

class AskedApp : public ::testing::Test {
 protected:
  // patience: of a change, for another that is being written.
  explicit AskedApp(std::chrono::milliseconds patience = std::chrono::milliseconds(50))
      : open_({.program_version = "0.1.0",
               .folder = folder_.string(),
               .notebook = std::nullopt,
               .who = "R.",
               .machine_words = "bench-2, process 4711",
               .utc_now = [] { return std::string("2026-11-26T12:00:00Z"); },
               .patience = patience}) {
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directory(folder_);
    add_app_routes({.routes = routes_, .works = works_, .open = open_, .ask_to_stop = [this] {
                      ++asked_to_stop_;
                    }});
  }
  ~AskedApp() override {
    works_.stop();
    std::filesystem::remove_all(folder_);
  }

  // path: after /api/v1.
  [[nodiscard]] HttpResponse asked(const std::string& method,
                                   const std::string& path,
                                   const std::string& body = {}) {
    const std::size_t query = path.find('?');
    HttpRequest request{.method = method,
                        .path = "/api/v1" + path.substr(0, query),
                        .query = {},
                        .headers = headers_,
                        .body = body};
    const auto notebook = open_.told().notebook;
    if (says_which_ && notebook) {
      request.headers.push_back({.name = "x-keenfall-notebook", .text = notebook->id});
    }
    if (query != std::string::npos) {
      const std::string text = path.substr(query + 1);
      const std::size_t equals = text.find('=');
      request.query.push_back({.name = text.substr(0, equals), .text = text.substr(equals + 1)});
    }
    return routes_.answer(request);
  }

  // Of a success, held against the shape; the test fails otherwise.
  json got(const std::string& method,
           const std::string& path,
           const std::string& shape,
           const json& body = nullptr) {
    const HttpResponse answer = asked(method, path, body.is_null() ? "" : body.dump());
    EXPECT_LT(answer.status, 300) << path << ": " << answer.body.substr(0, 500);
    json document = json::parse(answer.body, nullptr, false);
    EXPECT_EQ(wire::testing::faults_against_api(document, shape), "") << path;
    return document;
  }

  // Of a refusal: the first problem; the test fails where it is another status.
  json refused(int status, const std::string& method, const std::string& path, const json& body) {
    const HttpResponse answer = asked(method, path, body.is_null() ? "" : body.dump());
    EXPECT_EQ(answer.status, status) << path << ": " << answer.body.substr(0, 500);
    json document = json::parse(answer.body, nullptr, false);
    EXPECT_EQ(wire::testing::faults_against_api(document, "Problems"), "") << path;
    return document["problems"][0];
  }

  // What a page would take back, as it says.
  json undone(const json& body = json::object()) {
    const std::int64_t entry = got("GET", "/home", "Home")["undoes"]["entry"];
    return got("POST", "/journal/" + std::to_string(entry) + "/undo", "Changed", body);
  }

  // What the work of a 202 comes to; the test fails where it fails.
  HttpResponse result_of(const json& started) {
    const std::string id = started["work"]["id"];
    for (;;) {
      const auto told = works_.told(id);
      if (told->state == wire::WorkState::done) return *works_.result(id);
      if (told->state == wire::WorkState::failed || told->state == wire::WorkState::cancelled) {
        ADD_FAILURE() << wire::work_to_json(*told);
        return {};
      }
      std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
  }

  // The uid of the demo's trial, in a notebook that is open now.
  std::string with_demo() {
    (void)got("POST", "/notebooks", "App", {{"how", "demo"}});
    return got("GET", "/home", "Home")["trials"][0]["uid"];
  }

  std::filesystem::path folder_ = std::filesystem::temp_directory_path() /
                                  ("keenfall_app_" + std::to_string(getpid()) + "_" +
                                   ::testing::UnitTest::GetInstance()->current_test_info()->name());
  int asked_to_stop_ = 0;
  workbench::OpenApp open_;
  std::vector<NamedText> headers_;  // of every request
  bool says_which_ = true;          // every request says that it means the open notebook
  Routes routes_;
  Works works_;
};

}  // namespace keenfall::server::testing
