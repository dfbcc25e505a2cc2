#include "cli/process.h"

#include "verdicts/made_judgement_test.h"
#include "workbench/notebook_trouble.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <new>
#include <stdexcept>
#include <string>
#include <vector>

namespace keenfall::cli {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using verdicts::Judgement;

struct Said {
  int exit_code = 0;
  std::string out;
  std::string err;
};

// The program with an engine that is made to do what the real one hardly ever does.
template <typename Engine>
Said said_with(Engine engine) {
  const UseCases use_cases{
      .judge_files = [engine](auto, const auto&, const auto&, const auto&, const auto&)
          -> base::ResultOrProblems<workbench::JudgedFiles> {
        auto judgements = engine();
        if (!judgements) return tl::unexpected(judgements.error());
        return workbench::JudgedFiles{.judgements = *judgements};
      },
      .judge_trial = [engine](
                         const auto&, const auto&, const auto&, const auto&) { return engine(); },
      .matting_bench = [](base::Seed) { return trials::Trial{}; }};
  std::vector<std::string> words = {"keenfall", "judge", "t.csv"};
  std::vector<char*> arguments;
  for (std::string& word : words) arguments.push_back(word.data());
  ::testing::internal::CaptureStdout();
  ::testing::internal::CaptureStderr();
  Said said;
  said.exit_code = run_as_process(static_cast<int>(arguments.size()), arguments.data(), use_cases);
  (void)std::fflush(stdout);
  said.out = ::testing::internal::GetCapturedStdout();
  said.err = ::testing::internal::GetCapturedStderr();
  return said;
}

TEST(Process, EndsWithOneWhenTheFitIsNotUsable) {
  const Said said = said_with([]() -> Judgements {
    Judgement judgement = verdicts::testing::made_judgement();
    judgement.comparisons.clear();
    judgement.fit.usable = false;
    judgement.fit.reasons = {"R-hat is 1.2, and at most 1.01 is needed."};
    return std::vector<Judgement>{judgement};
  });

  EXPECT_EQ(said.exit_code, 1);
  EXPECT_THAT(said.out, HasSubstr("R-hat is 1.2"));
}

TEST(Process, EndsWithZeroWhenOneOfSeveralFitsIsUsable) {
  const Said said = said_with([]() -> Judgements {
    Judgement unusable = verdicts::testing::made_judgement();
    unusable.comparisons.clear();
    unusable.fit.usable = false;
    return std::vector<Judgement>{unusable, verdicts::testing::made_judgement()};
  });

  EXPECT_EQ(said.exit_code, 0);
}

TEST(Process, OwnsUpToItsOwnFaults) {
  const Said said =
      said_with([]() -> Judgements { throw std::logic_error("a promise was broken"); });

  EXPECT_EQ(said.exit_code, 70);
  EXPECT_THAT(said.err, HasSubstr("fault in Keenfall"));
  EXPECT_THAT(said.out, IsEmpty());
}

TEST(Process, SaysWhenThereIsNotEnoughMemory) {
  const Said said = said_with([]() -> Judgements { throw std::bad_alloc(); });

  EXPECT_EQ(said.exit_code, 1);
  EXPECT_THAT(said.err, HasSubstr("not enough memory"));
}

TEST(Process, CallsADamagedNotebookFileTroubleInItsOwnWords) {
  const Said said =
      said_with([]() -> Judgements { throw workbench::NotebookTrouble("b.keen: damaged."); });

  EXPECT_EQ(said.exit_code, 4);
  EXPECT_EQ(said.err, "b.keen: damaged.\n");
  EXPECT_THAT(said.out, IsEmpty());
}

}  // namespace
}  // namespace keenfall::cli
