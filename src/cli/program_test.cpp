#include "cli/exit_codes.h"
#include "cli/judge_request.h"
#include "cli/outcome.h"
#include "cli/progress_line.h"
#include "cli/terminal.h"
#include "cli/typed_options.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::cli {
namespace {

using base::ProblemKind;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

TEST(ExitCodes, PutAStopBeforeAFileBeforeATableBeforeAnOption) {
  const base::Problem stop{.kind = ProblemKind::interrupted};
  const base::Problem file{.kind = ProblemKind::unreadable};
  const base::Problem cell{.kind = ProblemKind::bad_value, .place = {.column = "cuts"}};
  const base::Problem option{.kind = ProblemKind::unknown_name, .place = {.column = "--kind"}};

  EXPECT_EQ(exit_code_of({option, cell, file, stop}), ExitCode::stopped);
  EXPECT_EQ(exit_code_of({option, cell, file}), ExitCode::file_trouble);
  EXPECT_EQ(exit_code_of({option, cell}), ExitCode::table_refused);
  EXPECT_EQ(exit_code_of({option}), ExitCode::wrong_usage);
}

TEST(Refusals, GiveOneLineForEachProblemAndCountThem) {
  const Outcome outcome = refused({{.sentence = "One."}, {.sentence = "Two."}});

  EXPECT_EQ(outcome.err, "One.\nTwo.\n2 problems; nothing was judged.\n");
  EXPECT_THAT(outcome.out, IsEmpty());
}

TEST(Refusals, NameTheOptionAProblemCameBy) {
  const Outcome outcome =
      refused({{.sentence = "No such unit.", .place = {.column = "--stop-reading"}}});

  EXPECT_EQ(outcome.code, ExitCode::wrong_usage);
  EXPECT_THAT(outcome.err, HasSubstr("--stop-reading: No such unit."));
}

TEST(TypedOptions, TakeValuesAfterASpaceOrAnEqualsSign) {
  const std::vector<std::string> words = {"t.csv", "--seed", "7", "--worth-it=2", "u.csv"};

  const auto typed = typed_options(Command::judge, words);

  ASSERT_TRUE(typed);
  EXPECT_THAT(typed->positionals, ElementsAre("t.csv", "u.csv"));
  EXPECT_EQ(typed->seed, "7");
  EXPECT_EQ(typed->worth_it, "2");
}

TEST(TypedOptions, RepeatColumnsAndKinds) {
  const std::vector<std::string> words = {"--column", "cuts=n", "t.csv", "--column=run=r"};

  const auto typed = typed_options(Command::judge, words);

  ASSERT_TRUE(typed);
  EXPECT_THAT(typed->columns, ElementsAre("cuts=n", "run=r"));
  EXPECT_THAT(typed->positionals, ElementsAre("t.csv"));
}

TEST(TypedOptions, GiveJsonAFileOnlyAfterAnEqualsSign) {
  const std::vector<std::string> to_output = {"--json", "t.csv"};
  const std::vector<std::string> to_file = {"--json=a.json", "t.csv"};

  EXPECT_EQ(typed_options(Command::judge, to_output)->json, "");
  EXPECT_EQ(typed_options(Command::judge, to_file)->json, "a.json");
  EXPECT_THAT(typed_options(Command::judge, to_output)->positionals, ElementsAre("t.csv"));
}

TEST(TypedOptions, OfTheDemoKnowNothingOfTables) {
  const std::vector<std::string> words = {"--column", "cuts=n"};

  const auto typed = typed_options(Command::demo, words);

  ASSERT_FALSE(typed);
  EXPECT_THAT(typed.error().front().sentence, HasSubstr("--column"));
}

TEST(JudgeRequests, TakeAClaimAboutSteelsOrBladesAndNothingElse) {
  EXPECT_EQ(judge_request({.claim = "steels"}, 1)->options.claim, verdicts::ClaimAbout::the_steels);
  EXPECT_EQ(judge_request({.claim = "blades"}, 1)->options.claim,
            verdicts::ClaimAbout::these_blades);
  EXPECT_FALSE(judge_request({}, 1)->options.claim);
  ASSERT_FALSE(judge_request({.claim = "both"}, 1));
  EXPECT_THAT(judge_request({.claim = "both"}, 1).error().front().sentence,
              HasSubstr("--claim must be what is claimed about, not \"both\"."));
}

TEST(JudgeRequests, TakeTheUnitsToBeToldInAndRefuseOthers) {
  EXPECT_EQ(judge_request({.told_in = "inches,N"}, 1)->options.told_in,
            (materials::ToldIn{.force = "N", .length = "in"}));
  EXPECT_EQ(judge_request({}, 1)->options.told_in, materials::ToldIn{});
  const auto refused = judge_request({.told_in = "stone"}, 1);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().front().sentence, "--told-in: Nothing is told in “stone”.");
  EXPECT_EQ(refused.error().front().place.column, "--told-in");
}

TEST(Looks, FollowTheTerminalWithinBounds) {
  EXPECT_EQ(look_for({.is_terminal = true, .columns = 40, .locale = "C.UTF-8"}).width, 60);
  EXPECT_EQ(look_for({.is_terminal = true, .columns = 300, .locale = "C.UTF-8"}).width, 120);
  EXPECT_EQ(look_for({.columns = 0}).width, 80);
}

TEST(Looks, AreAsciiWithoutAUtf8Locale) {
  EXPECT_FALSE(look_for({.locale = "C"}).unicode);
  EXPECT_FALSE(look_for({.locale = ""}).unicode);
  EXPECT_TRUE(look_for({.locale = "de_AT.utf8"}).unicode);
}

// NO_COLOR: no-color.org, an informal convention.
TEST(Looks, AreColouredOnlyOnATerminalThatCanAndMay) {
  EXPECT_TRUE(look_for({.is_terminal = true}).colour);
  EXPECT_FALSE(look_for({.is_terminal = false}).colour);
  EXPECT_FALSE(look_for({.is_terminal = true, .no_color = true}).colour);
  EXPECT_FALSE(look_for({.is_terminal = true, .is_dumb = true}).colour);
}

TEST(Progress, GivesTheTimeLeftOnceThereIsSomethingToGoBy) {
  EXPECT_EQ(progress_words({.fraction_done = 0.01, .stage = "fitting"}, 1), "fitting: 1 %");
  EXPECT_EQ(progress_words({.fraction_done = 0.25, .stage = "fitting"}, 2),
            "fitting: 25 %, about 6 s left");
  EXPECT_EQ(progress_words({.fraction_done = 0.1, .stage = "fitting"}, 60),
            "fitting: 10 %, about 9 min left");
}

TEST(Progress, IsSilentForASecondAndErasedAtTheEnd) {
  std::string shown;
  double now_s = 0;
  ProgressLine line([&shown](const std::string& text) { shown += text; },
                    [&now_s] { return now_s; });

  line.show({.fraction_done = 0.1, .stage = "fitting"});
  EXPECT_THAT(shown, IsEmpty());
  now_s = 2;
  line.show({.fraction_done = 0.5, .stage = "fitting"});
  EXPECT_EQ(shown, "\rfitting: 50 %, about 2 s left");
  line.erase();

  EXPECT_EQ(shown.back(), '\r');
}

}  // namespace
}  // namespace keenfall::cli
