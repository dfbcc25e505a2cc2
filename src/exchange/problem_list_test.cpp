#include "exchange/problem_list.h"

#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

TEST(ProblemLists, StandInTheOrderOfFilesAndLines) {
  ProblemList list;
  list.begin_file("a.csv");
  list.begin_file("b.csv");
  list.add({1, 3}, {.sentence = "third"});
  list.add({0, 9}, {.sentence = "second"});
  list.add({0, 2}, {.sentence = "first"});

  const auto problems = std::move(list).sorted();

  ASSERT_EQ(problems.size(), 3U);
  EXPECT_EQ(base::in_words(problems[0]), "a.csv, line 2: first.");
  EXPECT_EQ(base::in_words(problems[2]), "b.csv, line 3: third.");
}

TEST(ProblemLists, TellOnceWhatManyRowsShare) {
  ProblemList list;
  list.begin_file("a.csv");
  for (std::size_t line = 2; line <= 5; ++line) {
    list.add_counted("unit", {0, line}, {.sentence = "Wrong unit."});
  }

  const auto problems = std::move(list).sorted();

  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(base::in_words(problems[0]), "a.csv, line 2: Wrong unit. The same on 3 further lines.");
}

TEST(ProblemLists, StopAtTwoHundredAndSayHowManyMore) {
  ProblemList list;
  list.begin_file("a.csv");
  for (std::size_t line = 1; line <= 1000; ++line) list.add({0, line}, {.sentence = "Bad."});

  const auto problems = std::move(list).sorted();

  ASSERT_EQ(problems.size(), 201U);
  EXPECT_EQ(problems.back().sentence, "And 800 more problems like these, not listed.");
}

}  // namespace
}  // namespace keenfall::exchange
