#include "server/asked_app_test.h"

namespace keenfall::server {
namespace {

using testing::json;

class SheetRoutes : public testing::AskedApp {
 protected:
  void with_notebook() {
    (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  }
};

TEST_F(SheetRoutes, KeepWhatIsTypedForWhoeverLooksNext) {
  with_notebook();
  const json cells = json::array({json::array({"blade", "A"}), json::array({"0", "104 / 10"})});
  EXPECT_EQ(got("GET", "/sheets/new", "TypedSheet"), json({{"revision", 0}}));

  const json kept = got("PUT", "/sheets/new", "KeptSheet", {{"goes_on_from", 0}, {"cells", cells}});
  const json sheet = got("GET", "/sheets/new", "TypedSheet");

  EXPECT_EQ(kept["revision"], 1);
  EXPECT_EQ(sheet["revision"], 1);
  EXPECT_EQ(sheet["cells"], cells);
  EXPECT_EQ(sheet["who"], "R.");
  EXPECT_EQ(got("GET", "/sheets/of-a-trial", "TypedSheet")["revision"], 0);
  EXPECT_TRUE(got("GET", "/journal", "Journal")["entries"].empty());
}

TEST_F(SheetRoutes, KeepNothingForATrialThatIsNotThere) {
  with_notebook();

  const json problem =
      refused(404, "PUT", "/sheets/of-a-trial", {{"goes_on_from", 0}, {"cells", {{"mine"}}}});

  EXPECT_EQ(problem["sentence"], "The notebook has no such trial, or not any more.");
  EXPECT_EQ(got("GET", "/sheets/of-a-trial", "TypedSheet")["revision"], 0);
}

TEST_F(SheetRoutes, RefuseToWriteOverWhatWasTypedElsewhere) {
  with_notebook();
  (void)got("PUT", "/sheets/new", "KeptSheet", {{"goes_on_from", 0}, {"cells", {{"mine"}}}});

  const json problem =
      refused(409, "PUT", "/sheets/new", {{"goes_on_from", 0}, {"cells", {{"theirs"}}}});

  EXPECT_EQ(problem["kind"], "conflicting");
  EXPECT_EQ(got("GET", "/sheets/new", "TypedSheet")["cells"], json({{"mine"}}));
}

TEST_F(SheetRoutes, ForgetWhatWasTakenInAndNothingThatWasTypedSince) {
  with_notebook();
  (void)got("PUT", "/sheets/new", "KeptSheet", {{"goes_on_from", 0}, {"cells", {{"one"}}}});
  (void)got("PUT", "/sheets/new", "KeptSheet", {{"goes_on_from", 1}, {"cells", {{"two"}}}});

  EXPECT_EQ(got("DELETE", "/sheets/new?revision=1", "KeptSheet")["revision"], 2);
  EXPECT_EQ(got("DELETE", "/sheets/new?revision=2", "KeptSheet")["revision"], 3);
  EXPECT_FALSE(got("GET", "/sheets/new", "TypedSheet").contains("cells"));
  EXPECT_EQ(refused(400, "DELETE", "/sheets/new", nullptr)["column"], "revision");
  EXPECT_EQ(refused(400, "DELETE", "/sheets/new?revision=x", nullptr)["column"], "revision");
}

TEST_F(SheetRoutes, RefuseWhatIsNoSheet) {
  with_notebook();

  const auto column = [this](const json& body) {
    return refused(400, "PUT", "/sheets/new", body)["column"];
  };
  EXPECT_EQ(column({{"goes_on_from", 0}, {"cells", {{1}}}}), "cells");
  EXPECT_EQ(column({{"goes_on_from", 0}, {"cells", "A"}}), "cells");
  EXPECT_EQ(column({{"goes_on_from", -1}, {"cells", {{"A"}}}}), "goes_on_from");
  EXPECT_EQ(column({{"cells", {{"A"}}}}), "goes_on_from");
}

// A table that was taken in with a slip: its entry is undone, and its cells are typed again.
class TableTakenBack : public SheetRoutes {
 protected:
  void SetUp() override { with_notebook(); }

  [[nodiscard]] static json tally(const std::string& blade) {
    return json::array({json::array({"blade", blade, blade}),
                        json::array({"medium", "rope", "rope"}),
                        json::array({"run", "1", "2"}),
                        json::array({"unit", "gf", "gf"}),
                        json::array({"cuts", "", ""}),
                        json::array({"0", "104 / 101", "99"}),
                        json::array({"10", "150", "148 struck: slipped"}),
                        json::array({"20", "210?", "205"})});
  }

  json take(const json& cells, const std::string& trial = "") {
    json table = {{"sources", {{{"name", "the typed sheet"}, {"cells", cells}}}},
                  {"choices", json::object()}};
    if (trial.empty()) {
      table["trial_name"] = "Rope";
    } else {
      table["trial"] = trial;
    }
    return got("POST", "/tables/take", "TakenTable", table);
  }
};

TEST_F(TableTakenBack, IsTheSheetOfANewTrialWhereItsTrialCameWithIt) {
  (void)take(tally("Gyuot"));

  const json back = got("POST", "/journal/1/take-back", "TakenBack", json::object());

  EXPECT_FALSE(back.contains("trial"));
  EXPECT_EQ(back["trial_name"], "Rope");
  EXPECT_EQ(back["changed"]["entry"], 2);
  const json sheet = got("GET", "/sheets/new", "TypedSheet");
  EXPECT_EQ(sheet["cells"], tally("Gyuot"));
  EXPECT_TRUE(got("GET", "/home", "Home")["trials"].empty());
  const std::string uid = take(tally("Gyuto"))["trial"];
  const json blades = got("GET", "/trials/" + uid, "Trial")["recorded"]["blades"];
  ASSERT_EQ(blades.size(), 1U);
  EXPECT_EQ(blades[0]["name"], "Gyuto");
}

TEST_F(TableTakenBack, IsWhatCameInByThatEntryAlone) {
  const std::string uid = take(tally("A"))["trial"];
  (void)take(tally("B"), uid);

  const json back = got("POST", "/journal/2/take-back", "TakenBack", json::object());

  EXPECT_EQ(back["trial"], uid);
  EXPECT_EQ(got("GET", "/sheets/" + uid, "TypedSheet")["cells"], tally("B"));
  EXPECT_EQ(got("GET", "/trials/" + uid, "Trial")["recorded"]["runs"].size(), 2U);
  EXPECT_TRUE(got("GET", "/journal", "Journal")["entries"][2]["took_a_table"]);
}

TEST_F(TableTakenBack, WritesOverNoSheetAndUndoesNothingThatOthersRestOn) {
  const std::string uid = take(tally("A"))["trial"];
  (void)got("PUT", "/sheets/new", "KeptSheet", {{"goes_on_from", 0}, {"cells", tally("C")}});
  EXPECT_TRUE(refused(409, "POST", "/journal/1/take-back", json::object())["sentence"]
                  .get<std::string>()
                  .starts_with("The sheet of a new trial holds what was typed"));
  (void)got("DELETE", "/sheets/new?revision=1", "KeptSheet");
  (void)got("POST",
            "/trials/" + uid + "/strikes",
            "Changed",
            {{"run", 0}, {"reading", 0}, {"reason", "slipped"}});

  (void)refused(409, "POST", "/journal/1/take-back", json::object());
  (void)refused(400, "POST", "/journal/2/take-back", json::object());

  EXPECT_FALSE(got("GET", "/sheets/new", "TypedSheet").contains("cells"));
  EXPECT_EQ(got("GET", "/trials/" + uid, "Trial")["recorded"]["runs"].size(), 2U);
}

}  // namespace
}  // namespace keenfall::server
