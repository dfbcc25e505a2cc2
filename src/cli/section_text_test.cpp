#include "cli/section_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace keenfall::cli {
namespace {

using telling::Section;
using telling::WhenLong;
using ::testing::AllOf;
using ::testing::EndsWith;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

Section forty_items() {
  return {.id = "noticed",
          .heading = "Noticed in the runs",
          .items = {40, telling::plain("Something.")},
          .remarks = {telling::plain("A remark.")}};
}

TEST(SectionText, CutsLongListsShortAndSaysSo) {
  EXPECT_THAT(section_text(forty_items(), {}),
              EndsWith("  Something.\n  and 28 more; --json holds them all.\n  A remark.\n"));
}

TEST(SectionText, ShowsTwelveItemsWithoutAWord) {
  Section section = forty_items();
  section.items.resize(12);

  EXPECT_THAT(section_text(section, {}), Not(HasSubstr("more")));
}

TEST(SectionText, IsEmptyWhereAPartOfTheListWouldMislead) {
  Section section = forty_items();
  section.when_long = WhenLong::left_out;
  EXPECT_THAT(section_text(section, {}), IsEmpty());

  section.items.resize(12);
  EXPECT_THAT(section_text(section, {}), HasSubstr("Something."));
}

TEST(SectionText, KeepsAListThatIsToBeKept) {
  Section section = forty_items();
  section.when_long = WhenLong::kept;

  EXPECT_THAT(section_text(section, {}), Not(HasSubstr("more")));
}

TEST(SectionText, HasTheLeadInPlaceOfTheHeading) {
  Section section = forty_items();
  section.lead = telling::plain("In the runs this was noticed:");

  EXPECT_THAT(section_text(section, {}),
              AllOf(HasSubstr("In the runs this was noticed:\n  Something."),
                    Not(HasSubstr("Noticed in the runs"))));
}

}  // namespace
}  // namespace keenfall::cli
