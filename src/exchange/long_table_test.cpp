#include "exchange/long_table.h"

#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <unistd.h>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

namespace keenfall::exchange {
namespace {

using testing::HasSubstr;

constexpr const char* kPlain =
    "blade,medium,run,cuts,reading\nA,new sisal,1,0,104.5\nA,new sisal,1,15,150\n";

bool is_the_plain_table(const std::string& text) {
  const trials::Trial trial = taken(text);
  return trial.runs.size() == 1 && trial.runs[0].arm.medium.name == "new sisal" &&
         trial.runs[0].readings.size() == 2 && trial.runs[0].readings[0].reading == 104.5;
}

// Files of this test's own, removed at its end.
class SeveralTables : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = std::filesystem::temp_directory_path() /
              ("keenfall_" + std::to_string(getpid()) + "_" +
               testing::UnitTest::GetInstance()->current_test_info()->name());
    std::filesystem::create_directory(folder_);
  }
  void TearDown() override {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
  }

  [[nodiscard]] std::string file(const std::string& name, const std::string& text) const {
    const std::filesystem::path path = folder_ / name;
    std::ofstream(path, std::ios::binary) << text;
    return path.string();
  }

  std::filesystem::path folder_;
};

TEST(LongTables, BecomeATrialNamedAfterTheirFile) {
  const trials::Trial trial = taken(kPlain);

  EXPECT_EQ(trial.name, "t");
  EXPECT_EQ(trial.blades.size(), 1U);
  ASSERT_EQ(trial.runs.size(), 1U);
  EXPECT_EQ(trial.runs[0].readings.at(1),
            (trials::Reading{.series = 0, .cuts = 15, .reading = 150, .line = 3}));
}

TEST(LongTables, AreTakenHoweverTheyWereSaved) {
  EXPECT_TRUE(is_the_plain_table(kPlain));
  EXPECT_TRUE(is_the_plain_table(std::string("\xEF\xBB\xBF") + kPlain));
  EXPECT_TRUE(is_the_plain_table(
      "blade;medium;run;cuts;reading\r\nA;new sisal;1;0;104,5\r\nA;new sisal;1;15;150\r\n"));
  EXPECT_TRUE(is_the_plain_table(
      "blade\tmedium\trun\tcuts\treading\rA\tnew sisal\t1\t0\t104,5\rA\tnew sisal\t1\t15\t150\r"));
  EXPECT_TRUE(is_the_plain_table(
      "blade;medium;run;cuts;reading\nA;new sisal;1;0;104.5\nA;new sisal;1;15;150"));
  EXPECT_TRUE(is_the_plain_table(
      "# my table\n\n\"blade\", \"medium\",run,cuts,reading\n\"A\",\"new sisal\",1,0,\"104.5\"\n\n"
      "A,\xC2\xA0new sisal ,1,15,150\n,,,,\n\n"));
  EXPECT_TRUE(is_the_plain_table(
      "sep=;\nblade;medium;run;cuts;reading\nA;new sisal;1;0;104,5\nA;new sisal;1;15;150\n"));
}

TEST(LongTables, TakeDoubtfulReadingsFromAColumnOrAQuestionMark) {
  const trials::Trial trial = taken(
      "blade,medium,run,cuts,reading,doubtful\nA,rope,1,0,104,\nA,rope,1,5,118?,no\n"
      "A,rope,1,10,131 gf ?,\nA,rope,1,20,150,thread slack\nA,rope,1,40,190,yes\n");
  const auto& readings = trial.runs.at(0).readings;

  EXPECT_FALSE(readings.at(0).doubtful_reason);
  EXPECT_EQ(readings.at(1).reading, 118);
  EXPECT_EQ(readings.at(1).doubtful_reason, "a question mark beside it");
  EXPECT_EQ(readings.at(2).doubtful_reason, "a question mark beside it");
  EXPECT_EQ(readings.at(3).doubtful_reason, "thread slack");
  EXPECT_EQ(readings.at(4).doubtful_reason, "no reason given");
}

TEST(LongTables, NameAQuestionMarkThatStandsAlone) {
  EXPECT_THAT(problem_in(with_rows("A,rope,1,0,?\n")),
              testing::HasSubstr("A question mark alone is no reading"));
}

TEST(LongTables, NameADoubtWithoutAReading) {
  EXPECT_THAT(problem_in("blade,medium,run,cuts,reading,note,doubtful\nA,rope,1,0,104,,\n"
                         "A,rope,1,5,,loud,yes\n"),
              testing::HasSubstr("A reading is doubted here, but the row has none"));
}

TEST(LongTables, ThatNameASheetAreNoSpreadsheets) {
  EXPECT_THAT(problem_in(with_rows("A,rope,1,0,104\n"), {.sheets = {"Spring"}}),
              testing::HasSubstr("this file is not a spreadsheet"));
}

TEST(LongTables, ThatMayMeanThousandsAreAskedAbout) {
  const std::string text = "blade;medium;run;cuts;reading\nA;s;1;0;1,234\n";

  EXPECT_THAT(problem_in(text),
              HasSubstr("t.csv, line 2, column reading: “1,234” may mean a decimal fraction or a "
                        "number of thousands"));
  EXPECT_EQ(taken(text, {.decimal_mark = DecimalMark::comma}).runs[0].readings[0].reading, 1.234);
}

TEST(LongTables, BetweenCommasRefuseADecimalCommaAndNameTheOptionThatTakesIt) {
  const std::string text = with_rows("A,s,1,0,\"1,5\"\n");

  EXPECT_THAT(problem_in(text),
              HasSubstr("“1,5” has a comma, but decimals are written with a point here (and "
                        "thousands without any separator). If the commas of this table are decimal "
                        "marks, say --decimal=comma."));
  EXPECT_EQ(taken(text, {.decimal_mark = DecimalMark::comma}).runs[0].readings[0].reading, 1.5);
}

TEST(LongTables, WithoutContentAreSaidSo) {
  EXPECT_THAT(problem_in(""), HasSubstr("t.csv: The file is empty."));
  EXPECT_THAT(problem_in("\n \n"), HasSubstr("The file is empty."));
  EXPECT_THAT(problem_in("blade,medium,run,cuts,reading\n"),
              HasSubstr("The table has a header but no rows."));
  EXPECT_THAT(problem_in("run,blade,medium,cuts,reading\n#1,A,s,0,9\n"),
              HasSubstr("all other rows start with #"));
  EXPECT_THAT(problem_in("nothing of the sort\n"), HasSubstr("No comma, semicolon or tab"));
  EXPECT_THAT(problem_in("#only a comment\n"), HasSubstr("No comma, semicolon or tab"));
}

TEST(LongTables, RemarkOnCommentsLeftOut) {
  EXPECT_THAT(
      taken(std::string(kPlain) + "#B,new sisal,1,0,104\n").remarks,
      testing::Contains("Left out as comments, because they start with #: 1 row, in line 4."));
}

TEST(LongTables, NameEveryMistakeAtOnceAndTakeNothing) {
  const std::string text =
      "blade;medium;run;cuts;reading;unit;steel;bevel_angle_per_side_deg;repeat\n"
      "A;sisal;1;0;104,5;gf;C75S;17;1\n"
      "A;sisal;1;1.5;110;gf;C75S;17;1\n"      // 3: decimal point in a comma table
      "A;sisal;1;ten;120;gf;C75S;17;1\n"      // 4: text in a number
      "A;sisal;1;15;-3;gf;C75S;17;1\n"        // 5: negative
      "A;sisal;1;31;0;gf;C75S;17;1\n"         // 6: zero
      "A;sisal;1;63;150;mm;C75S;17;1\n"       // 7: wrong dimension
      "A;sisal;2;0;150;gf;X90CrMoV18;17;1\n"  // 8: second steel
      ";sisal;2;3;150;gf;C75S;17;1\n"         // 9: no blade
      "A;sisal;2;3;1.234,5;gf;C75S;17;1\n"    // 10: thousands
      "A;sisal;2;7;nan;gf;C75S;17;1\n"        // 11: not finite
      "A;sisal;2;;150;gf;C75S;17;1\n"         // 12: no cuts
      "A;sisal;2;15;150;gf;C75S;60;1\n"       // 13: inclusive angle
      "A;sisal;2;15;150;gf;C75S;17\n"         // 14: too few cells
      "A;sisal;3;7;150;gf;C75S;17;1\n"
      "A;sisal;3;0;150;gf;C75S;17;1\n"      // 16: goes back
      "A;sisal;3;63;150;gf;C75S;17;1,5\n"   // 17: no whole number
      "A;sisal;3;63;\"150;gf;C75S;17;1\n";  // 18: open quote
  std::vector<std::string> found;

  for (const base::Problem& problem : problems_in(text, {.default_kind = "thread_push"})) {
    found.push_back(std::to_string(problem.place.line.value_or(0)) + " " + problem.place.column +
                    " " + problem.place.found);
  }

  EXPECT_THAT(found,
              testing::ElementsAre("3 cuts 1.5",
                                   "4 cuts ten",
                                   "5 reading -3",
                                   "6 reading 0",
                                   "7 unit mm",
                                   "8 steel X90CrMoV18",
                                   "9 blade ",
                                   "10 reading 1.234,5",
                                   "11 reading nan",
                                   "12 cuts ",
                                   "13 bevel_angle_per_side_deg 60",
                                   "14  A",
                                   "16 cuts 0",
                                   "17 repeat 1,5",
                                   "18  150;gf;C75S;17;1"));
}

TEST_F(SeveralTables, AreOneTrialNamedAfterTheFirst) {
  const std::vector<std::string> paths = {file("first.csv", kPlain),
                                          file("second.csv", with_rows("A,rope,1,0,104\n"))};

  const auto trial = take_tables(paths, {});

  ASSERT_TRUE(trial);
  EXPECT_EQ(trial->name, "first");
  EXPECT_EQ(trial->blades.size(), 1U);
  EXPECT_EQ(trial->runs.size(), 2U);
}

TEST_F(SeveralTables, MayHaveTheirOwnSeparators) {
  const std::vector<std::string> paths = {
      file("a.csv", kPlain), file("b.csv", "run;blade;medium;cuts;reading\n2;A;rope;0;104,5\n")};

  const auto trial = take_tables(paths, {});

  ASSERT_TRUE(trial);
  EXPECT_EQ(trial->runs.at(1).readings.at(0).reading, 104.5);
}

TEST_F(SeveralTables, ThatContradictEachOtherAreNamedBoth) {
  const std::string header = "blade,medium,run,cuts,reading,steel\n";
  const std::vector<std::string> paths = {file("a.csv", header + "A,s,1,0,9,C75S\n"),
                                          file("b.csv", header + "A,s,2,0,9,X90CrMoV18\n")};

  const auto trial = take_tables(paths, {});

  ASSERT_FALSE(trial);
  ASSERT_EQ(trial.error().size(), 1U);
  EXPECT_EQ(trial.error()[0].place.file, paths[1]);
  EXPECT_THAT(trial.error()[0].sentence,
              HasSubstr("has the steel “C75S” in " + paths[0] + ", line 2 and “X90CrMoV18” here"));
}

TEST_F(SeveralTables, ThatAreTheSameAreGivenTwice) {
  const std::vector<std::string> paths = {file("a.csv", kPlain), file("copy.csv", kPlain)};

  const auto trial = take_tables(paths, {});

  ASSERT_FALSE(trial);
  ASSERT_EQ(trial.error().size(), 1U);
  EXPECT_EQ(base::in_words(trial.error()[0]),
            paths[1] + ": This table is given twice: its content is that of " + paths[0] + ".");
}

TEST_F(SeveralTables, AreAllReadBeforeTheirProblemsAreSaid) {
  const std::vector<std::string> paths = {(folder_ / "missing.csv").string(),
                                          file("b.csv", with_rows("A,s,1,ten,9\n"))};

  const auto trial = take_tables(paths, {});

  ASSERT_FALSE(trial);
  EXPECT_EQ(trial.error().size(), 2U);
}

TEST(NoTables, AreSaidSo) {
  const auto trial = take_tables({}, {});

  ASSERT_FALSE(trial);
  EXPECT_EQ(trial.error().at(0).sentence, "No table was named.");
}

}  // namespace
}  // namespace keenfall::exchange
