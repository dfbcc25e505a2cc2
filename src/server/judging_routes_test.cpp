#include "server/asked_app_test.h"
#include "workbench/notebook_changes.h"

#include <fstream>

namespace keenfall::server {
namespace {

using testing::json;

class JudgingRoutes : public testing::AskedApp {
 protected:
  json judged(const std::string& uid, const std::string& engine, const json& question) {
    const HttpResponse answer = asked("POST",
                                      "/trials/" + uid + "/judgements",
                                      json({{"engine", engine}, {"question", question}}).dump());
    json document = json::parse(answer.body);
    if (answer.status == 202) {
      EXPECT_EQ(wire::testing::faults_against_api(document, "Started"), "");
      document = json::parse(result_of(document).body);
    }
    EXPECT_EQ(wire::testing::faults_against_api(document, "Judged"), "");
    return document;
  }
  // The uid of a trial of 62 runs, in a notebook that is open now.
  std::string with_many_runs() {
    (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "many"}});
    std::ofstream table(folder_ / "many.csv");
    table << "blade,medium,run,cuts,reading\n";
    for (int run = 1; run <= 31; ++run) {
      for (const char* blade : {"A", "B"}) {
        for (const int cuts : {0, 10, 40}) {
          table << blade << ",rope," << run << "," << cuts << "," << 100 + 3 * cuts + run << "\n";
        }
      }
    }
    table.close();
    EXPECT_TRUE(workbench::take_into(
        {.notebook = *open_.notebook(), .tables = {(folder_ / "many.csv").string()}},
        open_.hand()));
    return got("GET", "/home", "Home")["trials"][0]["uid"];
  }
  static std::string said(const json& sentence) {
    std::string text;
    for (const json& words : sentence["words"]) text += words["text"];
    return text;
  }
};

TEST_F(JudgingRoutes, AnswerQuicklyAndCountNothing) {
  const std::string uid = with_demo();

  const json quick = judged(uid, "quick", json::object());

  EXPECT_EQ(quick["engine"], "quick");
  EXPECT_EQ(quick["of_entry"], 1);
  EXPECT_EQ(quick["question"]["worth_it_margin"], 1.5);
  EXPECT_EQ(quick["told"].size(), quick["report"]["judgements"].size());
  EXPECT_TRUE(said(quick["headline"][0]).starts_with("On new matting, C stays keen 3.2 times"));
  EXPECT_FALSE(quick.contains("counted_words"));
  EXPECT_TRUE(got("GET", "/trials/" + uid, "Trial")["looks"].empty());
}

TEST_F(JudgingRoutes, AnswerTheSameToTheQuestionThatWasAnswered) {
  const std::string uid = with_demo();
  for (const json& question : {json::object(), json({{"stop_level", 3}})}) {
    const json first = judged(uid, "quick", question);
    const json again = judged(uid, "quick", first["question"]);
    EXPECT_EQ(again["question"], first["question"]);
    EXPECT_EQ(again["headline"], first["headline"]);
    for (const char* part : {"arms", "comparisons"}) {
      EXPECT_EQ(again["report"]["judgements"][0]["judgement"][part],
                first["report"]["judgements"][0]["judgement"][part]);
    }
  }
}

TEST_F(JudgingRoutes, LookAtManyRunsAsWork) {
  const std::string uid = with_many_runs();
  EXPECT_EQ(got("GET", "/trials/" + uid + "/answer", "Answer")["not_judged"], true);

  const json started =
      got("POST", "/trials/" + uid + "/judgements", "Started", {{"engine", "quick"}});

  EXPECT_EQ(json::parse(result_of(started).body)["engine"], "quick");
}

// A page that is loaded again, or two pages of one trial.
TEST_F(JudgingRoutes, CountWhatTwoAskAtOnceAsOneLook) {
  const std::string uid = with_demo();
  const json first = got("POST", "/trials/" + uid + "/judgements", "Started", {{"engine", "full"}});
  const json second =
      got("POST", "/trials/" + uid + "/judgements", "Started", {{"engine", "full"}});

  const json one = json::parse(result_of(first).body);
  const json other = json::parse(result_of(second).body);

  EXPECT_EQ(one["counted_words"], "Counted as look 1 at this trial, with its answer.");
  EXPECT_EQ(other["counted_words"], one["counted_words"]);
  EXPECT_EQ(got("GET", "/trials/" + uid, "Trial")["looks"].size(), 1U);
  const json journal = got("GET", "/journal", "Journal")["entries"];
  EXPECT_EQ(journal[0]["is_look"], true);
  EXPECT_FALSE(journal[1].contains("is_look"));
}

TEST_F(JudgingRoutes, CountTheSameReadingsOnceAcrossAStrikeThatIsUndone) {
  const std::string uid = with_demo();
  (void)judged(uid, "full", json::object());
  const json struck = got("POST",
                          "/trials/" + uid + "/strikes",
                          "Changed",
                          {{"run", 0}, {"reading", 0}, {"reason", "thread slipped"}});
  const std::string entry = std::to_string(struck["entry"].get<int>());
  (void)got("POST", "/journal/" + entry + "/undo", "Changed", json::object());

  const json again = judged(uid, "full", json::object());

  EXPECT_EQ(again["counted_words"], "Counted as look 1 at this trial, with its answer.");
  EXPECT_EQ(got("GET", "/trials/" + uid, "Trial")["looks"].size(), 1U);
}

TEST_F(JudgingRoutes, HaveTheFullAnswerAtHandAgainOnceAStrikeIsUndone) {
  const std::string uid = with_demo();
  const json before = judged(uid, "full", json::object());
  const json struck = got("POST",
                          "/trials/" + uid + "/strikes",
                          "Changed",
                          {{"run", 0}, {"reading", 0}, {"reason", "thread slipped"}});
  EXPECT_EQ(judged(uid, "quick", json::object())["engine"], "quick");
  const std::string entry = std::to_string(struck["entry"].get<int>());
  (void)got("POST", "/journal/" + entry + "/undo", "Changed", json::object());

  const json again = judged(uid, "quick", json::object());

  EXPECT_EQ(again["engine"], "full");
  EXPECT_EQ(again["headline"], before["headline"]);
}

// A notebook that is being written to when the answer comes takes no look; the next asking does.
TEST_F(JudgingRoutes, CountLaterWhatCouldNotBeCountedAtFirst) {
  const std::string uid = with_demo();
  json missed;
  {
    const auto writing = workbench::opened_to_write(*open_.notebook(), open_.hand());
    ASSERT_TRUE(writing);
    missed = judged(uid, "full", json::object());
  }
  EXPECT_TRUE(missed["counted_words"].get<std::string>().starts_with("Not counted as a look"));

  const json counted = judged(uid, "full", json::object());

  EXPECT_EQ(counted["counted_words"], "Counted as look 1 at this trial, with its answer.");
  EXPECT_EQ(got("GET", "/trials/" + uid, "Trial")["looks"].size(), 1U);
}

TEST_F(JudgingRoutes, AnswerFullyOnceAndCountIt) {
  const std::string uid = with_demo();

  const json full = judged(uid, "full", json::object());
  const HttpResponse again =
      asked("POST", "/trials/" + uid + "/judgements", R"({"engine": "full", "question": {}})");

  EXPECT_EQ(full["engine"], "full");
  EXPECT_EQ(full["counted_words"], "Counted as look 1 at this trial, with its answer.");
  EXPECT_EQ(again.status, 200);
  EXPECT_EQ(json::parse(again.body)["counted_words"], full["counted_words"]);
  const json trial = got("GET", "/trials/" + uid, "Trial");
  ASSERT_EQ(trial["looks"].size(), 1U);
  std::size_t readings = 0;  // that count
  for (const json& run : trial["recorded"]["runs"]) {
    if (run.contains("voided")) continue;
    for (const json& reading : run["readings"]) readings += reading.contains("struck") ? 0U : 1U;
  }
  EXPECT_EQ(trial["looks"][0]["words"],
            "saw 36 runs with " + std::to_string(readings) + " readings");
  EXPECT_EQ(trial["next"]["step"], "tell");
}

// The same posterior asked again: at once, and to the same curves.
TEST_F(JudgingRoutes, AskTheSameDrawsForAnotherMarginWithoutCounting) {
  const std::string uid = with_demo();
  const json full = judged(uid, "full", json::object());

  const HttpResponse other = asked("POST",
                                   "/trials/" + uid + "/judgements",
                                   R"({"engine": "full", "question": {"worth_it_margin": 3}})");

  EXPECT_EQ(other.status, 200);
  const json judged_again = json::parse(other.body);
  const auto of = [](const json& document) {
    return document["report"]["judgements"][0]["judgement"];
  };
  EXPECT_EQ(of(judged_again)["arms"], of(full)["arms"]);
  EXPECT_NE(of(judged_again)["comparisons"], of(full)["comparisons"]);
  EXPECT_FALSE(judged_again.contains("counted_words"));
  EXPECT_EQ(got("GET", "/trials/" + uid, "Trial")["looks"].size(), 1U);
}

// Nothing is fitted anew, and what the notebook keeps of it is as it was recorded.
TEST_F(JudgingRoutes, TellTheSameAnswerInOtherUnits) {
  const std::string uid = with_demo();
  const json recorded = judged(uid, "full", json::object());
  const json home = got("GET", "/home", "Home");
  headers_ = {{.name = "x-keenfall-told-in", .text = "N,in"}};

  const HttpResponse again =
      asked("POST", "/trials/" + uid + "/judgements", R"({"engine": "full", "question": {}})");

  EXPECT_EQ(again.status, 200);
  const json told = json::parse(again.body);
  EXPECT_EQ(wire::testing::faults_against_api(told, "Judged"), "");
  const auto of = [](const json& document) {
    return document["report"]["judgements"][0]["judgement"];
  };
  EXPECT_EQ(of(told)["kind"]["unit"], "N");
  EXPECT_EQ(told["counted_words"], recorded["counted_words"]);
  for (std::size_t i = 0; i < of(recorded)["comparisons"].size(); ++i) {
    EXPECT_EQ(of(told)["comparisons"][i]["verdict"], of(recorded)["comparisons"][i]["verdict"]);
    EXPECT_NEAR(of(told)["comparisons"][i]["ratio"]["median"].get<double>(),
                of(recorded)["comparisons"][i]["ratio"]["median"].get<double>(),
                1e-9);
  }
  EXPECT_EQ(got("GET", "/home", "Home"), home);
}

TEST_F(JudgingRoutes, KeepAnAnswerAsItWasRecordedWhateverItIsToldIn) {
  const std::string uid = with_demo();
  headers_ = {{.name = "x-keenfall-told-in", .text = "N,in"}};
  const json told = judged(uid, "full", json::object());
  headers_.clear();

  const json recorded = judged(uid, "full", json::object());

  EXPECT_EQ(told["counted_words"], "Counted as look 1 at this trial, with its answer.");
  EXPECT_EQ(recorded["report"]["judgements"][0]["judgement"]["kind"]["unit"], "gf");
  EXPECT_EQ(recorded["counted_words"], told["counted_words"]);
}

TEST_F(JudgingRoutes, JudgeAnewWhatWasStruckSince) {
  const std::string uid = with_demo();
  const json before = judged(uid, "full", json::object());
  (void)got("POST", "/trials/" + uid + "/strikes", "Changed", {{"run", 0}, {"reason", "spoiled"}});
  const json home = got("GET", "/home", "Home")["trials"][0];

  const json after = judged(uid, "full", json::object());

  EXPECT_EQ(home["answer"]["of_now"], false);
  EXPECT_EQ(home["next"]["step"], "judge");
  EXPECT_NE(after["report"]["judgements"][0]["judgement"]["arms"],
            before["report"]["judgements"][0]["judgement"]["arms"]);
  EXPECT_NE(after["counted_words"].get<std::string>().find("2 different states"),
            std::string::npos);
}

TEST_F(JudgingRoutes, CountStruckReadingsOnlyWhereThatIsAsked) {
  const std::string uid = with_demo();
  (void)got("POST",
            "/trials/" + uid + "/strikes",
            "Changed",
            {{"run", 0}, {"cuts", 255}, {"reason", "slipped"}});
  const auto struck = [](const json& document) {
    return document["report"]["judgements"][0]["judgement"]["runs"][0]["readings_struck"];
  };

  const json without = judged(uid, "quick", json::object());
  const json with = judged(uid, "quick", {{"with_struck", true}});

  EXPECT_EQ(struck(without), 7);
  EXPECT_EQ(struck(with), 0);
  EXPECT_FALSE(with["report"].contains("judged_again_by"));
  EXPECT_FALSE(judged(uid, "full", {{"with_struck", true}}).contains("counted_words"));
}

TEST_F(JudgingRoutes, TellTheStoredAnswerAtHomeAndAQuickOneElsewhere) {
  const std::string uid = with_demo();
  const json before = got("GET", "/home", "Home")["trials"][0];
  const json quick = got("GET", "/trials/" + uid + "/answer", "Answer");
  const json full = judged(uid, "full", json::object());

  const json after = got("GET", "/home", "Home")["trials"][0];
  const json stored = got("GET", "/trials/" + uid + "/answer", "Answer");

  EXPECT_FALSE(before.contains("answer"));
  EXPECT_FALSE(quick.contains("judged_at_utc"));
  EXPECT_EQ(after["answer"]["sentence"], full["headline"][0]);
  EXPECT_EQ(after["answer"]["more"], full["headline"][1]);
  EXPECT_EQ(stored, after["answer"]);
  EXPECT_EQ(stored["judged_at_utc"], "2026-11-26T12:00:00Z");
}

TEST_F(JudgingRoutes, RefuseAQuestionThatCannotBeAsked) {
  const std::string path = "/trials/" + with_demo() + "/judgements";
  const auto problem = [&](const json& question) {
    return refused(400, "POST", path, {{"engine", "quick"}, {"question", question}});
  };

  EXPECT_EQ(problem({{"worth_it_margin", 1}})["column"], "question.worth_it_margin");
  EXPECT_EQ(problem({{"worth_it_margin", "2"}})["accepted"], "a ratio above 1 and at most 100");
  EXPECT_EQ(problem({{"stop_level", 0.5}})["column"], "question.stop_level");
  EXPECT_EQ(problem({{"stop_reading", "400 elephants"}})["found"], "400 elephants");
  EXPECT_EQ(problem({{"kind", "smell"}})["kind"], "unknown_name");
  EXPECT_EQ(problem({{"margin", 2}})["sentence"], "Nothing here is called “question.margin”.");
  EXPECT_EQ(refused(409,
                    "POST",
                    path,
                    {{"engine", "quick"},
                     {"question", {{"stop_level", 3}, {"stop_reading", "400gf"}}}})["sentence"],
            "A stop level and a stop reading cannot both hold.");
  EXPECT_EQ(refused(400, "POST", path, {{"engine", "magic"}})["accepted"], "quick, full");
}

TEST_F(JudgingRoutes, WriteAReportInEachFormat) {
  const std::string uid = with_demo();
  const auto file = [&](const std::string& format) {
    return result_of(got("POST", "/trials/" + uid + "/reports", "Started", {{"format", format}}));
  };

  const HttpResponse page = file("html");
  const HttpResponse document = file("json");
  const HttpResponse table = file("csv");

  EXPECT_TRUE(page.body.starts_with("<!doctype html>") || page.body.starts_with("<!DOCTYPE html>"));
  EXPECT_EQ(page.headers[0].text,
            "attachment; filename=\"The_matting_bench.html\"; "
            "filename*=UTF-8''The%20matting%20bench.html");
  EXPECT_EQ(wire::testing::faults_against_schema(json::parse(document.body), "report.schema.json"),
            "");
  EXPECT_NE(table.body.find("blade"), std::string::npos);
  EXPECT_EQ(table.content_type, "text/csv; charset=utf-8");
}

TEST_F(JudgingRoutes, WriteAReportInOtherUnitsWithWhatWasRecorded) {
  const std::string uid = with_demo();
  headers_ = {{.name = "x-keenfall-told-in", .text = "N"}};
  const auto file = [&](const std::string& format) {
    return result_of(got("POST", "/trials/" + uid + "/reports", "Started", {{"format", format}}))
        .body;
  };

  const std::string page = file("html");
  const json document = json::parse(file("json"));

  EXPECT_NE(page.find("thread push reading in gf, told in N"), std::string::npos);
  EXPECT_NE(page.find("--told-in=N"), std::string::npos);
  EXPECT_EQ(document["judgements"][0]["judgement"]["kind"]["unit"], "gf");
  EXPECT_NE(file("csv").find(",gf,"), std::string::npos);
}

TEST_F(JudgingRoutes, HandTheNotebookOut) {
  const std::string uid = with_demo();

  const HttpResponse whole = result_of(got("POST", "/export", "Started", {{"as", "json"}}));
  const HttpResponse table =
      result_of(got("POST", "/export", "Started", {{"as", "csv"}, {"trial", uid}}));

  EXPECT_EQ(wire::testing::faults_against_schema(json::parse(whole.body), "notebook.schema.json"),
            "");
  EXPECT_EQ(table.headers[0].text.find("attachment; filename=\"The_matting_bench.csv\""), 0U);
  EXPECT_EQ(refused(400, "POST", "/export", {{"as", "csv"}})["column"], "trial");
  EXPECT_EQ(refused(409, "POST", "/export", {{"as", "json"}, {"trial", uid}})["kind"],
            "conflicting");
}

TEST_F(JudgingRoutes, KnowSteelsAndGritsWhileTheyAreTyped) {
  const json steels = got("GET", "/reference/steels?text=x153", "ReferenceSteels")["steels"];
  const json bare = got("GET", "/reference/grits?text=1000", "ReferenceGrits")["grits"];
  const json size = got("GET", "/reference/grits?text=9 um", "ReferenceGrits")["grits"];

  EXPECT_EQ(steels[0]["name"], "X153CrMoV12");
  EXPECT_EQ(bare.size(), 4U);  // one number, a size in each system (FEPA 42-1, 43-1; JIS R 6001)
  EXPECT_EQ(size[0]["name"], "9 µm");
  EXPECT_TRUE(got("GET", "/reference/steels?text=zzz", "ReferenceSteels")["steels"].empty());
}

}  // namespace
}  // namespace keenfall::server
