#include "workbench/judged_again.h"

#include "exchange/kind_definition.h"

#include <gtest/gtest.h>

namespace keenfall::workbench {
namespace {

trials::Trial trial_of(const trials::ReadingKind& kind) {
  return {.series = {{.kind = kind, .unit = kind.unit, .thread_lot = "1"},
                     {.kind = kind, .unit = kind.unit, .thread_lot = "2"}}};
}

TEST(JudgedAgain, AsksForNothingThatIsAskedByItself) {
  EXPECT_EQ(
      judged_again_by(trial_of(*trials::find_reading_kind("thread_push")), {}, "readings.csv"),
      "keenfall judge readings.csv --seed=1");
}

TEST(JudgedAgain, AsksForAllThatWasAskedAndForNoWayOfReadingTheTable) {
  const JudgeOptions options{.worth_it_margin = 1.25,
                             .stop_reading = "400 gf",
                             .model = "plain",
                             .claim = verdicts::ClaimAbout::these_blades,
                             .looks = {3, 6},
                             .test_level = 3,
                             .seed = base::Seed{18446744073709551615U},
                             .kind = "thread_push",
                             .rung = 2,
                             .trial = "spring",
                             .table = {.columns = {{.ours = "cuts", .theirs = "n"}}}};

  EXPECT_EQ(judged_again_by({}, options, "my table.csv"),
            "keenfall judge 'my table.csv' --kind=thread_push --worth-it=1.25 "
            "'--stop-reading=400 gf' --rung=2 --test-level=3 --model=plain --claim=blades "
            "--looks=3,6 --seed=18446744073709551615");
}

TEST(JudgedAgain, DefinesEveryKindThatIsNotKnownOnce) {
  const auto wear = exchange::parse_kind_definition("flank_wear:mm:lower:zero=below:0.01");

  EXPECT_EQ(judged_again_by(trial_of(*wear), {.stop_level = 3.5}, "readings.csv"),
            "keenfall judge readings.csv --define-kind=flank_wear:mm:lower:zero=below:0.01 "
            "--stop-level=3.5 --seed=1");
}

}  // namespace
}  // namespace keenfall::workbench
