#include "page/report_page.h"

#include "page/embedded.h"
#include "telling/made_report_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstddef>
#include <string>
#include <string_view>

namespace keenfall::page {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

std::size_t count_of(std::string_view page, std::string_view words) {
  std::size_t count = 0;
  for (auto at = page.find(words); at != std::string_view::npos; at = page.find(words, at + 1)) {
    ++count;
  }
  return count;
}

std::string made_page() {
  return report_page(telling::testing::made_report(), "blade,cuts\nA,0\n");
}

// Without the script, whose own text would be found.
std::string without_script(std::string page) {
  const std::size_t begin = page.rfind("<script>");
  return page.substr(0, begin);
}

TEST(AReportPage, CarriesItsScriptAndTheOnlyPolicyThatLetsItRun) {
  const std::string page = made_page();

  EXPECT_THAT(page, HasSubstr("<script>" + std::string(report_script()) + "</script>"));
  EXPECT_THAT(page,
              HasSubstr("default-src 'none'; script-src 'sha256-" +
                        std::string(report_script_sha256()) + "'"));
}

TEST(AReportPage, HasWordsAndNumbersForEveryPicture) {
  const std::string page = without_script(made_page());
  const std::size_t figures = count_of(page, "<figure ");

  EXPECT_GT(figures, 2U);
  EXPECT_EQ(count_of(page, "class=\"in-words\""), figures);
  EXPECT_EQ(count_of(page, "<figcaption>"), figures);
  EXPECT_EQ(count_of(page, "The numbers behind this picture"), figures);
}

TEST(AReportPage, ListsEveryRunWithItsKey) {
  const telling::Report report = telling::testing::made_report();

  const std::string page = without_script(report_page(report, ""));

  for (std::size_t run = 0; run < report.judgements.front().judgement.runs.size(); ++run) {
    EXPECT_EQ(count_of(page, "<tr data-run=\"0:" + std::to_string(run) + "\">"), 1U);
  }
}

TEST(AReportPage, ShowsNamesAsTextWhateverTheyAre) {
  telling::Report report = telling::testing::made_report();
  const std::string evil = "</script><script>alert(1)</script><img src=x>";
  report.title = evil;
  report.trial.blades.front().steel = evil;
  report.judgements.front().judgement.arms.front().arm.blade = evil;

  const std::string page = without_script(report_page(report, evil));

  EXPECT_THAT(page, Not(HasSubstr("<script>alert")));
  EXPECT_THAT(page, Not(HasSubstr("<img")));
  EXPECT_THAT(page, HasSubstr("&lt;script&gt;alert(1)"));
}

TEST(AReportPage, HoldsTheTableAndTheCautions) {
  const std::string page = made_page();

  EXPECT_THAT(page, HasSubstr("href=\"data:text/csv;charset=utf-8,blade,cuts%0AA,0%0A\""));
  EXPECT_THAT(page, HasSubstr("Cut away from yourself"));
  EXPECT_THAT(page, HasSubstr("Local law"));
}

TEST(AReportPage, SaysWhichNumberIsWhichWhereNamesAreLong) {
  telling::Report report = telling::testing::made_report();
  const std::string name = "the old carbon trimming knife from the second drawer";
  for (auto& arm : report.judgements.front().judgement.arms) {
    arm.arm.blade = name + " " + arm.arm.blade;
  }

  const std::string page = without_script(report_page(report, ""));

  EXPECT_THAT(page, HasSubstr("1: " + name + " A; 2: " + name + " B; 3: " + name + " C."));
  EXPECT_THAT(without_script(made_page()), Not(HasSubstr("1: ")));
}

TEST(AReportPage, SaysHowItIsJudgedAgainAndWhatItsTableLacks) {
  telling::Report report = telling::testing::made_report();
  report.judged_again_by = "keenfall judge readings.csv --worth-it=2 --seed=1";

  EXPECT_THAT(report_page(report, ""), HasSubstr("<code>" + report.judged_again_by + "</code>"));
  EXPECT_THAT(report_page(report, ""), Not(HasSubstr("A table has no place for")));

  report.not_in_its_table = {"the hardness of A, which is not in Rockwell C"};

  EXPECT_THAT(report_page(report, ""), HasSubstr("A table has no place for the hardness of A"));
}

TEST(AReportPage, SaysOfPlansWhatIsRecordedOfThem) {
  telling::Report report = telling::testing::made_report();
  const std::string nothing = "No plan and no claim that was written down before the first cut";
  EXPECT_THAT(without_script(report_page(report, "")), HasSubstr(nothing));

  report.trial.runs[0].deviations = {"stopped early"};
  const std::string departed = without_script(report_page(report, ""));
  EXPECT_THAT(departed, Not(HasSubstr(nothing)));
  EXPECT_THAT(departed, HasSubstr("Departures from a plan were written down"));

  report.trial.runs[0].deviations.clear();
  report.judgements[0].judgement.comparisons[0].look =
      verdicts::LookReport{.planned = {3, 6}, .number = 1};
  const std::string planned = without_script(report_page(report, ""));
  EXPECT_THAT(planned, Not(HasSubstr(nothing)));
  EXPECT_THAT(planned, HasSubstr("Planned were looks at 3 and 6 runs of every edge"));
  EXPECT_THAT(planned, HasSubstr("No claim that was written down before the first cut"));
}

// Which level of heading it is, of the first that says so.
char level_of(const std::string& page, const std::string& heading) {
  const std::size_t at = page.find(">" + heading + "</h");
  return at == std::string::npos ? '0' : page[at + heading.size() + 4];
}

TEST(AReportPage, OfSeveralKindsHasWhatIsOfEachUnderItsName) {
  telling::Report report = telling::testing::made_report();
  EXPECT_EQ(level_of(without_script(report_page(report, "")), "The fit"), '3');
  report.judgements.push_back(report.judgements.front());
  report.judgements[1].judgement.kind.words = "cord draw reading";

  const std::string page = without_script(report_page(report, ""));

  EXPECT_THAT(page, HasSubstr("<h3 class=\"kind\">Cord draw reading, gf"));
  EXPECT_EQ(level_of(page, "The fit"), '4');
}

TEST(AReportPage, LeavesOutAPartThatSaysNothingAndTheLinkToIt) {
  telling::Report report = telling::testing::made_report();
  verdicts::Judgement& judgement = report.judgements.front().judgement;
  EXPECT_THAT(without_script(report_page(report, "")), HasSubstr("href=\"#else\""));
  judgement.comparisons.clear();
  judgement.curve_check = {};
  for (auto& run : judgement.runs) run.order.reset();

  const std::string page = without_script(report_page(report, ""));

  EXPECT_THAT(page, Not(HasSubstr("#else")));
  EXPECT_THAT(page, Not(HasSubstr("What else could explain it")));
}

TEST(AReportPage, OfNoVerdictSaysWhy) {
  telling::Report report = telling::testing::made_report();
  verdicts::Judgement& judgement = report.judgements.front().judgement;
  judgement.fit.usable = false;
  judgement.fit.reasons = {"R-hat of the scatter is 1.2"};
  judgement.comparisons.clear();

  const std::string page = without_script(report_page(report, ""));

  EXPECT_THAT(page, HasSubstr("No verdict"));
  EXPECT_THAT(page, HasSubstr("R-hat of the scatter is 1.2"));
  EXPECT_THAT(page, Not(HasSubstr("data-figure=\"ratios\"")));
}

}  // namespace
}  // namespace keenfall::page
