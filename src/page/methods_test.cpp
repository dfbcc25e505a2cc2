#include "page/methods.h"

#include "page/embedded.h"
#include "telling/made_report_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <stdexcept>

namespace keenfall::page {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;

TEST(Methods, KeepWhatIsOfAllAndOfWhatIsAskedFor) {
  const std::string text = "a<!--of read--> b<!--end--><!--of tested--> c<!--end--> d";

  EXPECT_EQ(kept_of(text, {"read"}), "a b d");
  EXPECT_EQ(kept_of(text, {"tested", "read"}), "a b c d");
  EXPECT_EQ(kept_of(text, {}), "a d");
  EXPECT_EQ(kept_of("", {"read"}), "");
}

TEST(Methods, RefuseAMarkThatDoesNotEnd) {
  EXPECT_THROW(static_cast<void>(kept_of("a<!--of read--> b", {})), std::logic_error);
}

TEST(Methods, OfEdgesThatWereReadSayNothingOfTests) {
  const std::string methods = methods_of(telling::testing::made_report());

  EXPECT_THAT(methods, AllOf(HasSubstr("half keenness"), HasSubstr("Finney")));
  EXPECT_THAT(
      methods,
      AllOf(Not(HasSubstr("interval-censored")), Not(HasSubstr("Meeker")), Not(HasSubstr("<!--"))));
}

TEST(Methods, OfEdgesThatWereTestedSayNothingOfCurves) {
  telling::Report report = telling::testing::made_report();
  report.judgements.front().judgement.kind.name = "edge_life";

  const std::string methods = methods_of(report);

  EXPECT_THAT(methods, AllOf(HasSubstr("interval-censored"), HasSubstr("Escobar: ")));
  EXPECT_THAT(methods, AllOf(Not(HasSubstr("Finney")), Not(HasSubstr("<sup>"))));
}

// Every verdict that docs/methods/verdicts.md has.
TEST(Methods, ExplainEveryVerdict) {
  const std::string methods = methods_of(telling::testing::made_report());

  for (const char* verdict : {"longer",
                              "longer, and worth having",
                              "longer but too little to matter",
                              "practically the same",
                              "not settled"}) {
    EXPECT_THAT(methods, HasSubstr(std::string("<i>") + verdict + "</i>"));
  }
}

}  // namespace
}  // namespace keenfall::page
