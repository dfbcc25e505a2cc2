// Spreadsheets of tests/reference/spreadsheets (made by the script beside them), whole and broken.
#include "exchange/spreadsheet_file.h"

#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

namespace keenfall::exchange {
namespace {

using testing::Contains;
using testing::HasSubstr;

std::string bytes_of(const std::string& name) {
  std::ifstream file(std::string(KEENFALL_SOURCE_DIR "/tests/reference/spreadsheets/") + name,
                     std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

trials::Trial without_places(trials::Trial trial) {
  trial.name.clear();
  trial.remarks.clear();
  for (trials::Run& run : trial.runs) {
    for (trials::Reading& reading : run.readings) reading.line = 0;
    for (trials::EdgeLife& life : run.edge_lives) life.line = 0;
  }
  return trial;
}

constexpr const char* kLong =
    "blade,medium,run,cuts,reading,repeat,struck,note,steel,bevel_angle_per_side_deg,"
    "thickness_behind_edge_mm,date,unit\n"
    "A,new sisal,1,0,104.5,,,,C75S,17,0.38,2024-05-01,gf\n"
    "A,new sisal,2,0,99,,,,C75S,17,0.38,2024-05-01,gf\n"
    "B,new sisal,1,0,101.5,,,,X90CrMoV18,17,0.38,2024-05-02,gf\n"
    "A,new sisal,1,15,131,,,131 at 15 cuts: thread looked frayed,C75S,17,0.38,2024-05-01,gf\n"
    "A,new sisal,2,15,240,,slipped,,C75S,17,0.38,2024-05-01,gf\n"
    "B,new sisal,1,15,140,,,,X90CrMoV18,17,0.38,2024-05-02,gf\n"
    "A,new sisal,1,31,160,1,,,C75S,17,0.38,2024-05-01,gf\n"
    "A,new sisal,1,31,165,2,,,C75S,17,0.38,2024-05-01,gf\n"
    "A,new sisal,2,31,155,,,,C75S,17,0.38,2024-05-01,gf\n";

constexpr const char* kRuns =
    "blade;medium;run;steel;bevel angle inclusive (deg);thickness behind edge (mm);date;0 (gf);"
    "15 (gf);31 (gf);note\n"
    "A;new sisal;1;C75S;34;0,38;2024-05-01;104,5;131;160 / 165;131 at 15 cuts: thread looked "
    "frayed\n"
    "A;new sisal;2;C75S;34;0,38;2024-05-01;99;240 (struck: slipped);155;\n"
    "B;new sisal;1;X90CrMoV18;34;0,38;2024-05-02;101,5;140;-;\n";

TEST(Spreadsheets, OfBothFormatsGiveTheTrialOfTheLongTable) {
  const trials::Trial from_long = without_places(taken(kLong));

  EXPECT_TRUE(without_places(taken(bytes_of("trial.xlsx"))) == from_long);
  EXPECT_TRUE(without_places(taken(bytes_of("trial.ods"))) == from_long);
  EXPECT_TRUE(without_places(taken(kRuns)) == from_long);
}

TEST(Spreadsheets, NameTheSheetsThatWereLeftOut) {
  for (const char* name : {"trial.xlsx", "trial.ods"}) {
    const auto remarks = taken(bytes_of(name)).remarks;

    EXPECT_THAT(remarks, Contains("Sheets left out: “Shopping” (no table)."));
    EXPECT_THAT(remarks, Contains("Read as a wide table: cuts down, 3 runs across."));
    EXPECT_THAT(remarks, Contains("Comments pinned to cells: C13 “thread looked frayed”."));
  }
}

TEST(Spreadsheets, LetASheetBeNamed) {
  EXPECT_EQ(taken(bytes_of("trial.ods"), {.sheets = {"Trial 2"}}).runs.size(), 3U);
  EXPECT_THAT(problem_in(bytes_of("trial.ods"), {.sheets = {"Trial 3"}}),
              HasSubstr("There is no sheet “Trial 3” in this spreadsheet. Accepted: Trial 2, "
                        "Shopping."));
  EXPECT_THAT(problem_in(bytes_of("trial.xlsx"), {.sheets = {"Shopping"}}),
              HasSubstr("t.csv, sheet Shopping"));
}

TEST(Spreadsheets, NameTheCellOfAProblem) {
  EXPECT_THAT(problem_in(bytes_of("trial.xlsx"),
                         {.default_kind = "rope_press", .shape = TableShape::long_rows}),
              HasSubstr("t.csv, sheet Trial 2, row"));
  EXPECT_THAT(problem_in(bytes_of("trial.xlsx"), {.default_kind = "apex_width"}),
              HasSubstr("t.csv, sheet Trial 2, cell C10: "));
}

TEST(Spreadsheets, ThatAreCutShortAreRefused) {
  const std::string whole = bytes_of("trial.xlsx");

  for (std::size_t size = 4; size < whole.size(); size += 37) {
    const auto sheets = sheets_of(std::string_view(whole).substr(0, size));
    ASSERT_FALSE(sheets) << size;
    EXPECT_THAT(sheets.error().sentence, HasSubstr("damaged or cut short"));
  }
}

// Whatever a flipped bit does, it must end in a trial or in problems.
TEST(Spreadsheets, WithFlippedBitsAreTakenOrRefused) {
  std::mt19937 random(1);
  for (const char* name : {"trial.xlsx", "trial.ods"}) {
    const std::string whole = bytes_of(name);
    for (int i = 0; i < 400; ++i) {
      std::string damaged = whole;
      for (int flips = 0; flips < 1 + i % 3; ++flips) {
        char& byte = damaged[random() % damaged.size()];
        byte = static_cast<char>(byte ^ (1 << (random() % 8)));
      }
      (void)take_table_text(damaged, "t.xlsx", {});
    }
  }
  SUCCEED();
}

// The declared size of the first part in the list of parts.
TEST(Spreadsheets, ThatWouldUnpackToGigabytesAreNotOpened) {
  std::string bytes = bytes_of("trial.xlsx");
  const std::size_t entry = bytes.find(std::string("PK\x01\x02"));
  ASSERT_NE(entry, std::string::npos);
  bytes.replace(entry + 24, 4, std::string("\x00\x00\x00\x80", 4));

  const auto sheets = sheets_of(bytes);

  ASSERT_FALSE(sheets);
  EXPECT_EQ(sheets.error().sentence,
            "The spreadsheet would unpack to more than 256 MB; it is not opened.");
}

TEST(Spreadsheets, OfTheOldFormatAreKindlyRefused) {
  EXPECT_THAT(problem_in("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1 and so on"),
              HasSubstr("old binary format (.xls), which is not read"));
  EXPECT_THAT(problem_in(std::string("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1") +
                         std::string("E\0n\0c\0r\0y\0p\0t\0e\0d\0P\0a\0c\0k\0a\0g\0e\0", 32)),
              HasSubstr("protected by a password"));
}

}  // namespace
}  // namespace keenfall::exchange
