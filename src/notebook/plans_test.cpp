// Claims and plans: kept as drafts, sealed, and what undoing does to them.
#include "notebook/plans.h"
#include "notebook/a_notebook_test.h"
#include "notebook/check.h"
#include "notebook/kept_trials.h"
#include "notebook/kit.h"
#include "notebook/plan_text.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <string>
#include <vector>

namespace keenfall::notebook {
namespace {

using testing::a_trial;
using testing::what_is_asked;

class APlan : public testing::ANotebook {
 protected:
  // Entry 1: the blades come with another trial.
  APlan() { take_in(a_trial()); }

  void take_in(const trials::Trial& trial) {
    const auto taken = take(notebook_, trial, {}, next());
    ASSERT_TRUE(taken) << taken.error().front().sentence;
  }
  std::int64_t make(const Asked& asked = what_is_asked()) {
    const auto made = make_trial(notebook_, "felt and matting", asked, next());
    EXPECT_TRUE(made) << made.error().sentence;
    return made ? made->entry : 0;
  }
  std::int64_t seal_it() {
    Authorship by = next();
    by.at_utc = "2026-11-27T07:00:00Z";
    const auto sealed = seal(notebook_, "felt and matting", by);
    EXPECT_TRUE(sealed) << sealed.error().sentence;
    return sealed ? sealed->entry : 0;
  }
  std::optional<KeptPlan> kept() { return kept_plan(notebook_, "felt and matting"); }
  std::string refusal_of(const Asked& asked) {
    const auto changed = change_asked(notebook_, "felt and matting", asked, next());
    return changed ? "it was changed" : changed.error().sentence;
  }
  std::string refusal_of_undoing(std::int64_t entry) {
    const auto undone = notebook_.undo(entry, next());
    return undone ? "it was undone" : undone.error().sentence;
  }
  static trials::Trial what_was_cut() {
    trials::Trial trial = a_trial();
    trial.name = "felt and matting";
    trial.counted = what_is_asked().plan.counted;
    return trial;
  }

  Notebook notebook_ = made();
};

TEST_F(APlan, ComesBackAsItWasWrittenDown) {
  make();

  ASSERT_TRUE(kept());
  EXPECT_EQ(kept()->claims, what_is_asked().claims);
  EXPECT_EQ(kept()->plan, what_is_asked().plan);
  EXPECT_FALSE(kept()->sealed_at_utc);
  EXPECT_TRUE(check(notebook_).empty());
}

TEST_F(APlan, MayBeNothingButAName) {
  const auto made = make_trial(notebook_, "some day", {}, next());

  ASSERT_TRUE(made) << made.error().sentence;
  EXPECT_EQ(kept_plan(notebook_, "some day")->plan, trials::Plan());
  EXPECT_TRUE(kept_trial(notebook_, "some day")->runs.empty());
}

TEST_F(APlan, IsNotThereForATrialThatOnlyWasCut) {
  EXPECT_FALSE(kept_plan(notebook_, "matting"));
  EXPECT_FALSE(kept_plan(notebook_, "nothing of the sort"));
}

TEST_F(APlan, OfATrialWhoseNameIsTakenIsRefused) {
  const auto made = make_trial(notebook_, "matting", what_is_asked(), next());

  ASSERT_FALSE(made);
  EXPECT_EQ(made.error().sentence, "The notebook has a trial called \"matting\" already.");
  EXPECT_EQ(notebook_.journal().size(), 1U);
}

TEST_F(APlan, BringsBladesAndMediaIntoTheKitWhichUndoingTakesAwayAgain) {
  const KeptKit before = kept_kit(notebook_);
  Asked asked = what_is_asked();
  asked.plan.arms[1].blade = "Z";
  asked.plan.house_blade = "Y";
  asked.plan.cuttings[0].medium = {.name = "cork"};

  const std::int64_t entry = make(asked);
  const auto planned = kept();
  const trials::Kit with_plan = things_of(kept_kit(notebook_));
  const auto undone = notebook_.undo(entry, next());

  EXPECT_EQ(planned->plan, asked.plan);
  EXPECT_EQ(with_plan.blades.size(), before.blades.size() + 2);
  EXPECT_EQ(std::ranges::count(with_plan.blades, trials::Blade{.name = "Z"}), 1);
  EXPECT_EQ(std::ranges::count(with_plan.media, trials::Medium{.name = "cork"}), 1);
  EXPECT_TRUE(undone) << undone.error().sentence;
  EXPECT_EQ(things_of(kept_kit(notebook_)), things_of(before));
  EXPECT_TRUE(check(notebook_).empty());
}

TEST_F(APlan, IsRefusedWhereItSaysWhatCannotBe) {
  make();
  const auto refusal_with = [&](auto change) {
    Asked asked = what_is_asked();
    change(asked);
    return refusal_of(asked);
  };

  EXPECT_EQ(refusal_with([](Asked& asked) { asked.claims[0].worth_it_margin = 1; }),
            "The worth-it margin of a claim is 1, and must be above 1.");
  EXPECT_EQ(refusal_with([](Asked& asked) {
              asked.plan.stop.level = std::numeric_limits<double>::quiet_NaN();
            }),
            "The stop level is nan, and must be above 1.");
  EXPECT_EQ(refusal_with([](Asked& asked) { asked.plan.stop.reading = 300; }),
            "The plan stops a run at a level and at a reading.");
  EXPECT_EQ(refusal_with([](Asked& asked) {
              asked.plan.cuttings[0].checkpoint_cuts = {0, 5, 5};
            }),
            "The checkpoints in new matting do not rise from one to the next.");
  EXPECT_EQ(refusal_with([](Asked& asked) { asked.plan.arms[0].cutting = 2; }),
            "The arm of A is in a way of cutting that the plan has not.");
  EXPECT_EQ(refusal_with([](Asked& asked) {
              asked.plan.arms[0].edge.bevel_angle = trials::PerSideAngle{170};
            }),
            "An angle of A is 170° per side, which no edge has.");
  EXPECT_EQ(refusal_with([](Asked& asked) { asked.plan.runs[0].arm = 2; }),
            "A planned run is of an arm that the plan has not.");
  EXPECT_EQ(refusal_with([](Asked& asked) { asked.plan.runs_each = 0; }),
            "The number of runs of each arm is 0, and must be 1 or more.");
  EXPECT_EQ(kept()->plan, what_is_asked().plan);
}

TEST_F(APlan, IsChangedWhileItIsADraft) {
  make();
  Asked less = what_is_asked();
  less.claims.pop_back();
  less.plan.arms.pop_back();
  less.plan.runs = {{.arm = 0}};
  less.plan.cuttings[0].checkpoint_cuts = {0, 7};
  less.plan.cuttings.pop_back();
  less.plan.house_blade.clear();
  less.plan.start_gate.reset();
  less.plan.reading.stations.clear();

  const auto changed = change_asked(notebook_, "felt and matting", less, next());
  const auto again = change_asked(notebook_, "felt and matting", less, next());

  ASSERT_TRUE(changed && *changed);
  EXPECT_EQ((*changed)->what, "plan felt and matting");
  EXPECT_EQ(kept()->claims, less.claims);
  EXPECT_EQ(kept()->plan, less.plan);
  ASSERT_TRUE(again);
  EXPECT_FALSE(*again);
  EXPECT_TRUE(check(notebook_).empty());
  ASSERT_TRUE(notebook_.undo((*changed)->entry, next()));
  EXPECT_EQ(kept()->plan, what_is_asked().plan);
}

TEST_F(APlan, IsMadeForATrialThatWasCutWithoutOne) {
  Asked asked = what_is_asked();
  asked.plan.counted = a_trial().counted;

  ASSERT_TRUE(change_asked(notebook_, "matting", asked, next()));

  EXPECT_EQ(kept_plan(notebook_, "matting")->plan, asked.plan);
  EXPECT_EQ(*kept_trial(notebook_, "matting"), a_trial());
}

TEST_F(APlan, CountsWhatTheRunsCount) {
  const auto changed = change_asked(notebook_, "matting", what_is_asked(), next());

  ASSERT_FALSE(changed);
  EXPECT_EQ(changed.error().sentence,
            "The runs of matting count cuts, and the plan counts strokes.");
}

TEST_F(APlan, OnceSealedKeepsItsTimeAndIsNotChanged) {
  make();
  const std::string digest = kept()->sha256;

  seal_it();

  EXPECT_EQ(kept()->sealed_at_utc, "2026-11-27T07:00:00Z");
  EXPECT_EQ(kept()->sha256, digest);
  EXPECT_EQ(notebook_.journal().back().what,
            "seal the plan of felt and matting, SHA-256 " + digest);
  EXPECT_EQ(refusal_of({}),
            "The plan of felt and matting was sealed at 2026-11-27T07:00:00Z: its claims and its "
            "plan stay as they are.");
  const auto again = seal(notebook_, "felt and matting", next());
  ASSERT_FALSE(again);
  EXPECT_EQ(again.error().accepted,
            "a new trial, with what is asked and planned now; or, as long as nothing was read "
            "since, undoing the sealing first");
}

TEST_F(APlan, SealedAfterRunsWereReadSaysHowMany) {
  Asked asked = what_is_asked();
  asked.plan.counted = a_trial().counted;
  ASSERT_TRUE(change_asked(notebook_, "matting", asked, next()));
  make();

  ASSERT_TRUE(seal(notebook_, "matting", next()));
  seal_it();

  EXPECT_EQ(kept_plan(notebook_, "matting")->runs_read_before, 2);
  EXPECT_EQ(kept()->runs_read_before, 0);
}

TEST_F(APlan, IsNotSealedWithoutAClaimOrAnArm) {
  Asked without_claim = what_is_asked();
  without_claim.claims = {{.words = ""}};
  make(without_claim);
  ASSERT_TRUE(make_trial(notebook_, "no arms", {.claims = {{.words = "A lasts"}}}, next()));

  const auto no_claim = seal(notebook_, "felt and matting", next());
  const auto no_arm = seal(notebook_, "no arms", next());
  const auto no_plan = seal(notebook_, "matting", next());

  ASSERT_FALSE(no_claim || no_arm || no_plan);
  EXPECT_EQ(no_claim.error().sentence,
            "The plan of felt and matting cannot be sealed: it makes no claim.");
  EXPECT_EQ(no_arm.error().sentence, "The plan of no arms cannot be sealed: it has no arm.");
  EXPECT_EQ(no_plan.error().sentence, "The trial matting has no plan to seal.");
}

TEST_F(APlan, IsUnsealedByUndoingAsLongAsNothingWasRead) {
  make();
  const auto sealing = seal_it();
  take_in(what_was_cut());
  const auto taking = notebook_.journal().back().entry;

  EXPECT_EQ(refusal_of_undoing(sealing),
            "Entry " + std::to_string(sealing) + " (" + notebook_.journal()[2].what +
                ") cannot be undone: the trial felt and matting has been read since, and what was "
                "sealed before that stays sealed.");
  ASSERT_TRUE(notebook_.undo(taking, next()));
  ASSERT_TRUE(notebook_.undo(sealing, next()));

  EXPECT_FALSE(kept()->sealed_at_utc);
  EXPECT_EQ(refusal_of({}), "it was changed");
}

TEST_F(APlan, SaysWhichEntrySealedItAndWhetherWhatWasReadHoldsIt) {
  const auto sealing = [&] { return sealing_of(notebook_, "felt and matting"); };
  make();
  EXPECT_FALSE(sealing());

  const auto entry = seal_it();
  EXPECT_EQ(sealing(), (Sealing{.entry = entry, .is_held = false}));
  take_in(what_was_cut());
  EXPECT_EQ(sealing(), (Sealing{.entry = entry, .is_held = true}));

  ASSERT_TRUE(notebook_.undo(notebook_.journal().back().entry, next()));
  ASSERT_TRUE(notebook_.undo(entry, next()));
  EXPECT_FALSE(sealing());
  ASSERT_TRUE(notebook_.undo(notebook_.journal().back().entry, next()));
  EXPECT_EQ(sealing(), (Sealing{.entry = entry, .is_held = false}));
}

TEST_F(APlan, SealedInTheSameSecondAsAnotherIsToldFromIt) {
  make();
  ASSERT_TRUE(make_trial(notebook_, "felt again", what_is_asked(), next()));
  Authorship by = next();
  by.at_utc = "2026-11-27T07:00:00Z";
  ASSERT_TRUE(seal(notebook_, "felt again", by));
  const auto entry = seal_it();

  EXPECT_EQ(sealing_of(notebook_, "felt and matting")->entry, entry);
  EXPECT_EQ(sealing_of(notebook_, "felt again")->entry, entry - 1);
}

// What was read before it was sealed is said of it, and holds nothing.
TEST_F(APlan, SealedAfterRunsWereReadIsUnsealedAsLongAsNothingMoreWasRead) {
  Asked asked = what_is_asked();
  asked.plan.counted = a_trial().counted;
  ASSERT_TRUE(change_asked(notebook_, "matting", asked, next()));
  const auto sealing = seal(notebook_, "matting", next());
  ASSERT_TRUE(sealing);
  trials::Trial grown = a_trial();
  grown.runs.front().readings.push_back(grown.runs.front().readings.back());
  grown.runs.front().readings.back().cuts *= 2;
  take_in(grown);
  const auto taking = notebook_.journal().back().entry;

  EXPECT_NE(refusal_of_undoing(sealing->entry).find("has been read since"), std::string::npos);
  ASSERT_TRUE(notebook_.undo(taking, next()));
  ASSERT_TRUE(notebook_.undo(sealing->entry, next()));

  EXPECT_FALSE(kept_plan(notebook_, "matting")->sealed_at_utc);
  EXPECT_EQ(kept_trial(notebook_, "matting")->runs, a_trial().runs);
}

TEST_F(APlan, IsNotSealedAsOfAnEarlierTimeOnceSomethingWasRead) {
  make();
  ASSERT_TRUE(notebook_.undo(seal_it(), next()));
  const auto unsealing = notebook_.journal().back().entry;
  take_in(what_was_cut());

  EXPECT_NE(refusal_of_undoing(unsealing).find("has been read since"), std::string::npos);
}

TEST_F(APlan, ThatIsSealedHoldsWhatWasWrittenDownBefore) {
  const auto making = make();
  Asked other = what_is_asked();
  other.claims[0].words = "B outlasts A";
  ASSERT_TRUE(change_asked(notebook_, "felt and matting", other, next()));
  const auto changing = notebook_.journal().back().entry;
  seal_it();

  EXPECT_NE(refusal_of_undoing(changing).find("later entries rest on it: 4 (seal"),
            std::string::npos);
  EXPECT_NE(refusal_of_undoing(making).find("later entries rest on it"), std::string::npos);
  EXPECT_EQ(kept()->claims, other.claims);
}

TEST_F(APlan, TakesItsTrialBackWithIt) {
  const auto making = make();

  ASSERT_TRUE(notebook_.undo(making, next()));

  EXPECT_FALSE(kept());
  EXPECT_EQ(trial_names(notebook_), std::vector<std::string>{"matting"});
  EXPECT_TRUE(check(notebook_).empty());
}

TEST_F(APlan, StaysBesideTheRunsThatAreTakenIn) {
  make();
  seal_it();

  take_in(what_was_cut());

  EXPECT_EQ(kept()->plan, what_is_asked().plan);
  EXPECT_EQ(*kept_trial(notebook_, "felt and matting"), what_was_cut());
}

TEST_F(APlan, GoesWithItsTrialWhateverThatIsCalled) {
  make();

  const auto renamed = rename_trial(notebook_, "felt and matting", "felt", next());
  const auto taken = rename_trial(notebook_, "felt", "matting", next());
  const auto same = rename_trial(notebook_, "felt", "felt", next());

  ASSERT_TRUE(renamed && *renamed);
  EXPECT_EQ((*renamed)->what, "call the trial felt and matting felt");
  EXPECT_EQ(kept_plan(notebook_, "felt")->plan, what_is_asked().plan);
  ASSERT_FALSE(taken);
  EXPECT_EQ(taken.error().sentence, "The notebook has a trial called \"matting\" already.");
  ASSERT_TRUE(same);
  EXPECT_FALSE(*same);
}

TEST_F(APlan, NamesTheLaterTrialThatTookItsOldName) {
  make();
  ASSERT_TRUE(rename_trial(notebook_, "felt and matting", "felt", next()));
  const auto renaming = notebook_.journal().back().entry;
  make();

  EXPECT_EQ(refusal_of_undoing(renaming),
            "Entry 3 (call the trial felt and matting felt) cannot be undone: later entries rest "
            "on it: 4 (make the trial felt and matting).");
}

TEST(PlanText, DiffersWhereverTwoPlansDiffer) {
  const auto text_with = [](auto change) {
    Asked asked = what_is_asked();
    change(asked);
    return plan_text(asked);
  };
  const std::string text = plan_text(what_is_asked());

  EXPECT_EQ(text, text_with([](Asked&) {}));
  EXPECT_NE(text, text_with([](Asked& asked) { asked.claims[1].worth_it_margin = 1.3; }));
  EXPECT_NE(text, text_with([](Asked& asked) { asked.plan.reading.stations.pop_back(); }));
  EXPECT_NE(text, text_with([](Asked& asked) { asked.plan.runs[2].block = 1; }));
  EXPECT_NE(text, text_with([](Asked& asked) { asked.plan.cuttings[1].lot = "x"; }));
  EXPECT_NE(text, text_with([](Asked& asked) { asked.plan.stop.level.reset(); }));
  EXPECT_NE(text, text_with([](Asked& asked) { asked.plan.counted.is_measured = true; }));
  EXPECT_NE(text_with([](Asked& asked) { asked.claims[0].words = "a\nb"; }),
            text_with([](Asked& asked) { asked.claims[0].words = "a\\nb"; }));
}

TEST(PlanText, IsReadAFactALine) {
  Asked asked = what_is_asked();
  asked.plan.runs.resize(2);

  EXPECT_EQ(plan_text(asked),
            "Claim: A outlasts B in new matting\\; by half at least; worth it from 1.5\n"
            "Claim: In felt too; worth it from 1.25\n"
            "Counted: stroke; strokes\n"
            "Way of cutting 1: new matting; condition dry; lot roll 7; motion draw; cut length mm "
            "400.5; read at 0, 5, 12.5, 30\n"
            "Way of cutting 2: felt; read at 0, 10\n"
            "Arm 1: A; bevel 17 deg per side; apex 20 deg per side; finish 9 um; behind the edge "
            "mm 0.3; way of cutting 1\n"
            "Arm 2: B; way of cutting 2\n"
            "Reading: thread_push; thread 0.25 mm polyester; repeats 3; station heel; station \n"
            "Start gate: 104; give or take 0.12\n"
            "Stop: at the last checkpoint; or at times the start 4; force cap N 60\n"
            "Runs of each arm: 2\n"
            "Looks at runs of each arm: 1, 2\n"
            "House blade: A\n"
            "Seed of the order: 18446744073709551615\n"
            "Run 1: arm 2; specimen 2; block 1\n"
            "Run 2: arm 1; block 1\n");
}

}  // namespace
}  // namespace keenfall::notebook
