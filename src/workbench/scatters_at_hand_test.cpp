#include "workbench/scatters_at_hand.h"

#include <gtest/gtest.h>

#include <memory>

namespace keenfall::workbench {
namespace {

std::shared_ptr<const trials::Trial> a_trial() {
  return std::make_shared<const trials::Trial>(trials::Trial{.name = "bench"});
}

std::vector<ScatterOfArm> of_blade(const char* blade) {
  return {{.arm = {.blade = blade}, .kind = "thread_push", .scatter = {.runs = 3}}};
}

TEST(ScattersAtHand, AreThoseOfTheTrialAsItWasRead) {
  ScattersAtHand scatters;
  const auto trial = a_trial();
  const auto without = a_trial();
  scatters.keep(trial, of_blade("A"));
  scatters.keep(without, {});

  ASSERT_TRUE(scatters.find(trial));
  EXPECT_EQ(scatters.find(trial)->front().arm.blade, "A");
  ASSERT_TRUE(scatters.find(without));
  EXPECT_TRUE(scatters.find(without)->empty());
  EXPECT_FALSE(scatters.find(a_trial()));  // the same content, read anew
  scatters.keep(trial, of_blade("B"));
  EXPECT_EQ(scatters.find(trial)->front().arm.blade, "B");
}

TEST(ScattersAtHand, GoWhereTheyWereNotUsedForLongest) {
  ScattersAtHand scatters;
  const auto used = a_trial();
  const auto unused = a_trial();
  scatters.keep(used, of_blade("A"));
  scatters.keep(unused, of_blade("A"));
  for (int later = 0; later < 100; ++later) {
    scatters.keep(a_trial(), of_blade("A"));
    EXPECT_TRUE(scatters.find(used)) << later;
  }
  EXPECT_FALSE(scatters.find(unused));
}

}  // namespace
}  // namespace keenfall::workbench
