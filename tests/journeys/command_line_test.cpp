#include "child_process.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include <unistd.h>

namespace keenfall::journeys {
namespace {

using ::testing::AllOf;
using ::testing::EndsWith;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::StartsWith;

// Readings of `blades` blades, three runs each, that double every 10, 20, 30... cuts; the runs of a
// blade differ by 10 %. Blade 1 is called A, the last one C.
std::string readings_of(int blades) {
  std::string table = "blade,medium,run,cuts,reading\n";
  for (int blade = 1; blade <= blades; ++blade) {
    const std::string name =
        blade == 1 ? "A" : (blade == blades ? "C" : "blade " + std::to_string(blade));
    for (int run = 1; run <= 3; ++run) {
      for (const int cuts : {0, 2, 5, 10, 20, 40}) {
        const double half_keenness_cuts = 10.0 * blade * (1 + 0.1 * (run - 2));
        const double reading = 100 * (1 + cuts / half_keenness_cuts) + cuts % 3;
        table += name + ",rope," + std::to_string(run) + "," + std::to_string(cuts) + "," +
                 std::to_string(reading) + "\n";
      }
    }
  }
  return table;
}

const std::string kGoodTable = readings_of(4);

std::filesystem::path scratch(const std::string& name) {
  const auto folder =
      std::filesystem::temp_directory_path() / ("keenfall_journeys_" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  return folder / name;
}

std::string a_table(const std::string& name, const std::string& content) {
  const auto path = scratch(name);
  std::ofstream(path) << content;
  return path.string();
}

std::string content_of(const std::string& path) {
  std::ostringstream content;
  content << std::ifstream(path).rdbuf();
  return content.str();
}

// Takes far longer than a second to judge.
std::string a_large_table() { return a_table("large.csv", readings_of(24)); }

Said keenfall(const std::vector<std::string>& words) {
  return run({.program = KEENFALL_PROGRAM, .words = words, .environment = {{"LC_ALL", "C.UTF-8"}}});
}

TEST(TheProgram, SaysWhatToDoWhenNothingIsAsked) {
  const Said said = keenfall({});

  EXPECT_EQ(said.exit_code, 0);
  EXPECT_THAT(said.out, AllOf(HasSubstr("keenfall demo"), HasSubstr("keenfall judge TABLE")));
  EXPECT_THAT(said.err, IsEmpty());
}

TEST(TheProgram, HelpsInEveryWayPeopleAskForIt) {
  for (const std::vector<std::string>& words : {std::vector<std::string>{"help"},
                                                {"--help"},
                                                {"-h"},
                                                {"help", "judge"},
                                                {"judge", "--help"}}) {
    const Said said = keenfall(words);

    EXPECT_EQ(said.exit_code, 0);
    EXPECT_THAT(said.out, HasSubstr("keenfall judge TABLE"));
  }
}

TEST(TheProgram, TellsItsVersion) {
  const Said said = keenfall({"--version"});

  EXPECT_EQ(said.exit_code, 0);
  EXPECT_THAT(said.out, AllOf(StartsWith("keenfall "), EndsWith("\n")));
}

TEST(TheProgram, NamesItsCommandsWhenItDoesNotKnowOne) {
  const Said said = keenfall({"jugde", "t"});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_THAT(said.err, AllOf(HasSubstr("no command \"jugde\""), HasSubstr("judge, demo")));
}

TEST(TheProgram, TellsHowToJudgeATableThatStandsWhereACommandBelongs) {
  EXPECT_THAT(keenfall({"t.csv"}).err, HasSubstr("keenfall judge t.csv"));
}

TEST(Judge, RefusesEveryWrongOptionValueAtOnceWithWhatWouldBeAccepted) {
  const Said said = keenfall({"judge",
                              "t.csv",
                              "--worth-it=1",
                              "--seed",
                              "-3",
                              "--model",
                              "best",
                              "--threads=0",
                              "--stop-level=abc"});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_THAT(
      said.err,
      AllOf(HasSubstr("--worth-it must be a ratio above 1, not \"1\". Accepted: for example"),
            HasSubstr("--seed must be a whole number, not \"-3\"."),
            HasSubstr("--model must be a model's name, not \"best\". Accepted: plain or"),
            HasSubstr("--threads must be a whole number of threads, not \"0\"."),
            HasSubstr("--stop-level must be how many times the start reading")));
  EXPECT_THAT(said.err, HasSubstr("keenfall help judge"));
}

TEST(Judge, RefusesTwoPlacesToCompareAt) {
  const Said said = keenfall({"judge", "t.csv", "--stop-level=4", "--stop-reading=400gf"});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_THAT(said.err, HasSubstr("cannot both"));
}

TEST(Judge, RefusesAnOptionItDoesNotHave) {
  const Said said = keenfall({"judge", "t.csv", "--fast"});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_THAT(said.err, HasSubstr("no option \"--fast\""));
}

TEST(Judge, RefusesAnOptionWithoutItsValue) {
  const Said said = keenfall({"judge", "t.csv", "--seed"});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_THAT(said.err, HasSubstr("--seed needs a value after it."));
}

TEST(Judge, RefusesAnOptionGivenTwice) {
  const Said said = keenfall({"judge", "t.csv", "--seed=1", "--seed=2"});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_THAT(said.err, HasSubstr("--seed is given more than once"));
}

TEST(Judge, AsksForATable) {
  const Said said = keenfall({"judge"});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_THAT(said.err, HasSubstr("no table to judge"));
}

TEST(Judge, EndsWithFourWhenAFileIsNotThere) {
  const Said said = keenfall({"judge", "no/such/table.csv"});

  EXPECT_EQ(said.exit_code, 4);
  EXPECT_THAT(said.err,
              AllOf(HasSubstr("no/such/table.csv"), HasSubstr("1 problem; nothing was judged.")));
  EXPECT_THAT(said.out, IsEmpty());
}

TEST(Judge, EndsWithThreeAndOneLineForEachRefusedCell) {
  const std::string table =
      a_table("bad.csv", "blade,medium,run,cuts,reading\nA,rope,1,ten,104\nA,rope,1,30,many\n");

  const Said said = keenfall({"judge", table});

  EXPECT_EQ(said.exit_code, 3);
  EXPECT_THAT(said.err, AllOf(HasSubstr("line 2"), HasSubstr("line 3"), HasSubstr("2 problems;")));
  EXPECT_THAT(said.out, IsEmpty());
}

TEST(Judge, AnswersFirst) {
  const Said said = keenfall({"judge", a_table("good.csv", kGoodTable)});

  EXPECT_EQ(said.exit_code, 0);
  EXPECT_THAT(said.out, HasSubstr("C stays keen"));
  EXPECT_LT(said.out.find("C stays keen"), said.out.find("Fit: usable"));
  EXPECT_THAT(said.err, IsEmpty());
}

// `readings_of(2)` with a question mark behind the readings of a blade from some cuts on.
std::string with_doubts(const std::string& blade, int from_cuts, int to_cuts) {
  std::istringstream lines(readings_of(2));
  std::string table;
  for (std::string line; std::getline(lines, line);) {
    table += line;
    if (line.starts_with(blade + ",rope,")) {
      const int cuts = std::stoi(line.substr(line.find(',', line.find("rope,") + 5) + 1));
      if (cuts >= from_cuts && cuts <= to_cuts) table += '?';
    }
    table += '\n';
  }
  return table;
}

TEST(Judge, SaysThatLeavingOutADoubtfulReadingChangesNothing) {
  const std::string table = a_table("doubt.csv", with_doubts("A", 5, 5));

  EXPECT_THAT(keenfall({"judge", table, "--worth-it=1.1"}).out, HasSubstr("Left out, no "));
  const auto document =
      nlohmann::json::parse(keenfall({"judge", table, "--worth-it=1.1", "--json"}).out);
  EXPECT_EQ(document["runs"][0]["readings_doubtful"], 1);
  EXPECT_EQ(document["comparisons"][0]["without_doubtful_readings"]["agrees"], true);
}

// All that shows how C blunts is in doubt: what is left, at 0 and 2 cuts, settles nothing.
TEST(Judge, SaysWhichVerdictLeavingOutDoubtfulReadingsChanges) {
  const std::string table = a_table("doubts.csv", with_doubts("C", 5, 40));

  const auto document = nlohmann::json::parse(keenfall({"judge", table, "--json"}).out);
  const auto& pair = document["comparisons"][0];

  EXPECT_THAT(keenfall({"judge", table}).out,
              AllOf(HasSubstr("12 readings are marked as doubtful"), HasSubstr("Left out: ")));
  EXPECT_NE(pair["quick"]["verdict"], "not settled");
  EXPECT_EQ(pair["without_doubtful_readings"]["verdict"], "not settled");
  EXPECT_EQ(pair["without_doubtful_readings"]["agrees"], false);
}

// 1,234 between semicolons may be 1.234 or 1234.
TEST(Judge, TakesTheDecimalMarkItIsTold) {
  const std::string table =
      a_table("marks.csv", "blade;medium;run;cuts;reading\nA;rope;1;0;1,234\nA;rope;1;5;1,345\n");

  EXPECT_THAT(keenfall({"judge", table}).err, HasSubstr("may mean a decimal fraction"));
  EXPECT_THAT(keenfall({"judge", table, "--decimal=comma"}).err,
              Not(HasSubstr("may mean a decimal fraction")));
  EXPECT_THAT(keenfall({"judge", table, "--decimal=dot"}).err, HasSubstr("comma or point"));
}

TEST(Judge, PassesItsOptionsOn) {
  const Said said = keenfall(
      {"judge", a_table("good.csv", kGoodTable), "--worth-it", "1.25", "--seed=77", "--json"});
  const auto document = nlohmann::json::parse(said.out);

  EXPECT_EQ(document["worth_it_margin"], 1.25);
  EXPECT_EQ(document["fit"]["seed"], 77);
}

TEST(Judge, GivesOnlyTheAnswersWhenItIsToBeQuiet) {
  const Said said = keenfall({"judge", a_table("good.csv", kGoodTable), "--quiet"});

  EXPECT_THAT(said.out, AllOf(HasSubstr("C stays keen"), Not(HasSubstr("Fit:"))));
}

TEST(Judge, WritesTheJsonIntoAFileAndStillAnswers) {
  const std::string file = scratch("answer.json").string();

  const Said said = keenfall({"judge", a_table("good.csv", kGoodTable), "--json=" + file});

  EXPECT_EQ(said.exit_code, 0);
  EXPECT_THAT(said.out, HasSubstr("C stays keen"));
  EXPECT_EQ(nlohmann::json::parse(content_of(file))["format"], "keenfall-judgement");
}

TEST(Judge, NeverTakesATableForTheFileTheJsonGoesTo) {
  const std::string table = a_table("good.csv", kGoodTable);

  const Said said = keenfall({"judge", "--json", table});

  EXPECT_EQ(said.exit_code, 0);
  EXPECT_EQ(content_of(table), kGoodTable);
  EXPECT_THAT(said.out, StartsWith("{"));
}

TEST(Judge, RefusesToOverwriteATableWithItsAnswer) {
  const std::string table = a_table("good.csv", kGoodTable);

  const Said said = keenfall({"judge", table, "--json=" + table});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_EQ(content_of(table), kGoodTable);
}

TEST(Judge, SaysWhenTheJsonCannotBeWritten) {
  const Said said =
      keenfall({"judge", a_table("good.csv", kGoodTable), "--json=/no/such/folder/a.json"});

  EXPECT_EQ(said.exit_code, 4);
  EXPECT_THAT(said.err, HasSubstr("\"/no/such/folder/a.json\" cannot be written"));
}

TEST(Judge, TakesForeignHeadersAndOwnKinds) {
  const std::string table =
      a_table("foreign.csv", "insert,medium,run,minutes,wear\nA,iron,1,1,0.1\nA,iron,1,9,0.3\n");

  const Said said = keenfall({"judge",
                              table,
                              "--column",
                              "blade=insert",
                              "--column=cuts=minutes",
                              "--column",
                              "reading=wear",
                              "--define-kind",
                              "flank_wear:mm:lower"});

  EXPECT_EQ(said.exit_code, 0) << said.err;
}

TEST(Judge, RefusesAMappingOfAColumnNobodyKnows) {
  const Said said = keenfall({"judge", "t.csv", "--column", "strokes=cuts"});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_THAT(said.err, HasSubstr("--column"));
}

TEST(Judge, StopsCleanlyOnCtrlC) {
  const std::string file = scratch("stopped.json").string();
  std::filesystem::remove(file);

  const Said said = run({.program = KEENFALL_PROGRAM,
                         .words = {"judge", a_large_table(), "--json=" + file},
                         .errors_on_a_terminal = true,
                         .interrupt_at = " %"});

  EXPECT_EQ(said.exit_code, 130);
  EXPECT_THAT(said.err, HasSubstr("Stopped; nothing was written."));
  EXPECT_THAT(said.out, IsEmpty());
  EXPECT_FALSE(std::filesystem::exists(file));
}

TEST(Judge, ShowsProgressWithTheTimeLeftOnATerminalAndErasesIt) {
  const Said said = run({.program = KEENFALL_PROGRAM,
                         .words = {"judge", a_large_table()},
                         .on_a_terminal = true,
                         .interrupt_at = " left"});

  EXPECT_EQ(said.exit_code, 130);
  EXPECT_THAT(said.out, AllOf(HasSubstr(" %, about "), HasSubstr("  \rStopped;")));
}

TEST(Judge, ShowsNoProgressWhenItIsToBeQuiet) {
  const Said said = run({.program = KEENFALL_PROGRAM,
                         .words = {"judge", a_table("middling.csv", readings_of(12)), "--quiet"},
                         .errors_on_a_terminal = true});

  EXPECT_EQ(said.exit_code, 0);
  EXPECT_THAT(said.err, IsEmpty());
}

TEST(Judge, IsColouredOnlyOnATerminalAndNotWhereNoColorIsSet) {
  const std::string table = a_table("good.csv", kGoodTable);
  const CommandLine on_a_terminal{.program = KEENFALL_PROGRAM,
                                  .words = {"judge", table},
                                  .environment = {{"TERM", "xterm"}, {"NO_COLOR", ""}},
                                  .on_a_terminal = true};
  CommandLine without_colour = on_a_terminal;
  without_colour.environment["NO_COLOR"] = "1";

  EXPECT_THAT(run(on_a_terminal).out, HasSubstr("\x1b["));
  EXPECT_THAT(run(without_colour).out, Not(HasSubstr("\x1b[")));
  EXPECT_THAT(keenfall({"judge", table}).out, Not(HasSubstr("\x1b[")));
}

TEST(Judge, UsesOnlyAsciiWhereTheLocaleIsNotUtf8) {
  const Said said = run({.program = KEENFALL_PROGRAM,
                         .words = {"judge", a_table("good.csv", kGoodTable)},
                         .environment = {{"LC_ALL", "C"}}});

  EXPECT_TRUE(
      std::ranges::all_of(said.out, [](char c) { return static_cast<unsigned char>(c) < 0x80U; }));
}

TEST(Judge, SaysNothingWhenTheReaderOfItsOutputGoesAway) {
  const Said said = run({.program = KEENFALL_PROGRAM,
                         .words = {"judge", a_table("good.csv", kGoodTable)},
                         .reader_goes_away = true});

  EXPECT_EQ(said.exit_code, 0);
  EXPECT_THAT(said.err, IsEmpty());
}

TEST(Judge, SaysNothingWhenItsOutputIsClosed) {
  const Said said = run({.program = KEENFALL_PROGRAM,
                         .words = {"judge", a_table("good.csv", kGoodTable)},
                         .with_closed_output = true});

  EXPECT_EQ(said.exit_code, 0);
  EXPECT_THAT(said.err, IsEmpty());
}

TEST(Demo, TellsItsStoryThenAnswersThenMindsTheHands) {
  const Said said = keenfall({"demo", "--no-open"});

  EXPECT_EQ(said.exit_code, 0);
  EXPECT_THAT(said.out, StartsWith("The matting bench"));
  EXPECT_LT(said.out.find("C stays keen"), said.out.find("A blunt edge slips"));
}

TEST(Demo, WritesItsReadingsAsATableThatCanBeJudged) {
  const std::string table = scratch("matting.csv").string();
  std::filesystem::remove(table);

  const Said written = keenfall({"demo", "--table", table});
  const Said judged = keenfall({"judge", table});

  EXPECT_EQ(written.exit_code, 0) << written.err;
  EXPECT_EQ(judged.exit_code, 0) << judged.err;
}

TEST(Demo, LeavesAFileAloneThatIsThereAlready) {
  const std::string table = a_table("mine.csv", "mine");

  const Said said = keenfall({"demo", "--table", table});

  EXPECT_EQ(said.exit_code, 4);
  EXPECT_EQ(content_of(table), "mine");
}

TEST(References, AreReachedFromTheCommandLine) {
  EXPECT_THAT(keenfall({"steels"}).out, HasSubstr("C75S"));
  EXPECT_THAT(keenfall({"grits"}).out, HasSubstr("JIS"));
  EXPECT_THAT(keenfall({"convert", "400gf", "to", "N"}).out, HasSubstr("3.92"));
}

TEST(References, RefuseWhatTheyDoNotKnow) {
  EXPECT_EQ(keenfall({"steels", "unobtainium"}).exit_code, 2);
  EXPECT_EQ(keenfall({"convert", "400gf"}).exit_code, 2);
  EXPECT_EQ(keenfall({"grits", "--all"}).exit_code, 2);
}

TEST(TheEdgeLives, AreJudgedWhereTheyAreAskedForByName) {
  const std::string table = a_table("lives.csv",
                                    "blade,medium,run,cuts,reading,unit,lasted,failed_by\n"
                                    "A,sisal,1,0,100,gf,10,20\n"
                                    "A,sisal,1,10,150,gf,,\n"
                                    "A,sisal,2,0,100,gf,20,30\n"
                                    "A,sisal,2,10,150,gf,,\n"
                                    "A,sisal,3,0,100,gf,5,10\n"
                                    "A,sisal,3,10,150,gf,,\n"
                                    "B,sisal,1,0,100,gf,20,30\n"
                                    "B,sisal,1,10,150,gf,,\n"
                                    "B,sisal,2,0,100,gf,40,50\n"
                                    "B,sisal,2,10,150,gf,,\n"
                                    "B,sisal,3,0,100,gf,10,20\n"
                                    "B,sisal,3,10,150,gf,,\n");

  const Said said = run({.program = KEENFALL_PROGRAM,
                         .words = {"judge", table, "--kind=edge_life", "--json"},
                         .environment = {{"LC_ALL", "C.UTF-8"}}});

  EXPECT_EQ(said.exit_code, 0) << said.err;
  const auto judgement = nlohmann::json::parse(said.out);
  EXPECT_EQ(judgement["kind"]["name"], "edge_life");
  EXPECT_EQ(judgement["runs"][0]["failed_by_cuts"], 20);
}

TEST(ARung, ThatNoLadderHasIsRefused) {
  const Said said =
      run({.program = KEENFALL_PROGRAM, .words = {"judge", "nowhere.csv", "--rung=10"}});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_THAT(said.err, HasSubstr("1 to 9"));
}

// Counted in examples/edge-lives: of the five edges of C one was given up before it failed.
TEST(TheEdgeLives, AreJudgedByTheirTest) {
  const Said said =
      run({.program = KEENFALL_PROGRAM,
           .words = {"judge", KEENFALL_SOURCE_DIR "/examples/edge-lives/edge_lives.csv", "--json"},
           .environment = {{"LC_ALL", "C.UTF-8"}}});

  EXPECT_EQ(said.exit_code, 0) << said.err;
  const auto judgement = nlohmann::json::parse(said.out);
  EXPECT_EQ(judgement["test"]["words"], "slices newsprint cleanly");
  EXPECT_EQ(judgement["arms"][2]["test_cuts"]["runs_that_reached"], 4);
  EXPECT_EQ(judgement["comparisons"].size(), 3U);
}

// By hand, from the table's medians: A's readings pass 2.5 x 103 gf at about 14 cuts, half of C's
// edges fail at about 38; 38 / 14 = 2.7.
TEST(TheEdgesReadAndTested, AreComparedAtTheLevelThatTheTableStates) {
  const Said said = run(
      {.program = KEENFALL_PROGRAM,
       .words = {"judge", KEENFALL_SOURCE_DIR "/examples/edge-lives/read_and_tested.csv", "--json"},
       .environment = {{"LC_ALL", "C.UTF-8"}}});

  EXPECT_EQ(said.exit_code, 0) << said.err;
  const auto document = nlohmann::json::parse(said.out);
  ASSERT_EQ(document["also_judged"].size(), 2U);
  const auto& between = document["also_judged"][1];
  EXPECT_EQ(between["kind"]["name"], "read_and_tested");
  ASSERT_EQ(between["comparisons"].size(), 1U);
  EXPECT_EQ(between["comparisons"][0]["a"]["blade"], "C");
  EXPECT_EQ(between["comparisons"][0]["at"]["level"], 2.5);
  EXPECT_NEAR(between["comparisons"][0]["ratio"]["median"].get<double>(), 2.7, 0.3);
}

TEST(ATestLevel, ThatIsNoRiseIsRefused) {
  const Said said =
      run({.program = KEENFALL_PROGRAM, .words = {"judge", "nowhere.csv", "--test-level=1"}});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_THAT(said.err, HasSubstr("--test-level must be how many times the start reading"));
}

TEST(ABlade, OfWhichEveryRunIsVoidedIsNamedInTheAnswer) {
  const std::string table = a_table("voided.csv",
                                    "blade,medium,run,cuts,reading,voided\n"
                                    "A,felt,1,0,100,\nA,felt,1,10,150,\nA,felt,1,40,260,\n"
                                    "B,felt,1,0,101,burr left\nB,felt,1,10,180,\n");
  const Said said = run({.program = KEENFALL_PROGRAM,
                         .words = {"judge", table},
                         .environment = {{"LC_ALL", "C.UTF-8"}}});

  EXPECT_THAT(said.exit_code, ::testing::AnyOf(0, 1)) << said.err;
  EXPECT_THAT(said.out, HasSubstr("Nothing is said of B on felt"));
}

}  // namespace
}  // namespace keenfall::journeys
