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
