#include "workbench/fits_at_hand.h"

#include <gtest/gtest.h>

#include <atomic>
#include <chrono>
#include <memory>
#include <optional>
#include <string>
#include <thread>
#include <utility>

namespace keenfall::workbench {
namespace {

std::shared_ptr<const trials::Trial> a_trial() {
  return std::make_shared<const trials::Trial>(trials::Trial{.name = "bench"});
}

FitAtHand fit_of(const FitWanted& wanted) {
  return {.of = wanted,
          .fitted = std::make_shared<const FittedTrial>(FittedTrial{.trial = wanted.trial})};
}

TEST(FitsAtHand, AreFoundForExactlyWhatTheyAreOf) {
  FitsAtHand fits;
  const FitWanted wanted{.trial = a_trial()};
  const FitAtHand kept = fit_of(wanted);
  fits.keep(kept);

  ASSERT_TRUE(fits.find(wanted));
  EXPECT_EQ(fits.find(wanted)->fitted, kept.fitted);
  FitWanted other = wanted;
  other.trial = a_trial();  // the same content, read anew
  EXPECT_FALSE(fits.find(other));
  other = wanted;
  other.with_struck = true;
  EXPECT_FALSE(fits.find(other));
  other = wanted;
  other.kind = "thread_push";
  EXPECT_FALSE(fits.find(other));
  other = wanted;
  other.seed = 2;
  EXPECT_FALSE(fits.find(other));
  other = wanted;
  other.engine = Engine::quick;
  EXPECT_FALSE(fits.find(other));
}

TEST(FitsAtHand, AreReplacedByWhatIsKeptOfTheSame) {
  FitsAtHand fits;
  const FitWanted wanted{.trial = a_trial()};
  fits.keep(fit_of(wanted));
  const FitAtHand newer = fit_of(wanted);
  fits.keep(newer);

  EXPECT_EQ(fits.find(wanted)->fitted, newer.fitted);
}

TEST(FitsAtHand, GoWhereTheyWereNotUsedForLongest) {
  FitsAtHand fits;
  const FitWanted used{.trial = a_trial()};
  const FitWanted unused{.trial = a_trial()};
  fits.keep(fit_of(used));
  fits.keep(fit_of(unused));
  for (int later = 0; later < 20; ++later) {
    fits.keep(fit_of({.trial = a_trial()}));
    EXPECT_TRUE(fits.find(used)) << later;
  }
  EXPECT_FALSE(fits.find(unused));
}

TEST(FitsAtHand, OfFullDrawsStayHoweverManyQuickOnesCome) {
  FitsAtHand fits;
  const FitWanted full{.trial = a_trial()};
  const FitWanted quick{.trial = a_trial(), .engine = Engine::quick};
  fits.keep(fit_of(full));
  fits.keep(fit_of(quick));
  for (int later = 0; later < 20; ++later) {
    fits.keep(fit_of({.trial = a_trial(), .engine = Engine::quick}));
  }

  EXPECT_TRUE(fits.find(full));
  EXPECT_FALSE(fits.find(quick));
}

const auto kGoesOn = [] { return true; };

TEST(FitsAtHand, AreMadeByOneAtATime) {
  FitsAtHand fits;
  const FitWanted wanted{.trial = a_trial()};
  std::optional<FitsAtHand::Turn> first(std::in_place, fits, wanted, kGoesOn);
  ASSERT_TRUE(first->is_mine());
  std::atomic<bool> second_began = false;
  std::thread second([&] {
    const FitsAtHand::Turn turn(fits, wanted, kGoesOn);
    second_began = turn.is_mine();
  });
  const FitsAtHand::Turn another(fits, {.trial = a_trial()}, kGoesOn);
  EXPECT_TRUE(another.is_mine());
  std::this_thread::sleep_for(std::chrono::milliseconds(120));
  EXPECT_FALSE(second_began);

  first.reset();
  second.join();
  EXPECT_TRUE(second_began);
}

TEST(FitsAtHand, AreNotWaitedForByWhoIsAskedToStop) {
  FitsAtHand fits;
  const FitWanted wanted{.trial = a_trial()};
  const FitsAtHand::Turn first(fits, wanted, kGoesOn);

  const FitsAtHand::Turn second(fits, wanted, [] { return false; });

  EXPECT_FALSE(second.is_mine());
}

}  // namespace
}  // namespace keenfall::workbench
