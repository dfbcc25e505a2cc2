#include "verdicts/verdict.h"

#include <gtest/gtest.h>

#include <array>
#include <stdexcept>

namespace keenfall::verdicts {
namespace {

RatioBounds bounds(double lo95, double lo90, double hi90, double hi95) {
  return {.lo90 = lo90, .hi90 = hi90, .lo95 = lo95, .hi95 = hi95};
}

TEST(Verdicts, FollowTheTableOfRulesAtAMarginOfOneAndAHalf) {
  EXPECT_EQ(verdict_on(bounds(2.2, 2.4, 3.9, 4.2), 1.5), Verdict::longer_and_worth_having);
  EXPECT_EQ(verdict_on(bounds(1.1, 1.2, 2.0, 2.2), 1.5), Verdict::longer);
  EXPECT_EQ(verdict_on(bounds(1.01, 1.04, 1.38, 1.43), 1.5),
            Verdict::longer_but_too_little_to_matter);
  EXPECT_EQ(verdict_on(bounds(0.81, 0.84, 1.12, 1.15), 1.5), Verdict::practically_the_same);
  EXPECT_EQ(verdict_on(bounds(0.91, 0.96, 1.58, 1.67), 1.5), Verdict::not_settled);
}

TEST(Verdicts, OfTheReversedRatioAreTheMirrorImage) {
  const std::array longer{
      bounds(2.2, 2.4, 3.9, 4.2), bounds(1.1, 1.2, 2.0, 2.2), bounds(1.01, 1.04, 1.38, 1.43)};
  const std::array shorter{Verdict::shorter_by_enough_to_matter,
                           Verdict::shorter,
                           Verdict::shorter_but_too_little_to_matter};
  for (std::size_t i = 0; i < longer.size(); ++i) {
    const RatioBounds& b = longer[i];
    EXPECT_EQ(verdict_on(bounds(1 / b.hi95, 1 / b.hi90, 1 / b.lo90, 1 / b.lo95), 1.5), shorter[i]);
  }
}

TEST(Verdicts, ABladeThatMayLastLessIsNeverReportedLonger) {
  EXPECT_EQ(verdict_on(bounds(1.0, 1.1, 3, 4), 1.5), Verdict::not_settled);
}

TEST(Verdicts, RefuseAMarginOfOne) {
  EXPECT_THROW((void)verdict_on(bounds(1, 1, 2, 2), 1), std::logic_error);
}

TEST(Verdicts, NeverSayThatThereIsNoDifference) {
  EXPECT_EQ(in_words(Verdict::practically_the_same), "practically the same");
  EXPECT_EQ(in_words(Verdict::longer_and_worth_having), "longer, and worth having");
  EXPECT_TRUE(is_settled(Verdict::practically_the_same));
  EXPECT_FALSE(is_settled(Verdict::not_settled));
}

}  // namespace
}  // namespace keenfall::verdicts
