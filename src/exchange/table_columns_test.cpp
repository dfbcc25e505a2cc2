#include "exchange/table_columns.h"

#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

using testing::Contains;
using testing::HasSubstr;

constexpr const char* kForeign = "knife,stock,run,case,strokes,force\nA,sisal,9,1,0,104\n";

ColumnMap foreign_columns() {
  return {{"blade", "knife"}, {"medium", "stock"}, {"cuts", "strokes"}, {"reading", "force"}};
}

TEST(ColumnDefinitions, StandInTheOrderOfTheirEnum) {
  for (std::size_t i = 0; i < kColumnCount; ++i) {
    EXPECT_EQ(definition_of(static_cast<Column>(i)).name, column_definitions()[i].name);
  }
}

TEST(Headers, MatchIgnoringCaseSpacesHyphensAndUnderscores) {
  const auto trial = taken(
      "BLADE,Medium,run,Cuts,reading,Bevel angle per side (deg),Cut-length mm\nA,s,1,0,9,17,100\n");

  EXPECT_EQ(trial.runs.at(0).arm.edge.bevel_angle, trials::PerSideAngle{17});
  EXPECT_EQ(trial.runs.at(0).arm.method.cut_length_mm, 100);
}

TEST(Headers, ThatAreNotUnderstoodAreNamedInARemark) {
  const auto trial = taken("blade,medium,run,cuts,reading,feed,case\nA,s,1,0,9,2,3\n");

  EXPECT_THAT(trial.remarks, Contains("Not used, because not understood: the columns feed, case."));
}

TEST(Headers, ThatAreMissingAreEachSaidWithWhatTheyMustHold) {
  const auto problems = problems_in("blade;medium;Zyklen\nA;s;3\n");

  ASSERT_EQ(problems.size(), 3U);
  EXPECT_EQ(problems[1].kind, base::ProblemKind::missing);
  EXPECT_EQ(
      base::in_words(problems[1]),
      "t.csv, line 1, column cuts: There is no column cuts. It must hold the cuts made before "
      "the reading. If it has another name here, say so: --column cuts=\"...\".");
  EXPECT_THAT(problems[0].sentence, HasSubstr("Columns found: blade, medium, Zyklen."));
}

TEST(Headers, ThatStandTwiceAreRefused) {
  EXPECT_THAT(problem_in("blade,medium,run,cuts,reading,Cuts\nA,s,1,0,9,1\n"),
              HasSubstr("Columns 4 and 6 are both named “Cuts”"));
}

TEST(Headers, ThatStandTwiceButAreNotUsedDoNoHarm) {
  EXPECT_EQ(taken("blade,medium,run,cuts,reading,x,x\nA,s,1,0,9,1,2\n").runs.size(), 1U);
}

TEST(Mappings, AreWrittenAsOursEqualsTheirs) {
  EXPECT_EQ(*parse_column_mapping("cuts=strokes"), (ColumnMapping{"cuts", "strokes"}));
  EXPECT_EQ(*parse_column_mapping(" Cut length mm = len = mm "),
            (ColumnMapping{"cut_length_mm", "len = mm"}));
}

TEST(Mappings, WithoutASideAreRefused) {
  for (const char* text : {"cuts", "cuts=", "=strokes", ""}) {
    const auto mapping = parse_column_mapping(text);
    ASSERT_FALSE(mapping) << text;
    EXPECT_THAT(mapping.error().accepted, HasSubstr("cuts=strokes"));
  }
}

TEST(Mappings, ToAColumnNobodyHasAreRefusedWithAListOfOurs) {
  const auto mapping = parse_column_mapping("sharpness=force");

  ASSERT_FALSE(mapping);
  EXPECT_EQ(mapping.error().kind, base::ProblemKind::unknown_name);
  EXPECT_THAT(base::in_words(mapping.error()),
              HasSubstr("“sharpness” is no column known here. Accepted: one of blade, medium"));
}

TEST(Mappings, TakeForeignHeaders) {
  const auto trial = taken(kForeign, {.columns = foreign_columns()});

  EXPECT_EQ(trial.runs.at(0).name, "9");
  EXPECT_EQ(trial.runs.at(0).readings.at(0).reading, 104);
}

TEST(Mappings, BeatAColumnOfTheSameName) {
  ColumnMap columns = foreign_columns();
  columns.push_back({"run", "case"});

  const auto trial = taken(kForeign, {.columns = columns});

  EXPECT_EQ(trial.runs.at(0).name, "1");
  EXPECT_THAT(trial.remarks, Contains("Not used, because not understood: the columns run."));
}

TEST(Mappings, ToAHeaderThatIsNotThereAreRefusedOnceWithTheHeadersThereAre) {
  ColumnMap columns = foreign_columns();
  columns[2].theirs = "slices";

  const auto problems = problems_in(kForeign, {.columns = columns});

  ASSERT_EQ(problems.size(), 1U);
  EXPECT_THAT(
      base::in_words(problems[0]),
      HasSubstr("cuts is mapped to “slices”, but the table has no such column. Columns found: "
                "knife, stock, run, case, strokes, force."));
}

TEST(Mappings, OfOneColumnTwiceAreRefused) {
  ColumnMap columns = foreign_columns();
  columns.push_back({"cuts", "case"});

  EXPECT_THAT(problem_in(kForeign, {.columns = columns}),
              HasSubstr("cuts is mapped to two columns"));
}

}  // namespace
}  // namespace keenfall::exchange
