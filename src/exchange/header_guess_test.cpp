#include "exchange/header_guess.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::exchange {
namespace {

Grid grid(const std::vector<std::vector<std::string>>& rows) {
  Grid grid;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    GridRow row{.line = i + 1, .cells = {}};
    for (const std::string& text : rows[i]) row.cells.push_back({.text = text});
    grid.rows.push_back(row);
  }
  return grid;
}

ColumnMap guesses(const std::vector<std::vector<std::string>>& rows) {
  const Grid one = grid(rows);
  return guessed_columns({&one, 1}, {});
}

TEST(HeaderGuess, OtherWordsForAColumnAreGuessed) {
  EXPECT_EQ(guessed_column("No. of cuts"), Column::cuts);
  EXPECT_EQ(guessed_column("Blade name"), Column::blade);
  EXPECT_EQ(guessed_column("Knife ID"), Column::blade);
  EXPECT_EQ(guessed_column("Push force (gf)"), Column::reading);
  EXPECT_EQ(guessed_column("Material"), Column::medium);
  EXPECT_EQ(guessed_column("What was cut?"), Column::medium);
}

TEST(HeaderGuess, AHeaderThatIsUnderstoodIsNotGuessed) {
  EXPECT_EQ(guessed_column("reading (gf)"), std::nullopt);
  EXPECT_EQ(guessed_column("Knife"), std::nullopt);
}

TEST(HeaderGuess, NoAngleIsGuessedSinceItMayBePerSideOrInclusive) {
  EXPECT_EQ(guessed_column("angle"), std::nullopt);
  EXPECT_EQ(guessed_column("angle of the edge"), std::nullopt);
  EXPECT_EQ(guessed_column("bevel angle"), std::nullopt);
}

TEST(HeaderGuess, WordsNobodyKnowsAndNoWordsAreNotGuessed) {
  EXPECT_EQ(guessed_column("frobnication"), std::nullopt);
  EXPECT_EQ(guessed_column("number"), std::nullopt);
  EXPECT_EQ(guessed_column(""), std::nullopt);
  EXPECT_EQ(guessed_column("()"), std::nullopt);
  EXPECT_EQ(guessed_column("<script>alert(1)</script>"), std::nullopt);
}

TEST(HeaderGuess, AWholeHeaderInOtherWordsIsGuessed) {
  const ColumnMap columns = guesses({{"Sample", "Material", "Session", "No. of cuts", "Sharpness"},
                                     {"A", "sisal", "1", "0", "104"}});

  EXPECT_THAT(columns,
              testing::UnorderedElementsAre(ColumnMapping{"blade", "Sample"},
                                            ColumnMapping{"medium", "Material"},
                                            ColumnMapping{"run", "Session"},
                                            ColumnMapping{"cuts", "No. of cuts"},
                                            ColumnMapping{"reading", "Sharpness"}));
}

TEST(HeaderGuess, LabelsDownTheFirstColumnAreGuessedToo) {
  const ColumnMap columns = guesses({{"Sample", "A", "B"},
                                     {"Material", "sisal", "sisal"},
                                     {"Session", "1", "1"},
                                     {"0", "104", "99"},
                                     {"15", "131", "120"}});

  EXPECT_THAT(columns,
              testing::UnorderedElementsAre(ColumnMapping{"blade", "Sample"},
                                            ColumnMapping{"medium", "Material"},
                                            ColumnMapping{"run", "Session"}));
}

TEST(HeaderGuess, AColumnThatIsThereIsNotGuessedAgain) {
  EXPECT_THAT(guesses({{"blade", "sample", "medium", "run", "cuts", "reading"},
                       {"A", "x", "sisal", "1", "0", "104"}}),
              testing::IsEmpty());
}

TEST(HeaderGuess, TwoHeadersThatCouldBeOneColumnAreNotGuessed) {
  EXPECT_THAT(guesses({{"sample", "item", "medium", "run", "cuts", "reading"},
                       {"A", "x", "sisal", "1", "0", "104"}}),
              testing::IsEmpty());
}

TEST(HeaderGuess, AColumnOfNumbersIsNotGuessedOverWords) {
  EXPECT_THAT(guesses({{"blade", "medium", "run", "cuts", "result"},
                       {"A", "sisal", "1", "0", "good"},
                       {"A", "sisal", "1", "5", "bad"}}),
              testing::IsEmpty());
}

TEST(HeaderGuess, WhatThePersonMappedIsNotGuessed) {
  const Grid one = grid({{"sample", "medium", "run", "cuts", "reading", "heft"},
                         {"A", "sisal", "1", "0", "104", "x"}});
  const TableOptions options{.columns = {{"blade", "heft"}}};

  EXPECT_THAT(guessed_columns({&one, 1}, options), testing::IsEmpty());
}

TEST(HeaderGuess, AMappingThatOneOfTheTablesHasNoHeaderForIsNotGuessed) {
  const std::vector<Grid> two = {grid({{"sample", "medium", "run", "cuts", "reading"}}),
                                 grid({{"blade", "medium", "run", "cuts", "reading"}})};

  EXPECT_THAT(guessed_columns(two, {}), testing::IsEmpty());
}

TEST(HeaderGuess, NothingIsGuessedOfAnEmptyTable) {
  EXPECT_THAT(guesses({}), testing::IsEmpty());
  EXPECT_THAT(guessed_columns({}, {}), testing::IsEmpty());
}

}  // namespace
}  // namespace keenfall::exchange
