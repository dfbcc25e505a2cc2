#include "server/asked_app_test.h"

#include "workbench/notebook_changes.h"
#include "workbench/notebook_opening.h"

#include <fstream>
#include <set>

namespace keenfall::server {
namespace {

using testing::json;

json a_plan() { return testing::a_plan({0, 10, 20, 40, 80}); }

json what_is_asked(double margin = 1.25) {
  return {{"claims", {{{"words", "B outlasts A"}, {"worth_it_margin", margin}}}},
          {"plan", a_plan()}};
}

class AskingRoutes : public testing::AskedApp {
 protected:
  void with_notebook() {
    (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
  }
  // In a notebook that is made for it. Out: its uid.
  std::string begun(const json& asked = nullptr) {
    with_notebook();
    json trial = {{"name", "Rope"}};
    if (!asked.is_null()) trial["asked"] = asked;
    return got("POST", "/trials", "Trial", trial)["uid"];
  }
  std::string sealed_trial() {
    const std::string uid = begun(what_is_asked());
    (void)got("POST", "/trials/" + uid + "/seal", "Trial");
    return uid;
  }
  void take(const std::string& rows) {
    const auto table = folder_ / "rows.csv";
    std::ofstream(table) << "blade,medium,run,cuts,reading\n" << rows;
    const auto taken = workbench::take_into(
        {.notebook = *open_.notebook(), .tables = {table.string()}, .trial = "Rope"}, open_.hand());
    ASSERT_TRUE(taken) << taken.error().front().sentence;
  }
  void cut_it() {
    take(
        "A,sisal rope,1,0,100\nA,sisal rope,1,10,130\nA,sisal rope,1,20,160\nA,sisal "
        "rope,1,40,230\n"
        "A,sisal rope,2,0,104\nA,sisal rope,2,10,128\nA,sisal rope,2,20,165\nA,sisal "
        "rope,2,40,242\n"
        "B,sisal rope,1,0,101\nB,sisal rope,1,10,118\nB,sisal rope,1,20,131\nB,sisal "
        "rope,1,40,170\n"
        "B,sisal rope,2,0,99\nB,sisal rope,2,10,115\nB,sisal rope,2,25,135\nB,sisal "
        "rope,2,40,168\n");
  }
  // With the revision that the trial tells now.
  json as_seen(const std::string& uid, json asked) {
    const json page = json::parse(this->asked("GET", "/trials/" + uid).body);
    asked["revision"] = page.contains("asked") ? page["asked"]["revision"] : json("none");
    return asked;
  }
  json page_of(const std::string& uid) { return got("GET", "/trials/" + uid, "Trial"); }
  json put_asked(const std::string& uid, const json& asked) {
    return got("PUT", "/trials/" + uid + "/asked", "Trial", as_seen(uid, asked));
  }
  json refused_asked(int status, const std::string& uid, const json& asked) {
    return refused(status, "PUT", "/trials/" + uid + "/asked", as_seen(uid, asked));
  }
  static std::string sentence_of(const json& problem) { return problem["sentence"]; }
};

TEST_F(AskingRoutes, BeginATrialWithNothingButAName) {
  with_notebook();

  const HttpResponse answer = asked("POST", "/trials", R"({"name": "Rope in autumn"})");

  const json trial = json::parse(answer.body);
  EXPECT_EQ(answer.status, 201);
  EXPECT_EQ(wire::testing::faults_against_api(trial, "Trial"), "");
  EXPECT_EQ(trial["name"], "Rope in autumn");
  EXPECT_TRUE(trial["recorded"]["runs"].empty());
  EXPECT_FALSE(trial["asked"].contains("plan"));
  EXPECT_EQ(trial["next"]["step"], "ask");
}

TEST_F(AskingRoutes, KeepWhatIsAskedAndPlannedAsItWasSent) {
  const std::string uid = begun(what_is_asked());

  json kept = page_of(uid)["asked"];

  json plan = a_plan();
  plan["counted"] = "cuts";
  for (json& arm : kept["plan"]["arms"]) {
    arm.erase("words");
    arm["edge"].erase("words");
  }
  EXPECT_EQ(kept["claims"], what_is_asked()["claims"]);
  EXPECT_EQ(kept["plan"], plan);
  EXPECT_FALSE(kept.contains("sealed_at_utc"));
}

TEST_F(AskingRoutes, TellAPlanInOtherUnitsAndKeepItAsItWas) {
  json asked = what_is_asked();
  asked["plan"]["arms"][0]["edge"]["thickness_behind_edge_mm"] = 0.38;
  headers_ = {{.name = "x-keenfall-told-in", .text = "N,in"}};
  const std::string uid = begun(asked);
  json answered = page_of(uid)["asked"];
  answered.erase("flaws");
  answered.erase("advice");

  const json told = put_asked(uid, answered)["asked"]["plan"];

  EXPECT_EQ(told["arms"][0]["words"], "A (17° per side, 0.015 in behind the edge)");
  EXPECT_EQ(told["reading"]["told_unit"], "N");
  EXPECT_FALSE(told["reading"].contains("unit"));
  EXPECT_EQ(told["start_gate"]["target_reading"], 104);
  headers_.clear();
  const json recorded = page_of(uid)["asked"]["plan"];
  EXPECT_EQ(recorded["arms"][0]["words"], "A (17° per side, 0.38 mm behind the edge)");
  EXPECT_FALSE(recorded["reading"].contains("told_unit"));
}

TEST_F(AskingRoutes, TakeTheirOwnAnswerBack) {
  const std::string uid = begun(what_is_asked());
  json answered = page_of(uid)["asked"];
  answered.erase("flaws");
  answered.erase("advice");

  const json again = put_asked(uid, answered);

  EXPECT_EQ(again["asked"]["plan"], answered["plan"]);
  EXPECT_EQ(again["last_entry"], 1);  // nothing changed
}

TEST_F(AskingRoutes, BringNewBladesIntoTheKitInOneChangeThatIsUndoneAtOnce) {
  const std::string uid = begun();

  (void)put_asked(uid, what_is_asked());
  const json taken_back = undone();

  EXPECT_EQ(taken_back["what"], "undo: plan Rope");
  EXPECT_FALSE(page_of(uid)["asked"].contains("plan"));
}

TEST_F(AskingRoutes, SayWhatADraftLacksAndOnlyThenWhatIsUnwise) {
  const std::string uid = begun();
  json lacking = what_is_asked();
  lacking["claims"] = json::array();
  lacking["plan"]["arms"].erase(1);
  lacking["plan"]["runs"] = json::array();
  json unwise = what_is_asked();
  unwise["plan"].erase("start_gate");

  const json first = put_asked(uid, lacking)["asked"];
  const json second = put_asked(uid, unwise)["asked"];

  ASSERT_EQ(first["flaws"].size(), 1U) << first;
  EXPECT_EQ(first["flaws"][0]["column"], "claims");
  EXPECT_TRUE(first["advice"].empty());
  EXPECT_TRUE(second["flaws"].empty()) << second["flaws"];
  EXPECT_NE(second["advice"].dump().find("There is no start gate"), std::string::npos);
}

TEST_F(AskingRoutes, SealWithTheTimeAndSayWhatComesNext) {
  const std::string uid = begun(what_is_asked());

  const json trial = got("POST", "/trials/" + uid + "/seal", "Trial");

  EXPECT_EQ(trial["asked"]["sealed_at_utc"], "2026-11-26T12:00:00Z");
  EXPECT_FALSE(trial["asked"].contains("flaws"));
  const json card = got("GET", "/home", "Home")["trials"][0];
  EXPECT_EQ(card["claim"], "B outlasts A");
  EXPECT_EQ(card["steps"][1]["words"], "The plan was sealed before the first cut.");
  EXPECT_EQ(card["next"]["words"],
            "Now sharpen, cut and read as planned; then enter the readings.");
}

TEST_F(AskingRoutes, SealAPlanOfOneArmWhichMeasuresOnesOwnRuns) {
  json own = what_is_asked();
  own["plan"]["arms"].erase(1);
  own["plan"]["runs_each"] = 3;
  own["plan"]["runs"] = {{{"arm", 0}, {"block", 1}, {"order", 1}},
                         {{"arm", 0}, {"block", 2}, {"order", 2}},
                         {{"arm", 0}, {"block", 3}, {"order", 3}}};
  const std::string uid = begun(own);

  const json advice = page_of(uid)["asked"]["advice"];
  const json trial = got("POST", "/trials/" + uid + "/seal", "Trial");

  EXPECT_TRUE(sentence_of({{"sentence", advice[0]}}).starts_with("One arm compares nothing"));
  EXPECT_TRUE(trial["asked"].contains("sealed_at_utc"));
}

TEST_F(AskingRoutes, SayHowMuchRunsScatterWhereThatWasThePlan) {
  json own = what_is_asked();
  own["plan"]["arms"].erase(1);
  own["plan"]["runs"] = json::array();
  const std::string uid = begun(own);
  take(
      "A,sisal rope,1,0,100\nA,sisal rope,1,10,130\nA,sisal rope,1,20,160\nA,sisal rope,1,40,230\n"
      "A,sisal rope,2,0,104\nA,sisal rope,2,10,128\nA,sisal rope,2,20,165\nA,sisal "
      "rope,2,40,242\n");
  const std::string judgements = "/trials/" + uid + "/judgements";

  const json of_one = got("POST", judgements, "Judged", {{"engine", "quick"}});
  take("B,sisal rope,1,0,101\nB,sisal rope,1,10,118\nB,sisal rope,1,20,131\n");
  const json of_two = got("POST", judgements, "Judged", {{"engine", "quick"}});

  EXPECT_TRUE(
      of_one["own_scatter_words"].get<std::string>().starts_with("Your runs of A scatter by"));
  EXPECT_FALSE(of_two.contains("own_scatter_words"));
}

TEST_F(AskingRoutes, RefuseToSealWithEverythingThatIsLacking) {
  json lacking = what_is_asked();
  lacking["claims"] = json::array();
  lacking["plan"]["cuttings"][0]["checkpoint_cuts"] = {0, 10};
  const std::string uid = begun(lacking);

  const HttpResponse answer = asked("POST", "/trials/" + uid + "/seal");

  const json problems = json::parse(answer.body)["problems"];
  EXPECT_EQ(answer.status, 400);
  ASSERT_EQ(problems.size(), 2U) << problems;
  EXPECT_EQ(problems[0]["column"], "claims");
  EXPECT_EQ(problems[1]["column"], "cuttings[0].checkpoint_cuts");
  EXPECT_FALSE(page_of(uid)["asked"].contains("sealed_at_utc"));
}

TEST_F(AskingRoutes, RefuseToSealWhereNothingWasEverPlanned) {
  with_notebook();
  take("A,felt,1,0,100\nA,felt,1,10,150\n");
  const std::string uid = got("GET", "/home", "Home")["trials"][0]["uid"];

  EXPECT_EQ(sentence_of(refused(400, "POST", "/trials/" + uid + "/seal", nullptr)),
            "The trial Rope has no plan to seal.");
}

TEST_F(AskingRoutes, ChangeNothingOfWhatIsSealed) {
  const std::string uid = sealed_trial();

  const json again = refused(409, "POST", "/trials/" + uid + "/seal", nullptr);
  const json changed = refused_asked(409, uid, what_is_asked(2));

  EXPECT_TRUE(sentence_of(again).starts_with("The plan of Rope was sealed at 2026-11-26"));
  EXPECT_EQ(sentence_of(changed), sentence_of(again));
  EXPECT_EQ(page_of(uid)["asked"]["claims"], what_is_asked()["claims"]);
}

TEST_F(AskingRoutes, SayHowTheSealIsTakenBackUntilSomethingWasRead) {
  const std::string uid = sealed_trial();
  const json sealing = page_of(uid)["asked"]["sealing"];
  EXPECT_EQ(sealing, (json{{"entry", 2}, {"is_held", false}}));

  (void)got("POST", "/journal/2/undo", "Changed", json::object());
  EXPECT_FALSE(page_of(uid)["asked"].contains("sealing"));
  (void)put_asked(uid, what_is_asked(2));
  (void)got("POST", "/trials/" + uid + "/seal", "Trial");
  cut_it();

  EXPECT_EQ(page_of(uid)["asked"]["sealing"], (json{{"entry", 5}, {"is_held", true}}));
}

TEST_F(AskingRoutes, ShowWhatWasDoneOtherwiseThanPlannedAndWhatTheRunsSayThemselves) {
  const std::string uid = sealed_trial();
  EXPECT_TRUE(page_of(uid)["deviations"].empty());  // not cut yet is no departure

  cut_it();

  const json deviations = page_of(uid)["deviations"];
  ASSERT_EQ(deviations.size(), 2U) << deviations;
  EXPECT_EQ(deviations[0],
            "1 of 4 runs was read at other cuts than planned: run 2 of B on sisal rope.");
  EXPECT_EQ(deviations[1],
            "In 4 of 4 runs fewer readings are recorded at a checkpoint than the 7 planned: run 1 "
            "of A on sisal rope is the first of them.");
}

TEST_F(AskingRoutes, JudgeByTheMarginOfASealedClaimAndByNoDraft) {
  const std::string uid = begun(what_is_asked());
  cut_it();
  const std::string judgements = "/trials/" + uid + "/judgements";
  const auto margin = [&] {
    return got("POST", judgements, "Judged", {{"engine", "quick"}})["question"]["worth_it_margin"];
  };

  const json of_draft = margin();
  (void)got("POST", "/trials/" + uid + "/seal", "Trial");
  const json of_sealed = margin();

  EXPECT_EQ(of_draft, 1.5);
  EXPECT_EQ(of_sealed, 1.25);
}

TEST_F(AskingRoutes, SayInTheReportWhatWasPlanned) {
  const std::string uid = sealed_trial();
  cut_it();

  const json started =
      json::parse(asked("POST", "/trials/" + uid + "/reports", R"({"format": "html"})").body);

  EXPECT_NE(result_of(started).body.find("Claimed: &quot;B outlasts A&quot;"), std::string::npos);
}

TEST_F(AskingRoutes, SayThatAPlanWasSealedOnlyAfterRunsHadBeenRead) {
  const std::string uid = begun(what_is_asked());
  cut_it();

  const json trial = got("POST", "/trials/" + uid + "/seal", "Trial");

  EXPECT_EQ(trial["steps"][0]["words"], "The question was sealed after runs had been read.");
  EXPECT_EQ(trial["deviations"][0], "The plan was sealed when 4 runs had been read already.");
}

TEST_F(AskingRoutes, CallATrialOtherwiseAndHaveItsNameBack) {
  const std::string uid = begun();
  const std::string name = "/trials/" + uid + "/name";

  const json changed = got("PUT", name, "Changed", {{"name", "Rope in autumn"}});
  const json same = got("PUT", name, "Changed", {{"name", "Rope in autumn"}});

  EXPECT_EQ(page_of(uid)["name"], "Rope in autumn");
  EXPECT_EQ(changed["entry"], 2);
  EXPECT_EQ(same["entry"], 0);
  EXPECT_EQ(same["last_entry"], 2);
  (void)undone();
  EXPECT_EQ(page_of(uid)["name"], "Rope");
}

TEST_F(AskingRoutes, RefuseANameThatIsBlankOrTaken) {
  const std::string uid = begun();
  (void)got("POST", "/trials", "Trial", {{"name", "Felt"}});

  const json taken_again = refused(409, "POST", "/trials", {{"name", "Rope"}});
  const json taken = refused(409, "PUT", "/trials/" + uid + "/name", {{"name", "Felt"}});
  const json blank = refused(400, "POST", "/trials", {{"name", " "}});
  const json nameless = refused(400, "PUT", "/trials/" + uid + "/name", json::object());

  EXPECT_EQ(sentence_of(taken_again), "The notebook has a trial called \"Rope\" already.");
  EXPECT_EQ(sentence_of(taken), "The notebook has a trial called \"Felt\" already.");
  EXPECT_EQ(sentence_of(blank), "“name” is needed.");
  EXPECT_EQ(sentence_of(nameless), "“name” is needed.");
}

TEST_F(AskingRoutes, NameEveryFieldOfAPlanThatCannotBeUsed) {
  const std::string uid = begun();
  json wrong = what_is_asked();
  wrong["claims"][0]["worth_it_margin"] = 1;
  wrong["plan"]["arms"][1]["edge"]["bevel_angle_per_side_deg"] = 90;
  wrong["plan"]["runs_each"] = "six";
  wrong["plan"]["runs"][0]["bloc"] = 1;
  wrong["sealed_at_utc"] = "2026-11-26T12:00:00Z";

  const HttpResponse answer = asked("PUT", "/trials/" + uid + "/asked", as_seen(uid, wrong).dump());

  std::set<std::string> columns;
  const json problems = json::parse(answer.body)["problems"];
  for (const json& problem : problems) columns.insert(problem["column"]);
  EXPECT_EQ(answer.status, 400);
  EXPECT_EQ(columns,
            (std::set<std::string>{"claims[0].worth_it_margin",
                                   "plan.arms[1].edge.bevel_angle_per_side_deg",
                                   "plan.runs_each",
                                   "plan.runs[0].bloc",
                                   "sealed_at_utc"}));
  EXPECT_FALSE(page_of(uid)["asked"].contains("plan"));
}

TEST_F(AskingRoutes, RefuseAPlanWhosePartsDoNotFitTogether) {
  const std::string uid = begun();
  json nowhere = what_is_asked();
  nowhere["plan"]["arms"][1]["cutting"] = 1;
  json falling = what_is_asked();
  falling["plan"]["cuttings"][0]["checkpoint_cuts"] = {0, 20, 10};

  EXPECT_EQ(sentence_of(refused_asked(400, uid, nowhere)),
            "The arm of B is in a way of cutting that the plan has not.");
  EXPECT_EQ(sentence_of(refused_asked(400, uid, falling)),
            "The checkpoints in sisal rope do not rise from one to the next.");
}

TEST_F(AskingRoutes, RefuseAPlanThatCountsOtherwiseThanTheRuns) {
  const std::string uid = begun();
  cut_it();
  json strokes = what_is_asked();
  strokes["plan"]["counted"] = "strokes";

  EXPECT_EQ(sentence_of(refused_asked(409, uid, strokes)),
            "The runs of Rope count cuts, and the plan counts strokes.");
}

TEST_F(AskingRoutes, RefuseABodyThatIsNone) {
  const std::string uid = begun();

  EXPECT_EQ(asked("POST", "/trials", "{name").status, 409);
  EXPECT_EQ(asked("PUT", "/trials/" + uid + "/asked", "[]").status, 409);
  EXPECT_EQ(sentence_of(refused_asked(400, uid, json::object())), "“claims” is needed.");
}

TEST_F(AskingRoutes, SealAPlanThatReadsAKindOfOnesOwnAndNoneThatNobodyKnows) {
  json own_kind = what_is_asked();
  own_kind["plan"]["reading"]["kind"] = "flank_wear";
  const std::string uid = begun(own_kind);
  const std::string seal = "/trials/" + uid + "/seal";

  const json unknown = refused(400, "POST", seal, nullptr);
  (void)got(
      "POST",
      "/kit/kinds",
      "Kit",
      {{"name", "flank_wear"}, {"words", "flank wear"}, {"unit", "mm"}, {"keener_when", "lower"}});
  const json sealed = got("POST", seal, "Trial");

  EXPECT_EQ(sentence_of(unknown), "Nobody knows a kind of reading called flank_wear.");
  EXPECT_EQ(unknown["column"], "reading.kind");
  EXPECT_TRUE(sealed["asked"].contains("sealed_at_utc"));
}

TEST_F(AskingRoutes, SealWhatIsNotFoundByTheDigitsOfItsDigest) {
  const std::string uid = begun(what_is_asked());
  (void)got("POST", "/trials/" + uid + "/seal", "Trial");
  EXPECT_EQ(got("GET", "/search?text=seal sha-256", "Found")["found"].size(), 1U);

  for (char c = '0'; c <= 'f'; c = c == '9' ? 'a' : static_cast<char>(c + 1)) {
    const std::string digit(1, c);
    EXPECT_TRUE(got("GET", "/search?text=seal sha-256 " + digit + "7", "Found")["found"].empty());
  }
}

TEST_F(AskingRoutes, SayWhoWritesTheNotebookWhereItIsBeingWritten) {
  const std::string uid = begun(what_is_asked());
  const std::string trial = "/trials/" + uid;
  const auto being_written =
      *workbench::opened_to_write(*open_.notebook(), {.who = "M.", .machine_words = "bench-3"});

  const json begun_beside = refused(503, "POST", "/trials", {{"name", "x"}});
  (void)refused_asked(503, uid, what_is_asked());
  (void)refused(503, "POST", trial + "/seal", nullptr);
  (void)refused(503, "PUT", trial + "/name", {{"name", "x"}});

  EXPECT_NE(sentence_of(begun_beside).find("M. on bench-3"), std::string::npos) << begun_beside;
  EXPECT_EQ(page_of(uid)["name"], "Rope");  // reading goes on
}

TEST_F(AskingRoutes, KnowNoTrialByAnotherUid) {
  with_notebook();

  const std::string unknown = "The notebook has no such trial, or not any more.";
  EXPECT_EQ(sentence_of(refused_asked(404, "abc", what_is_asked())), unknown);
  EXPECT_EQ(sentence_of(refused(404, "POST", "/trials/abc/seal", nullptr)), unknown);
  EXPECT_EQ(sentence_of(refused(404, "PUT", "/trials/abc/name", {{"name", "x"}})), unknown);
}

TEST_F(AskingRoutes, SayThatNoNotebookIsOpen) {
  const std::string none = "No notebook is open.";
  EXPECT_EQ(sentence_of(refused(400, "POST", "/trials", {{"name", "x"}})), none);
  EXPECT_EQ(sentence_of(refused_asked(400, "abc", what_is_asked())), none);
  EXPECT_EQ(sentence_of(refused(400, "POST", "/trials/abc/seal", nullptr)), none);
  EXPECT_EQ(sentence_of(refused(400, "PUT", "/trials/abc/name", {{"name", "x"}})), none);
}

// Sealing a claim with a margin of its own makes the trial's own question another one.
TEST_F(AskingRoutes, AreCountedWhereTheQuestionIsTheTrialsNow) {
  const std::string uid = begun(what_is_asked(4));
  cut_it();
  const auto counted = [&] {
    const HttpResponse answer =
        asked("POST", "/trials/" + uid + "/judgements", R"({"engine": "full"})");
    const json document = json::parse(answer.body);
    return json::parse(answer.status == 202 ? result_of(document).body : answer.body)
        .value("counted_words", "");
  };

  EXPECT_EQ(counted(), "Counted as look 1 at this trial, with its answer.");
  (void)got("POST", "/trials/" + uid + "/seal", "Trial");

  EXPECT_EQ(counted(), "Counted as look 2 at this trial, with its answer.");
  EXPECT_EQ(page_of(uid)["looks"].size(), 2U);
}

}  // namespace
}  // namespace keenfall::server
