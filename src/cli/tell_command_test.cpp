#include "cli/tell_command.h"

#include "cli/tell_request.h"
#include "telling/made_report_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include <unistd.h>

namespace keenfall::cli {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::StartsWith;

base::ResultOrProblems<TellRequest> requested(std::vector<std::string> words) {
  const auto typed = typed_options(Command::tell, words);
  if (!typed) return tl::unexpected(typed.error());
  return tell_request(*typed, 2);
}

std::string first_problem(std::vector<std::string> words) {
  return requested(std::move(words)).error().front().sentence;
}

TEST(TellRequests, GoByTheNameOfTheFile) {
  EXPECT_EQ(requested({"t.csv", "--out=r.json"})->format, ReportFormat::json);
  EXPECT_EQ(requested({"t.csv", "--out", "r.CSV"})->format, ReportFormat::csv);
  EXPECT_EQ(requested({"t.csv", "--out=r.json"})->out, "r.json");
}

TEST(TellRequests, GoByTheFormatWhereItIsSaid) {
  EXPECT_EQ(requested({"t.csv", "--out=r.txt", "--format=csv"})->format, ReportFormat::csv);
  EXPECT_EQ(requested({"t.csv", "--format", "json"})->out, "");
}

TEST(TellRequests, AreRefusedWhereItIsNotPlainWhatToWrite) {
  EXPECT_THAT(first_problem({"t.csv"}), StartsWith("Say where the report goes: --out="));
  EXPECT_EQ(first_problem({"t.csv", "--out=r.txt"}), "Nothing is told as .txt.");
  EXPECT_EQ(first_problem({"t.csv", "--out=r"}), "\"r\" has no ending that says what to write.");
  EXPECT_EQ(first_problem({"t.csv", "--format=xml"}),
            "--format is html, json or csv, not \"xml\".");
}

TEST(TellRequests, TakeTheOptionsOfJudgeButJson) {
  const auto request =
      requested({"t.csv", "--worth-it=2", "--seed=7", "--column=cuts=n", "--format=json"});

  EXPECT_EQ(request->judging.options.worth_it_margin, 2);
  EXPECT_EQ(request->judging.options.seed, base::Seed{7});
  EXPECT_EQ(request->judging.options.table.columns.size(), 1U);
  EXPECT_FALSE(requested({"t.csv", "--json"}));
}

TEST(TellRequests, NameEveryProblemAtOnce) {
  const auto refused = requested({"--worth-it=0.5", "--format=xml"});

  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().size(), 3U);
}

// The command with a report made by hand.
class Telling : public ::testing::Test {
 protected:
  void SetUp() override {
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directory(folder_);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  Outcome told(const std::vector<std::string>& words) {
    Surroundings around{
        .use_cases = {.report_of_files =
                          [this](auto, const auto&, const auto&, const auto&, const auto&)
                          -> base::ResultOrProblems<workbench::ReportOfFiles> {
                        ++judged_;
                        return workbench::ReportOfFiles{.report = report_,
                                                        .kept_words = "Counted as look 1."};
                      },
                      .trial_in_files = [this](auto, const auto&)
                          -> base::ResultOrProblems<trials::Trial> { return report_.trial; }},
        .is_stop_asked_for = [] { return false; },
        .seconds_now = [] { return 0.0; },
        .program_version = "0.1.0",
        .utc_now = [] { return "2026-11-26T12:00:00Z"; }};
    return tell_command(words, around);
  }

  static std::string content_at(const std::string& path) {
    std::ifstream file(path);
    return {std::istreambuf_iterator<char>(file), {}};
  }

  telling::Report report_ = telling::testing::made_report();
  int judged_ = 0;
  std::filesystem::path folder_ =
      std::filesystem::temp_directory_path() / ("keenfall_told_" + std::to_string(getpid()));
  std::string out_ = folder_ / "report.json";
};

TEST_F(Telling, WritesTheReportAndSaysWhatItIs) {
  const Outcome outcome = told({"t.csv", "--out=" + out_});

  EXPECT_EQ(outcome.code, ExitCode::answered);
  EXPECT_EQ(nlohmann::json::parse(content_at(out_))["title"], "The matting bench");
  EXPECT_THAT(outcome.out, HasSubstr("Counted as look 1.\n"));
  EXPECT_THAT(outcome.out, HasSubstr("6 runs and every"));
  EXPECT_THAT(outcome.err, IsEmpty());
}

TEST_F(Telling, LeavesAFileThatIsThereAloneAndJudgesNothing) {
  std::ofstream(out_) << "mine";

  const Outcome outcome = told({"t.csv", "--out=" + out_});

  EXPECT_EQ(outcome.code, ExitCode::file_trouble);
  EXPECT_THAT(outcome.err, AllOf(HasSubstr("it exists already"), HasSubstr("nothing was told")));
  EXPECT_EQ(content_at(out_), "mine");
  EXPECT_EQ(judged_, 0);
}

TEST_F(Telling, PutsTheReportAloneOnStandardOutput) {
  const Outcome outcome = told({"t.csv", "--format=json"});

  EXPECT_EQ(nlohmann::json::parse(outcome.out)["format"], "keenfall-report");
  EXPECT_EQ(outcome.err, "Counted as look 1.\n");
}

TEST_F(Telling, SaysNothingWhereQuietIsAskedFor) {
  const Outcome outcome = told({"t.csv", "--quiet", "--out=" + out_});

  EXPECT_THAT(outcome.out, IsEmpty());
  EXPECT_TRUE(std::filesystem::exists(out_));
}

TEST_F(Telling, JudgesNothingForTheReadingsAlone) {
  const Outcome outcome = told({"t.csv", "--format=csv"});

  EXPECT_EQ(judged_, 0);
  EXPECT_THAT(outcome.out, StartsWith("blade,medium,run,cuts,reading"));
  EXPECT_THAT(outcome.out, HasSubstr("slipped"));
}

TEST_F(Telling, SaysWhereATableDoesNotHoldItAll) {
  EXPECT_THAT(told({"t.csv", "--out=" + (folder_ / "part.csv").string()}).out,
              HasSubstr("It does not hold all"));  // C has pieces of which none was cut with

  report_.trial.blades[2].specimens.clear();
  EXPECT_THAT(told({"t.csv", "--out=" + (folder_ / "whole.csv").string()}).out,
              Not(HasSubstr("It does not hold all")));
}

TEST_F(Telling, EndsWithOneWhereThereIsNoVerdictInIt) {
  report_.judgements[0].judgement.fit.usable = false;

  const Outcome outcome = told({"t.csv", "--out=" + out_});

  EXPECT_EQ(outcome.code, ExitCode::not_usable);
  EXPECT_THAT(outcome.out, HasSubstr("No fit is usable"));
  EXPECT_TRUE(std::filesystem::exists(out_));
}

}  // namespace
}  // namespace keenfall::cli
