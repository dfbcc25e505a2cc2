#include "server/asked_app_test.h"

namespace keenfall::server {
namespace {

using testing::json;

class TrialRoutes : public testing::AskedApp {};

TEST_F(TrialRoutes, ShowATrialAsItWasRecorded) {
  const std::string uid = with_demo();

  const json trial = got("GET", "/trials/" + uid, "Trial");

  EXPECT_EQ(trial["uid"], uid);
  EXPECT_EQ(trial["recorded"]["runs"].size(), 37U);
  EXPECT_TRUE(trial["looks"].empty());
  EXPECT_FALSE(trial["deviations"].empty());
  EXPECT_EQ(trial["last_entry"], 1);
}

TEST_F(TrialRoutes, TellReadingsAndLengthsInTheUnitsAskedFor) {
  const std::string uid = with_demo();
  const json recorded = got("GET", "/trials/" + uid, "Trial")["recorded"];
  headers_ = {{.name = "x-keenfall-told-in", .text = "N,in"}};

  const json told = got("GET", "/trials/" + uid, "Trial")["recorded"];

  EXPECT_EQ(recorded["series"][0]["unit"], "gf");
  EXPECT_EQ(told["series"][0]["unit"], "N");
  const double gf = recorded["runs"][0]["readings"][0]["reading"];
  EXPECT_NEAR(told["runs"][0]["readings"][0]["reading"].get<double>(), gf * 9.80665e-3, 0.005);
  EXPECT_NE(recorded["runs"][0]["method_words"].get<std::string>().find("100 mm"),
            std::string::npos);
  EXPECT_NE(told["runs"][0]["method_words"].get<std::string>().find("3.94 in"), std::string::npos);
}

TEST_F(TrialRoutes, RefuseUnitsThatNothingIsToldIn) {
  const std::string uid = with_demo();
  headers_ = {{.name = "x-keenfall-told-in", .text = "stone"}};

  for (const std::string path : {"", "/answer"}) {
    const json problem = refused(400, "GET", "/trials/" + uid + path, nullptr);
    EXPECT_EQ(problem["sentence"], "Nothing is told in “stone”.");
    EXPECT_EQ(problem["column"], "X-Keenfall-Told-In");
  }
  (void)refused(400, "POST", "/trials/" + uid + "/judgements", {{"engine", "quick"}});
  (void)refused(400, "POST", "/trials/" + uid + "/reports", {{"format", "html"}});
}

TEST_F(TrialRoutes, KnowNoTrialByAnotherUid) {
  (void)with_demo();

  for (const std::string path : {"", "/answer"}) {
    EXPECT_EQ(refused(404, "GET", "/trials/abc" + path, nullptr)["sentence"],
              "The notebook has no such trial, or not any more.");
  }
  (void)refused(404, "POST", "/trials/abc/strikes", {{"run", 0}, {"reason", "slipped"}});
  (void)refused(404, "POST", "/trials/abc/judgements", {{"engine", "quick"}});
  (void)refused(404, "POST", "/trials/abc/judgements", {{"engine", "full"}});
  (void)refused(404, "POST", "/trials/abc/reports", {{"format", "html"}});
}

TEST_F(TrialRoutes, StrikeOneReadingACheckpointOrARun) {
  const std::string uid = with_demo();
  const std::string strikes = "/trials/" + uid + "/strikes";

  const json one =
      got("POST", strikes, "Changed", {{"run", 0}, {"reading", 3}, {"reason", "slipped"}});
  const json checkpoint =
      got("POST", strikes, "Changed", {{"run", 1}, {"cuts", 0}, {"reason", "burr"}});
  const json run = got("POST", strikes, "Changed", {{"run", 2}, {"reason", "spoiled"}});

  const json runs = got("GET", "/trials/" + uid, "Trial")["recorded"]["runs"];
  EXPECT_FALSE(runs[0]["readings"][2].contains("struck"));
  EXPECT_EQ(runs[0]["readings"][3]["struck"], "slipped");
  EXPECT_FALSE(runs[0]["readings"][4].contains("struck"));
  for (std::size_t i = 0; i < 7; ++i) EXPECT_EQ(runs[1]["readings"][i]["struck"], "burr");
  EXPECT_FALSE(runs[1]["readings"][7].contains("struck"));
  EXPECT_EQ(runs[2]["voided"], "spoiled");
  EXPECT_TRUE(one["what"].get<std::string>().starts_with("strike one reading at 0 in run"));
  EXPECT_TRUE(checkpoint["what"].get<std::string>().starts_with("strike at 0 in run"));
  EXPECT_TRUE(run["what"].get<std::string>().starts_with("void run"));
}

TEST_F(TrialRoutes, CorrectAReadingInTheUnitItIsTypedIn) {
  const std::string uid = with_demo();
  const std::string strikes = "/trials/" + uid + "/strikes";
  const json before = got("GET", "/trials/" + uid, "Trial")["recorded"]["runs"][0]["readings"];

  const json done = got(
      "POST",
      strikes,
      "Changed",
      {{"run", 0}, {"reading", 3}, {"reason", "digits swapped"}, {"instead", 1.5}, {"unit", "N"}});

  const json after = got("GET", "/trials/" + uid, "Trial")["recorded"]["runs"][0]["readings"];
  ASSERT_EQ(after.size(), before.size() + 1);
  EXPECT_EQ(after[3]["struck"], "digits swapped");
  EXPECT_EQ(after[3]["reading"], before[3]["reading"]);
  EXPECT_EQ(after[4]["cuts"], before[3]["cuts"]);
  EXPECT_NEAR(after[4]["reading"].get<double>(), 153, 0.1);  // told in gf, as its kind is
  EXPECT_EQ(after[5], before[4]);
  headers_ = {{.name = "x-keenfall-told-in", .text = "N"}};
  const json in_newtons = got("GET", "/trials/" + uid, "Trial")["recorded"]["runs"][0]["readings"];
  headers_.clear();
  EXPECT_EQ(in_newtons[4]["reading"], 1.5);
  EXPECT_TRUE(done["what"].get<std::string>().starts_with("correct ")) << done["what"];

  EXPECT_EQ(
      refused(
          409,
          "POST",
          strikes,
          {{"run", 0}, {"cuts", 0}, {"reason", "digits swapped"}, {"instead", 104}})["sentence"],
      "A single reading is corrected, and it is not said which.");
  EXPECT_EQ(
      refused(
          400,
          "POST",
          strikes,
          {{"run", 0}, {"reading", 0}, {"reason", "digits swapped"}, {"instead", 0}})["sentence"],
      "A thread push reading of 0 cannot be.");
}

TEST_F(TrialRoutes, RefuseToStrikeWithoutAReasonOrWhatIsNotThere) {
  const std::string strikes = "/trials/" + with_demo() + "/strikes";
  const auto sentence = [&](int status, const json& body) {
    return refused(status, "POST", strikes, body)["sentence"].get<std::string>();
  };

  EXPECT_EQ(sentence(400, {{"run", 0}, {"reason", " "}}), "“reason” is needed.");
  EXPECT_NE(sentence(400, {{"run", 0}, {"reason", "no"}}).find("is no reason"), std::string::npos);
  EXPECT_EQ(sentence(400, {{"run", 99}, {"reason", "slipped"}}),
            "The trial The matting bench has no such run.");
  EXPECT_NE(sentence(400, {{"run", 0}, {"reading", 999}, {"reason", "slipped"}})
                .find("There is no reading 999"),
            std::string::npos);
  EXPECT_EQ(sentence(409, {{"run", 0}, {"reading", 1}, {"cuts", 0}, {"reason", "slipped"}}),
            "A single reading is struck out, or all at a checkpoint.");
  EXPECT_EQ(sentence(400, {{"run", -1}, {"reason", "slipped"}}), "“run” cannot be used.");
}

TEST_F(TrialRoutes, RefuseAStrikeFromAPageThatIsOutOfDate) {
  const std::string strikes = "/trials/" + with_demo() + "/strikes";
  const json strike = {{"run", 0}, {"reading", 3}, {"reason", "slipped"}, {"of_entry", 1}};
  (void)got("POST", strikes, "Changed", strike);

  const json refusal = refused(
      409, "POST", strikes, {{"run", 0}, {"reading", 4}, {"reason", "slipped"}, {"of_entry", 1}});

  EXPECT_TRUE(refusal["sentence"].get<std::string>().starts_with("The notebook has changed since"));
}

}  // namespace
}  // namespace keenfall::server
