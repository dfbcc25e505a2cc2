#include "trust/request.h"

#include <gtest/gtest.h>

namespace keenfall::trust {
namespace {

base::ResultOrProblems<Request> asked(const std::vector<std::string>& words) {
  return request_of(words, 2);
}

TEST(TrustRequest, WithoutWordsIsForEverything) {
  const Request request = asked({}).value();

  EXPECT_TRUE(request.names.empty());
  EXPECT_EQ(request.threads, 2U);
  EXPECT_FALSE(request.list);
}

TEST(TrustRequest, NamesKindsCellsAndExperiments) {
  const Request request =
      asked({"looks", "runs-4", "full-runs-3.margin", "--trials=100", "--threads=3"}).value();

  EXPECT_EQ(request.names, (std::vector<std::string>{"looks", "runs-4", "full-runs-3.margin"}));
  EXPECT_EQ(request.most_trials, 100);
  EXPECT_EQ(request.threads, 3U);
}

TEST(TrustRequest, TellsEverythingThatIsWrongAtOnce) {
  const auto request = asked({"runs-5", "--trials=0", "--threads=two"});

  ASSERT_FALSE(request);
  ASSERT_EQ(request.error().size(), 3U);
  EXPECT_EQ(request.error()[0].sentence, "There is no experiment and no option called \"runs-5\".");
  EXPECT_EQ(request.error()[1].sentence, "--trials takes a number, and \"0\" is none it takes.");
  EXPECT_EQ(request.error()[2].accepted, "a whole number from 1 to 1024");
}

}  // namespace
}  // namespace keenfall::trust
