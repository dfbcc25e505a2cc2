#include "page/run_list.h"

#include "page/struck_list.h"
#include "telling/made_report_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <utility>

namespace keenfall::page {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;

std::string run_list(const telling::Report& report) {
  Html html;
  add_run_list(html, report, 0);
  return std::move(html).taken();
}

std::string struck_list(const telling::Report& report) {
  Html html;
  add_struck_list(html, report, 0);
  return std::move(html).taken();
}

verdicts::Judgement& judgement_of(telling::Report& report) {
  return report.judgements.front().judgement;
}

// A blade whose two runs were voided, with 28 readings of which none counts.
telling::Report with_a_voided_blade() {
  telling::Report report = telling::testing::made_report();
  trials::Run run{.name = "1", .arm = {.blade = "D", .medium = {.name = "new matting"}}};
  run.readings.resize(28, {.cuts = 5, .reading = 100});
  run.voided_reason = "burr left";
  for (const char* name : {"1", "2"}) {
    run.name = name;
    report.trial.runs.push_back(run);
    judgement_of(report).runs_of_arms_not_judged.push_back(
        {.run = report.trial.runs.size() - 1,
         .name = name,
         .last_cuts = 5,
         .not_used_because = "voided: burr left"});
  }
  return report;
}

TEST(ARunList, HoldsTheRunsOfEdgesOfWhichNoneCouldBeUsed) {
  telling::Report report = with_a_voided_blade();
  const std::string all = std::to_string(judgement_of(report).runs.size() + 2);

  const std::string list = run_list(report);

  EXPECT_THAT(list, HasSubstr("<caption>All " + all + " runs, 2 of them not used: "));
  EXPECT_THAT(list, HasSubstr("<td class=\"words\">D</td>"));
  EXPECT_THAT(list, HasSubstr("28, none used</td><td class=\"words\">Not used: voided: burr left"));
}

TEST(ARunList, OfOneRunDoesNotSayAll) {
  telling::Report report = telling::testing::made_report();
  judgement_of(report).runs.resize(1);

  EXPECT_THAT(run_list(report), HasSubstr("<caption>The only run: "));
}

TEST(ARunList, LeavesOutWhatIsSaidOfNoRun) {
  telling::Report report = telling::testing::made_report();
  for (auto& run : judgement_of(report).runs) {
    run.block.clear();
    run.order.reset();
    run.remarks.clear();
  }

  const std::string list = run_list(report);

  EXPECT_THAT(list, AllOf(HasSubstr(">medium</th>"), HasSubstr(">readings</th>")));
  EXPECT_THAT(list,
              AllOf(Not(HasSubstr(">block</th>")),
                    Not(HasSubstr(">order</th>")),
                    Not(HasSubstr(">noticed</th>"))));
}

TEST(ARunList, SaysInItsCaptionWhatAllRunsWereCutIn) {
  telling::Report report = telling::testing::made_report();
  for (auto& arm : judgement_of(report).arms) arm.arm.medium.name = "felt";

  const std::string list = run_list(report);

  EXPECT_THAT(list, HasSubstr(" on felt</caption>"));
  EXPECT_THAT(list, Not(HasSubstr(">medium</th>")));
}

TEST(AStruckList, SaysWhereWhatAndWhy) {
  telling::Report report = telling::testing::made_report();
  judgement_of(report).runs.resize(1);

  const std::string list = struck_list(report);

  EXPECT_THAT(list,
              HasSubstr("<td class=\"number\">0</td><td class=\"number\">900 gf</td>"
                        "<td class=\"words\">struck out: slipped</td>"));
  EXPECT_THAT(
      list, HasSubstr("<td class=\"number\">100 gf</td><td class=\"words\">doubtful: shook</td>"));
}

TEST(AStruckList, IsNotThereWhereNothingIsStruck) {
  telling::Report report = telling::testing::made_report();
  for (auto& run : report.trial.runs) {
    for (auto& reading : run.readings) reading.struck_reason = reading.doubtful_reason = {};
  }

  EXPECT_EQ(struck_list(report), "");
}

}  // namespace
}  // namespace keenfall::page
