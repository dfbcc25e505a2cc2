#include "workbench/said_on_a_page.h"

#include "exchange/long_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::workbench {
namespace {

using testing::HasSubstr;
using testing::Not;

struct Given {
  std::string table;
  exchange::TableOptions options = {};
};

// A table for each sentence that names an option of the command.
std::vector<Given> tables_that_need_a_choice() {
  const std::string header = "blade,medium,run,cuts,reading";
  return {
      {"medium,run,cuts,reading\nsisal,1,0,104\n"},
      {"medium;sisal\nrun;1\n0;104\n"},
      {"blade;medium;run;cuts;reading\nA;sisal;1;0;1,234\n"},
      {header + "\nA,sisal,1,0,\"104,5\"\n"},
      {header + ",kind\nA,sisal,1,0,104,heft\n"},
      {header + ",unit\nA,sisal,1,0,104,mm\n"},
      {header + ",unit\nA,sisal,1,0,104,furlongs\n"},
      {"blade,A,medium\nmedium,sisal,run\nrun,1,cuts\n0,104,9\nblade,medium,run\n"},
      {header + "\nA,sisal,1,0,104\n", {.default_kind = "heft"}},
      {header + "\nA,sisal,1,0,104\n", {.sheets = {"Trial 2"}}},
      {header + "\nA,sisal,1,0,104\n", {.columns = {{"blade", "sample"}}}},
      {header + "\nA,sisal,1,0,104\n", {.columns = {{"heft", "blade"}}}},
  };
}

TEST(SaidOnAPage, NoSentenceNamesAnOptionOfTheCommand) {
  std::size_t named_options = 0;
  for (const Given& given : tables_that_need_a_choice()) {
    const auto trial = exchange::take_table_text(given.table, "t.csv", given.options);
    ASSERT_FALSE(trial) << given.table;
    for (const base::Problem& problem : trial.error()) {
      named_options += base::in_words(problem).find("--") == std::string::npos ? 0U : 1U;

      EXPECT_THAT(base::in_words(said_on_a_page(problem)), Not(HasSubstr("--")));
    }
  }
  EXPECT_GE(named_options, 10U);
}

TEST(SaidOnAPage, AColumnOfAnotherNameIsChosen) {
  const auto trial =
      exchange::take_table_text("medium,run,cuts,reading\nsisal,1,0,104\n", "t.csv", {});

  EXPECT_THAT(said_on_a_page(trial.error()).front().sentence,
              HasSubstr("If it has another name here, choose it under “What the columns hold”. "
                        "Columns found: medium"));
}

TEST(SaidOnAPage, WhatAPersonWroteStaysAsItIs) {
  const base::Problem problem{.sentence = "“--kind” is not a number.",
                              .place = {.found = "--kind"}};

  EXPECT_EQ(said_on_a_page(problem), problem);
}

TEST(SaidOnAPage, NoProblemsAreNone) {
  EXPECT_TRUE(said_on_a_page(std::vector<base::Problem>{}).empty());
}

}  // namespace
}  // namespace keenfall::workbench
