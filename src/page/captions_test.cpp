#include "page/report_page.h"

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

// Without the script, whose own text would be found.
std::string page_of(const telling::Report& report) {
  const std::string page = report_page(report, "");
  return page.substr(0, page.rfind("<script>"));
}

std::size_t times_in(std::string_view text, std::string_view words) {
  std::size_t count = 0;
  for (auto at = text.find(words); at != std::string_view::npos; at = text.find(words, at + 1)) {
    ++count;
  }
  return count;
}

std::string caption_of(const std::string& page, const std::string& figure) {
  const std::size_t begin = page.find("<figcaption>", page.find("data-figure=\"" + figure + "\""));
  return page.substr(begin, page.find("</figcaption>", begin) - begin);
}

// The made trial's first run, on new matting, has a struck reading and an event; no other has.
TEST(Captions, ExplainOnlyWhatThePictureOfCurvesHolds) {
  const std::string page = page_of(telling::testing::made_report());

  const std::string first = caption_of(page, "curves");
  EXPECT_THAT(first, HasSubstr("Crosses: struck out."));
  EXPECT_THAT(first, HasSubstr("Triangles: something happened."));
  EXPECT_THAT(first, HasSubstr("Rings: where it has doubled."));
  EXPECT_THAT(first, HasSubstr("Shaded: beyond what was cut."));
  const std::string second = caption_of(
      page.substr(page.find("On uplifted matting", page.find("id=\"pictures\""))), "curves");
  EXPECT_THAT(second, Not(HasSubstr("Crosses")));
  EXPECT_THAT(second, Not(HasSubstr("Triangles")));
}

TEST(Captions, ExplainNeitherShadeNorRingsWhereThereAreNone) {
  telling::Report report = telling::testing::made_report();
  for (verdicts::ArmResult& arm : report.judgements.front().judgement.arms) {
    arm.longest_run_cuts = 1e6;
    arm.half_keenness->beyond_what_was_cut = true;
  }

  const std::string caption = caption_of(page_of(report), "curves");

  EXPECT_THAT(caption, Not(HasSubstr("Shaded")));
  EXPECT_THAT(caption, Not(HasSubstr("Rings")));
  EXPECT_THAT(caption, HasSubstr("Bold: each edge with its 95\u00A0% band"));
}

TEST(Captions, SayAtLeastOfAnEdgeOfWhichNoRunGotThere) {
  telling::Report report = telling::testing::made_report();
  for (verdicts::ArmResult& arm : report.judgements.front().judgement.arms) {
    arm.half_keenness->beyond_what_was_cut = true;
    arm.half_keenness->runs_that_reached = 0;
  }

  EXPECT_THAT(page_of(report),
              HasSubstr("and has doubled after at least 28 cuts: no run got there"));
}

TEST(Captions, SayOfReadingsThatFallWhatShareOfTheStartIsLeft) {
  telling::Report report = telling::testing::made_report();
  verdicts::Judgement& judgement = report.judgements.front().judgement;
  judgement.kind = *trials::find_reading_kind("card_bite");
  judgement.unit = "mm";
  judgement.comparisons.front().ratio_by_level = {
      {.level = 1.25, .ratio = {.median = 3.5, .lo95 = 3, .hi95 = 4}},
      {.level = 3, .ratio = {.median = 2.5, .lo95 = 2, .hi95 = 3}}};

  const std::string page = page_of(report);

  EXPECT_THAT(page,
              HasSubstr("3.5 when the reading has fallen to 4/5 of its start, 2.5 when the reading "
                        "has fallen to 1/3 of its start."));
  EXPECT_THAT(caption_of(page, "levels"), HasSubstr("the reading, as a share of its start"));
  EXPECT_THAT(caption_of(page, "levels"), HasSubstr("Upright: what is compared."));
  EXPECT_THAT(page, Not(HasSubstr("1.25 times")));
}

TEST(Captions, TellTheKeyOfNumberedEdgesOnceForAllMedia) {
  telling::Report report = telling::testing::made_report();
  auto& judged = report.judgements.front();
  for (auto& arm : judged.judgement.arms) arm.arm.blade = "the trimming knife " + arm.arm.blade;

  const std::string caption = caption_of(page_of(report), "order");

  EXPECT_EQ(times_in(caption, "1: the trimming knife A"), 1U);
  EXPECT_EQ(times_in(caption, "3: the trimming knife C"), 1U);
}

// Every made run is the third of its block, and all are in block 1.
TEST(Captions, SpeakOfShadedBlocksOnlyWhereThereAreTwo) {
  telling::Report report = telling::testing::made_report();
  EXPECT_THAT(caption_of(page_of(report), "order"), Not(HasSubstr("Shaded")));

  auto& runs = report.judgements.front().judgement.runs;
  for (std::size_t i = 3; i < runs.size(); ++i) runs[i].block = "2";
  const std::string caption = caption_of(page_of(report), "order");

  EXPECT_THAT(caption, HasSubstr("in the order they were cut, block after block"));
  EXPECT_THAT(caption, HasSubstr("Shaded by turns: blocks."));
}

}  // namespace
}  // namespace keenfall::page
