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

// With every space an ordinary one.
std::string with_spaces(std::string page) {
  const std::string kept = "\u00A0";
  for (auto at = page.find(kept); at != std::string::npos; at = page.find(kept, at)) {
    page.replace(at, kept.size(), " ");
  }
  return page;
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
  EXPECT_THAT(without_script(made_page()), Not(HasSubstr(". 1: ")));
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

TEST(AReportPage, DoesNotSayThatDeparturesAreNotRecordedWhereItListsThem) {
  telling::Report report = telling::testing::made_report();
  const std::string not_recorded = "Departures from the plan";
  EXPECT_THAT(without_script(report_page(report, "")), HasSubstr(not_recorded));

  report.planned = {"Done otherwise than planned:", "Of A 2 runs were planned and 1 counts."};
  const std::string planned = without_script(report_page(report, ""));
  EXPECT_THAT(planned, Not(HasSubstr(not_recorded)));
  EXPECT_THAT(planned, HasSubstr("Of A 2 runs were planned and 1 counts."));

  report.trial.runs[0].deviations = {"stopped early"};
  EXPECT_THAT(without_script(report_page(report, "")), HasSubstr(not_recorded));
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

// Arms of one medium cut to different lengths: what stands in a row is at its cuts.
TEST(AReportPage, PutsEveryReadingOfACurveInTheRowOfItsCuts) {
  telling::Report report = telling::testing::made_report();
  auto& arms = report.judgements.front().judgement.arms;
  const auto point = [](double cuts, double reading) {
    return verdicts::CurvePoint{.cuts = cuts, .reading = verdicts::testing::around(reading, 0)};
  };
  arms[0].curve = {point(0, 100), point(14, 211), point(21, 222)};
  arms[1].curve = {point(0, 100), point(42, 333)};
  arms[2].curve = {point(0, 100), point(14, 144), point(42, 344)};

  const std::string page = without_script(report_page(report, ""));

  const auto row = [&page](const std::string& cuts) {
    const std::size_t begin = page.find(cuts + "</th>", page.find("by the curves, with 95 %"));
    std::string cells = page.substr(begin, page.find("</tr>", begin) - begin);
    while (cells.find(" class=\"number\"") != std::string::npos) {
      cells.erase(cells.find(" class=\"number\""), std::string(" class=\"number\"").size());
    }
    return cells;
  };
  EXPECT_EQ(row(">14"), ">14</th><td>211 (211 to 211)</td><td></td><td>144 (144 to 144)</td>");
  EXPECT_EQ(row(">42"), ">42</th><td></td><td>333 (333 to 333)</td><td>344 (344 to 344)</td>");
}

// Each medium's edges are compared at a reading of their own (compare.h).
TEST(AReportPage, SaysInEachMediumWhereItIsCompared) {
  telling::Report report = telling::testing::made_report();
  auto& judgement = report.judgements.front().judgement;
  for (verdicts::Comparison& pair : judgement.comparisons) {
    pair.at = {.what = verdicts::ComparedAt::common_reading, .reading = pair.a > 2 ? 620.0 : 270.0};
  }
  judgement.media->at = judgement.comparisons.back().at;
  for (std::size_t arm = 0; arm < judgement.arms.size(); ++arm) {
    judgement.arms[arm].common_reading = verdicts::CutsToLevel{
        .cuts = verdicts::testing::around(61 + 10 * static_cast<double>(arm), 0.1)};
    judgement.runs[arm].compared_cuts =
        verdicts::testing::around(62 + 10 * static_cast<double>(arm), 0.1);
  }
  for (auto& cuts : judgement.media->media[0].lasting) {
    cuts.cuts = verdicts::testing::around(555, 0.1);
  }

  const std::string page = with_spaces(without_script(report_page(report, "")));

  const std::size_t first = page.find("<h3>On new matting", page.find("id=\"pictures\""));
  const std::size_t second = page.find("<h3>On uplifted matting", first);
  const std::size_t across = page.find("data-figure=\"media\"");
  const std::string of_first = page.substr(first, second - first);
  const std::string of_second =
      page.substr(second, page.find("data-figure=\"starts\"", second) - second);
  EXPECT_THAT(of_first, HasSubstr("Cuts to reach 270 gf"));
  EXPECT_THAT(of_first, HasSubstr("A starts at 104 gf and has reached 270 gf after 61 cuts"));
  EXPECT_THAT(of_first, Not(HasSubstr("620 gf")));
  EXPECT_THAT(of_second, HasSubstr("Cuts to reach 620 gf"));
  EXPECT_THAT(of_second, HasSubstr("A starts at 104 gf and has reached 620 gf after 91 cuts"));
  EXPECT_THAT(of_second, Not(HasSubstr("270 gf")));
  EXPECT_THAT(page.substr(across, 400), HasSubstr("Cuts to reach 620 gf, medium by medium"));
  EXPECT_THAT(page.substr(across), HasSubstr("A: 555 cuts (55.5 m) on new matting"));
  EXPECT_THAT(
      page.substr(across),
      HasSubstr("cuts to reach 270 gf (new matting); to reach 620 gf (uplifted matting)</th>"));
  EXPECT_THAT(page.substr(across), HasSubstr("<td class=\"number\">62</td>"));
}

// The picture of starts has a dot for each run: the geometric mean of 80, 125 and 100 is 100.
TEST(AReportPage, HasTheReadStartOfEveryRunBehindThePictureOfStarts) {
  const std::string page = without_script(made_page());

  EXPECT_THAT(page.substr(page.find("data-figure=\"starts\"")),
              HasSubstr("<td class=\"words\">100 (run 1)</td>"));
  EXPECT_THAT(page, HasSubstr("start by the curve, gf"));
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
