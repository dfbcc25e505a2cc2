#include "notebook/notebook.h"
#include "server/asked_app_test.h"

#include <gmock/gmock.h>

namespace keenfall::server {
namespace {

using testing::json;

class TableRoutes : public testing::AskedApp {
 protected:
  void SetUp() override {
    path_ =
        got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}})["notebook"]["path"];
  }
  [[nodiscard]] HttpResponse post(const std::string& route, const std::string& body) {
    return asked("POST", "/tables/" + route, body);
  }
  static std::string tally(const std::string& reading) {
    return json{{"sources",
                 {{{"name", "tally"},
                   {"cells",
                    {{"blade", "medium", "run", "cuts", "reading"},
                     {"A", "sisal", "1", "0", "104"},
                     {"A", "sisal", "1", "15", reading}}}}}}}
        .dump();
  }

  // 24,000 readings in more than a megabyte.
  static std::string large_table() {
    std::string rows = "blade,medium,run,cuts,reading\n";
    for (int run = 1; run <= 1200; ++run) {
      for (int cuts = 0; cuts < 20; ++cuts) {
        rows += "A,sisal from the roll that hangs beside the bench," + std::to_string(run) + "," +
                std::to_string(cuts) + ",104\n";
      }
    }
    return json{{"sources", {{{"name", "tally.csv"}, {"text", rows}}}}}.dump();
  }
  json begun(const std::string& route) {
    const HttpResponse answer = post(route, large_table());
    EXPECT_EQ(answer.status, 202) << answer.body.substr(0, 500);
    return json::parse(answer.body);
  }

  std::string path_;
};

class TableRoutesWithoutNotebook : public TableRoutes {
 protected:
  void SetUp() override {}
};

TEST_F(TableRoutes, AMistypedCellIsMarkedAndNothingIsChanged) {
  const HttpResponse answer = post("read", tally("1o7"));

  ASSERT_EQ(answer.status, 200);
  const json read = json::parse(answer.body);
  ASSERT_EQ(read["problems"].size(), 1U);
  const json& problem = read["problems"][0];
  EXPECT_EQ(read["grids"][problem["grid"].get<std::size_t>()]["rows"]
                [problem["row"].get<std::size_t>()][problem["column"].get<std::size_t>()],
            "1o7");
  EXPECT_TRUE(notebook::Notebook::open_to_read(path_)->journal().empty());
}

TEST_F(TableRoutes, ATableIsTakenAndKnownAgain) {
  const json first = json::parse(post("take", tally("131")).body);
  const json again = json::parse(post("take", tally("131")).body);

  EXPECT_EQ(first["readings_added"], 2);
  EXPECT_EQ(first["changed"]["entry"], 1);
  EXPECT_EQ(again["runs_known"], 1);
  EXPECT_FALSE(again.contains("changed"));
}

TEST_F(TableRoutes, ABadTableIsRefusedWithItsSentence) {
  const HttpResponse answer = post("take", tally("1o7"));

  EXPECT_EQ(answer.status, 400);
  EXPECT_EQ(json::parse(answer.body)["problems"][0]["sentence"],
            "reading “1o7” has letters that look like digits; write digits only.");
}

TEST_F(TableRoutes, ATrialThatIsNotThereIsNotFound) {
  json body = json::parse(tally("131"));
  body["trial"] = std::string(32, 'f');

  EXPECT_EQ(post("read", body.dump()).status, 404);
  EXPECT_EQ(post("take", body.dump()).status, 404);
}

TEST_F(TableRoutes, WhatIsNotARequestIsRefused) {
  for (const char* body : {"", "[", "{}", "{\"sources\": []}"}) {
    EXPECT_EQ(post("read", body).status, 400) << body;
    EXPECT_EQ(post("take", body).status, 400) << body;
  }
}

TEST_F(TableRoutes, ATableIsReadBeforeAnybodyIsKeptFromWriting) {
  const auto being_written =
      *workbench::opened_to_write(path_, {.who = "M.", .machine_words = "bench-3"});

  EXPECT_EQ(post("take", tally("1o7")).status, 400);
  EXPECT_EQ(post("take", tally("131")).status, 503);
}

TEST_F(TableRoutes, ALargeTableIsReadAndTakenAsWork) {
  const json read = json::parse(result_of(begun("read")).body);
  const json taken = json::parse(result_of(begun("take")).body);

  EXPECT_EQ(wire::testing::faults_against_api(read, "TableRead"), "");
  EXPECT_EQ(read["taken"]["runs"], 1200);
  EXPECT_EQ(wire::testing::faults_against_api(taken, "TakenTable"), "");
  EXPECT_EQ(taken["readings_added"], 24'000);
}

TEST_F(TableRoutes, ALargeTableIsNotTakenOnceThatIsStopped) {
  const std::string id = begun("take")["work"]["id"];
  (void)works_.cancel(id);
  while (works_.told(id)->state == wire::WorkState::running) {
    std::this_thread::sleep_for(std::chrono::milliseconds(5));
  }

  EXPECT_EQ(works_.told(id)->state, wire::WorkState::cancelled);
  EXPECT_TRUE(notebook::Notebook::open_to_read(path_)->journal().empty());
}

TEST_F(TableRoutesWithoutNotebook, ATableIsReadAndNotTaken) {
  EXPECT_EQ(post("read", tally("131")).status, 200);
  EXPECT_THAT(post("take", tally("131")).body, ::testing::HasSubstr("No notebook is open"));
}

TEST_F(TableRoutes, TablesMayBeAsLargeAsFiles) {
  for (const char* route : {"read", "take"}) {
    EXPECT_EQ(
        routes_.body_bytes_of({.method = "POST", .path = std::string("/api/v1/tables/") + route}),
        kTableBodyBytes);
  }
}

}  // namespace
}  // namespace keenfall::server
