#include "exchange/plain_columns.h"

#include "exchange/header_meaning.h"
#include "exchange/table_columns.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace keenfall::exchange {
namespace {

TEST(PlainColumns, AreNamedAsAPersonWouldWriteThem) {
  EXPECT_EQ(column_label("hardness_hrc"), "hardness (HRC)");
  EXPECT_EQ(column_label("bevel_angle_per_side_deg"), "bevel angle per side (deg)");
  EXPECT_EQ(column_label("thickness_behind_edge_mm"), "thickness behind edge (mm)");
  EXPECT_EQ(column_label("failed_by"), "failed by");
  EXPECT_EQ(column_label("blade"), "blade");
}

TEST(PlainColumns, AreTheColumnsTheyName) {
  for (const ColumnDefinition& definition : column_definitions()) {
    EXPECT_EQ(find_definition(folded_header(column_label(definition.name))), &definition)
        << definition.name;
  }
}

TEST(PlainColumns, AreSaidInSentences) {
  EXPECT_EQ(said_plainly("hardness_hrc must be a number."), "hardness, HRC must be a number.");
  EXPECT_EQ(said_plainly("Run “1” has bevel_angle_per_side_deg “17” in line 2"),
            "Run “1” has bevel angle, degrees per side “17” in line 2");
  EXPECT_EQ(said_plainly("Readings of thread_push in N."), "Readings of thread push in N.");
}

TEST(PlainColumns, LeaveWhatAPersonWroteAlone) {
  EXPECT_EQ(said_plainly("Two rows are named “hardness_hrc”: which?"),
            "Two rows are named “hardness_hrc”: which?");
  EXPECT_EQ(said_plainly("Left out: my_bench_2, Größe_mm and “open failed_by"),
            "Left out: my_bench_2, Größe_mm and “open failed_by");
  EXPECT_EQ(said_plainly("ö“failed_by”ö"), "ö“failed_by”ö");
}

}  // namespace
}  // namespace keenfall::exchange
