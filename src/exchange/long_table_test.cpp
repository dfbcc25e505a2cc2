#include "exchange/long_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

TEST(LongTables, WithTheFiveRequiredColumnsBecomeATrial) {
  const auto trial = take_table_text(
      "blade,medium,run,cuts,reading\nA,sisal,1,0,104\nA,sisal,1,15,150.5\n", "t.csv", {});

  ASSERT_TRUE(trial) << base::in_words(trial.error().front());
  ASSERT_EQ(trial->runs.size(), 1U);
  EXPECT_EQ(trial->name, "t");
  EXPECT_EQ(trial->runs[0].readings[1].reading, 150.5);
}

}  // namespace
}  // namespace keenfall::exchange
