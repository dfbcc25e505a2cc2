#include "child_process.h"
#include "tables_on_disk.h"

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

const std::string kGoodTable = readings_of(4);

// Takes far longer than a second to judge.
std::string a_large_table() { return a_table("large.csv", readings_of(120)); }

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

TEST(Judge, RefusesARungThatNoLadderHas) {
  const Said said = keenfall({"judge", "nowhere.csv", "--rung=10"});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_THAT(said.err, HasSubstr("1 to 9"));
}

TEST(Judge, RefusesATestLevelThatIsNoRise) {
  const Said said = keenfall({"judge", "nowhere.csv", "--test-level=1"});

  EXPECT_EQ(said.exit_code, 2);
  EXPECT_THAT(said.err, HasSubstr("--test-level must be how many times the start reading"));
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

TEST(Judge, RefusesToOverwriteATableThatIsSpelledOtherwiseOrLinkedTo) {
  const std::filesystem::path table = a_table("good.csv", kGoodTable);
  const std::filesystem::path link = scratch("answer.json");
  std::filesystem::remove(link);
  std::filesystem::create_symlink(table, link);
  const std::filesystem::path other_spelling = table.parent_path() / "." / table.filename();

  for (const std::filesystem::path& json : {link, other_spelling}) {
    EXPECT_EQ(keenfall({"judge", table.string(), "--json=" + json.string()}).exit_code, 2) << json;
  }
  EXPECT_EQ(content_of(table.string()), kGoodTable);
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
  EXPECT_THAT(said.out, IsEmpty());
  EXPECT_EQ(content_of(table), "mine");
}

TEST(References, AreReachedFromTheCommandLine) {
  EXPECT_THAT(keenfall({"steels"}).out, HasSubstr("C75S"));
  EXPECT_THAT(keenfall({"grits"}).out, HasSubstr("JIS"));
  EXPECT_THAT(keenfall({"phases", "quartz"}).out, HasSubstr("scratches quartz"));
  EXPECT_THAT(keenfall({"hardness", "61HRC", "--json"}).out, HasSubstr("\"hv\": 720"));
  EXPECT_THAT(keenfall({"convert", "400gf", "to", "N"}).out, HasSubstr("3.92"));
}

TEST(Resharpening, IsReachedFromTheCommandLine) {
  const Said said = keenfall(
      {"resharpen", "--steel=D2", "--angle=15deg-per-side", "--thickness=0.3mm", "--chip=10um"});

  EXPECT_EQ(said.exit_code, 0);
  EXPECT_THAT(said.out, HasSubstr("Resetting the bevel on AISI D2"));
  EXPECT_EQ(keenfall({"resharpen", "--steel=D2"}).exit_code, 2);
}

TEST(References, RefuseWhatTheyDoNotKnow) {
  EXPECT_EQ(keenfall({"steels", "unobtainium"}).exit_code, 2);
  EXPECT_EQ(keenfall({"convert", "400gf"}).exit_code, 2);
  EXPECT_EQ(keenfall({"grits", "--all"}).exit_code, 2);
  EXPECT_EQ(keenfall({"phases", "moon", "dust"}).exit_code, 2);
  EXPECT_EQ(keenfall({"hardness", "61"}).exit_code, 2);
}

}  // namespace
}  // namespace keenfall::journeys
