// For tests: an app on a folder of its own as it is served, asked over its sockets.
#pragma once

#include "server/app.h"
#include "server/app_parts.h"
#include "server/own_folder_test.h"
#include "server/raw_client_test.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <chrono>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::server::testing {

class ServedApp : public ::testing::Test {
 protected:
  // With the demo open. patience: of a change, for another that is being written.
  explicit ServedApp(std::chrono::milliseconds patience = std::chrono::milliseconds(5000))
      : open_({.program_version = "0.1.0",
               .folder = folder_.path(),
               .notebook = std::nullopt,
               .who = "R.",
               .machine_words = "bench-2, process 4711",
               .utc_now = [] { return std::string("2026-11-26T12:00:00Z"); },
               .patience = patience}) {
    add_app_routes(
        {.routes = app_.routes(), .works = app_.works(), .open = open_, .ask_to_stop = [] {}});
    (void)app_.begin().value();
    EXPECT_EQ(asked("POST /api/v1/notebooks", R"({"how": "demo"})").status, 200);
    const auto notebook = nlohmann::json::parse(asked("GET /api/v1/app").body)["notebook"];
    path_ = notebook["path"];
    meant_ = "X-Keenfall-Notebook: " + std::string(notebook["id"]) + "\r\n";
  }
  ~ServedApp() override { app_.stop(); }

  RawAnswer asked(const std::string& begin, const std::string& body = "") {
    return answer_to(app_.port(),
                     request_of(begin,
                                app_.port(),
                                "X-Keenfall-Key: " + app_.key() + "\r\n" + meant_ +
                                    "Content-Length: " + std::to_string(body.size()) + "\r\n",
                                body));
  }

  std::chrono::milliseconds slowest_of(const std::vector<std::string>& requests) {
    std::chrono::milliseconds slowest{0};
    for (const std::string& request : requests) {
      RawAnswer answer;
      slowest = std::max(slowest, time_of([&] { answer = asked(request); }));
      EXPECT_EQ(answer.status, 200) << request;
    }
    return slowest;
  }

  OwnFolder folder_{"served"};
  workbench::OpenApp open_;
  App app_{{.port = 0}};
  std::string path_;   // of the notebook
  std::string meant_;  // the header that says which notebook
};

}  // namespace keenfall::server::testing
