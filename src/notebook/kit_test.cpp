// The kit in a notebook: put in, changed, taken away, merged.
#include "notebook/kit.h"
#include "notebook/a_notebook_test.h"
#include "notebook/check.h"
#include "notebook/content_in_words_test.h"
#include "notebook/kept_trials.h"
#include "notebook/merge.h"
#include "notebook/plans.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace keenfall::notebook {
namespace {

using testing::a_kit;
using testing::a_trial;
using testing::content_in_words;
using testing::kOpener;
using testing::what_is_asked;

template <class Thing, class Named>
std::string uid_in(const std::vector<InKit<Thing>>& things, Named named) {
  const auto found =
      std::ranges::find_if(things, [&](const auto& kept) { return named(kept.thing); });
  return found == things.end() ? "none" : found->uid;
}

class AKit : public testing::ANotebook {
 protected:
  void put(const KitThing& thing) {
    const auto added = add_to_kit(notebook_, thing, next());
    ASSERT_TRUE(added) << added.error().sentence;
  }
  void put_all() {
    for (const KitThing& thing : a_kit()) put(thing);
  }
  void take_in_a_trial() { ASSERT_TRUE(take(notebook_, a_trial(), {}, next())); }
  [[nodiscard]] KeptKit kit() const { return kept_kit(notebook_); }
  [[nodiscard]] std::string uid_of_blade(const std::string& name) const {
    return uid_in(kit().blades, [&](const trials::Blade& blade) { return blade.name == name; });
  }
  [[nodiscard]] std::string uid_of_medium(const std::string& name) const {
    return uid_in(kit().media, [&](const trials::Medium& medium) { return medium.name == name; });
  }
  std::string refusal_of_adding(const KitThing& thing) {
    const auto added = add_to_kit(notebook_, thing, next());
    return added ? "it was added" : added.error().sentence;
  }
  std::string refusal_of_changing(const std::string& uid, const KitThing& thing) {
    const auto changed = change_in_kit(notebook_, uid, thing, next());
    return changed ? "it was changed" : changed.error().sentence;
  }
  std::string refusal_of_taking(const std::string& uid) {
    const auto taken = take_from_kit(notebook_, uid, next());
    return taken ? "it was taken away" : taken.error().sentence;
  }
  Authorship because(const std::string& why) {
    Authorship by = next();
    by.why = why;
    return by;
  }

  Notebook notebook_ = made();
};

TEST_F(AKit, ComesBackAsItWasPutIn) {
  put_all();

  const trials::Kit kept = things_of(kit());

  EXPECT_EQ(kept.blades, (std::vector<trials::Blade>{std::get<trials::Blade>(a_kit()[0])}));
  EXPECT_EQ(kept.edges, (std::vector<trials::NamedEdge>{std::get<trials::NamedEdge>(a_kit()[1])}));
  EXPECT_EQ(kept.media, (std::vector<trials::Medium>{std::get<trials::Medium>(a_kit()[2])}));
  EXPECT_EQ(kept.lots, (std::vector<trials::MediumLot>{std::get<trials::MediumLot>(a_kit()[3])}));
  EXPECT_EQ(kept.threads, (std::vector<trials::Thread>{std::get<trials::Thread>(a_kit()[4])}));
  EXPECT_EQ(kept.kinds,
            (std::vector<trials::ReadingKind>{std::get<trials::ReadingKind>(a_kit()[5])}));
  EXPECT_EQ(kept.stones, (std::vector<trials::KitStone>{std::get<trials::KitStone>(a_kit()[6])}));
  EXPECT_TRUE(check(notebook_).empty());
}

TEST_F(AKit, OfANewNotebookIsEmpty) { EXPECT_EQ(things_of(kit()), trials::Kit()); }

TEST_F(AKit, IsUndoneThingByThing) {
  put_all();
  EXPECT_EQ(notebook_.journal()[3].what, "put the lot roll 7 of new matting, dry into the kit");

  while (const auto last = notebook_.last_to_undo()) ASSERT_TRUE(notebook_.undo(*last, next()));

  EXPECT_TRUE(content_in_words(notebook_).empty());
  EXPECT_TRUE(check(notebook_).empty());
}

TEST_F(AKit, HasTheBladesAndMediaOfTrialsAndSaysWhichUseThem) {
  take_in_a_trial();
  ASSERT_TRUE(make_trial(notebook_, "felt", what_is_asked(), next()));

  const KeptKit kept = kit();

  ASSERT_EQ(kept.blades.size(), 2U);
  EXPECT_EQ(kept.blades[1].thing, a_trial().blades[1]);
  EXPECT_EQ(kept.blades[1].used_in, (std::vector<std::string>{"matting", "felt"}));
  ASSERT_EQ(kept.media.size(), 2U);
  EXPECT_EQ(kept.media[1].used_in, std::vector<std::string>{"felt"});
}

TEST_F(AKit, OfAnEarlierSchemaHasBladesAndMedia) {
  const auto earlier =
      Notebook::open_to_read(std::string(KEENFALL_SOURCE_DIR) + "/tests/notebooks/schema_2.keen");
  ASSERT_TRUE(earlier);

  const KeptKit kept = kept_kit(*earlier);

  EXPECT_EQ(kept.blades.size(), 2U);
  EXPECT_EQ(kept.blades[0].used_in, std::vector<std::string>{"felt"});
  EXPECT_TRUE(kept.edges.empty());
}

TEST_F(AKit, RefusesTwoThingsOfOneName) {
  put_all();

  EXPECT_EQ(refusal_of_adding(trials::Blade{.name = "C"}), "The kit has a blade C already.");
  EXPECT_EQ(refusal_of_adding(a_kit()[3]), "The kit has a lot roll 7 of new matting, dry already.");
  EXPECT_EQ(refusal_of_adding(a_kit()[4]),
            "The kit has a thread 0.25 mm polyester, lot 3 already.");
}

TEST_F(AKit, RefusesWhatCannotBe) {
  EXPECT_EQ(refusal_of_adding(trials::Blade{}), "A blade has no name.");
  EXPECT_EQ(refusal_of_adding(trials::Blade{.name = "C", .specimens = {{.name = "1"}, {"1"}}}),
            "Two specimens of C are called 1.");
  EXPECT_EQ(
      refusal_of_adding(trials::Blade{.name = "C", .hardness = trials::Hardness{.reading = -3}}),
      "The hardness of C is -3, and must be above 0.");
  EXPECT_EQ(refusal_of_adding(trials::NamedEdge{.name = "fine",
                                                .edge = {.bevel_angle = trials::PerSideAngle{95}}}),
            "An angle of the edge fine is 95° per side, which no edge has.");
  EXPECT_EQ(
      refusal_of_adding(trials::MediumLot{.medium = {.name = "rope"}, .name = "1", .length_m = 0}),
      "The length of the lot 1 is 0, and must be above 0.");
  EXPECT_EQ(refusal_of_adding(trials::ReadingKind{.name = "Thread push"}),
            "Keenfall knows the kind of reading Thread push by itself.");
  EXPECT_EQ(refusal_of_adding(trials::KitStone{.name = "coarse", .grit = "1000"}),
            "The grit 1000 of the stone coarse does not say its system: a bare 1000 is 4.5, 18 or "
            "11.5 µm.");
  EXPECT_TRUE(notebook_.journal().empty());
}

TEST_F(AKit, HoldsWhatAThingIsNow) {
  put_all();
  trials::NamedEdge finer = std::get<trials::NamedEdge>(a_kit()[1]);
  finer.edge.finish = "3 um diamond";
  const std::string uid = kit().edges[0].uid;

  const auto changed = change_in_kit(notebook_, uid, finer, next());
  const auto again = change_in_kit(notebook_, uid, finer, next());

  ASSERT_TRUE(changed && *changed);
  EXPECT_EQ((*changed)->what, "change the edge fine");
  EXPECT_EQ(kit().edges[0].thing, finer);
  EXPECT_EQ(kit().edges[0].uid, uid);
  ASSERT_TRUE(again);
  EXPECT_FALSE(*again);
}

TEST_F(AKit, LetsABladeOfATrialBeCorrectedWithAReason) {
  take_in_a_trial();
  trials::Blade corrected = a_trial().blades[0];
  corrected.steel = "X46Cr13";

  EXPECT_EQ(refusal_of_changing(uid_of_blade("A"), corrected),
            "What the blade A is can be corrected with a reason: the trial matting rests on it.");
  const auto changed =
      change_in_kit(notebook_, uid_of_blade("A"), corrected, because("read off the wrong box"));

  ASSERT_TRUE(changed && *changed);
  EXPECT_EQ((*changed)->what, "change the blade A, of X46Cr13 and not C75S");
  EXPECT_EQ((*changed)->why, "read off the wrong box");
  EXPECT_EQ(kept_trial(notebook_, "matting")->blades[0].steel, "X46Cr13");
  ASSERT_TRUE(notebook_.undo((*changed)->entry, next()));
  EXPECT_EQ(kept_trial(notebook_, "matting")->blades[0].steel, "C75S");
}

TEST_F(AKit, FillsInWhatWasNotRecordedWithoutAReason) {
  take_in_a_trial();
  trials::Blade more = a_trial().blades[1];
  more.steel = "X46Cr13";
  more.hardness = trials::Hardness{.reading = 57};
  more.specimens.push_back({.name = "3"});

  EXPECT_EQ(refusal_of_changing(uid_of_blade("B"), more), "it was changed");
  EXPECT_EQ(kit().blades[1].thing, more);
}

TEST_F(AKit, KeepsTheNamesThatTrialsSpeakOf) {
  take_in_a_trial();
  trials::Blade otherwise = a_trial().blades[0];
  otherwise.name = "Z";

  EXPECT_EQ(refusal_of_changing(uid_of_blade("A"), otherwise),
            "The blade A keeps its name: the trial matting rests on it.");
  EXPECT_EQ(refusal_of_changing(uid_of_medium("new matting"), trials::Medium{.name = "matting"}),
            "The medium new matting, dry keeps its name: the trial matting rests on it.");
}

TEST_F(AKit, LetsADraftSpeakOfAThingByItsNewNameAndASealedPlanNot) {
  put_all();
  Asked asked{.claims = {{.words = "C lasts"}}};
  asked.plan.cuttings = {{.medium = {.name = "new matting", .condition = "dry"}}};
  asked.plan.arms = {{.blade = "C"}};
  ASSERT_TRUE(make_trial(notebook_, "some day", asked, next()));
  trials::Blade otherwise = std::get<trials::Blade>(a_kit()[0]);
  otherwise.name = "Z";

  EXPECT_EQ(refusal_of_changing(uid_of_blade("C"), otherwise), "it was changed");
  const auto renaming = notebook_.journal().back().entry;
  EXPECT_EQ(kept_plan(notebook_, "some day")->plan.arms[0].blade, "Z");
  ASSERT_TRUE(seal(notebook_, "some day", next()));
  otherwise.name = "Y";

  EXPECT_EQ(refusal_of_changing(uid_of_blade("Z"), otherwise),
            "The blade Z keeps its name: the trial some day rests on it.");
  const auto undone = notebook_.undo(renaming, next());
  ASSERT_FALSE(undone);
  EXPECT_NE(undone.error().sentence.find("later entries rest on it"), std::string::npos);
}

TEST_F(AKit, LosesOnlyWhatNoTrialRestsOn) {
  take_in_a_trial();
  for (const std::size_t place : {0U, 1U, 3U, 5U, 6U}) put(a_kit()[place]);
  ASSERT_TRUE(make_trial(notebook_, "felt", what_is_asked(), next()));
  trials::Blade fewer = a_trial().blades[1];
  fewer.specimens.pop_back();

  EXPECT_EQ(refusal_of_taking(uid_of_blade("B")),
            "The blade B stays in the kit: the trials matting and felt rest on it.");
  EXPECT_EQ(refusal_of_changing(uid_of_blade("B"), fewer),
            "The specimen 2 of the blade B stays in the kit: the trials matting and felt rest on "
            "it.");
  EXPECT_EQ(refusal_of_taking(kit().lots[0].uid),
            "The lot roll 7 of new matting, dry stays in the kit: the trial felt rests on it.");
  EXPECT_EQ(refusal_of_taking(kit().kinds[0].uid),
            "The kind of reading flank_wear stays in the kit: the trial matting rests on it.");
  EXPECT_EQ(refusal_of_taking(kit().edges[0].uid), "it was taken away");
  EXPECT_EQ(refusal_of_taking(kit().stones[0].uid), "it was taken away");
  EXPECT_EQ(refusal_of_taking(uid_of_blade("C")), "it was taken away");
  EXPECT_EQ(refusal_of_taking("00"), "The kit has no such thing any more.");
  EXPECT_TRUE(check(notebook_).empty());
}

TEST_F(AKit, LosesAMediumAfterItsLots) {
  put_all();

  EXPECT_EQ(refusal_of_taking(uid_of_medium("new matting")),
            "The medium new matting, dry stays in the kit: it has lots there, roll 7.");
  EXPECT_EQ(refusal_of_taking(kit().lots[0].uid), "it was taken away");
  EXPECT_EQ(refusal_of_taking(uid_of_medium("new matting")), "it was taken away");
}

TEST_F(AKit, HasBackWhatWasTakenAway) {
  put_all();
  const auto before = content_in_words(notebook_);
  ASSERT_TRUE(take_from_kit(notebook_, uid_of_blade("C"), next()));
  EXPECT_EQ(notebook_.journal().back().what, "take the blade C out of the kit");

  ASSERT_TRUE(notebook_.undo(*notebook_.last_to_undo(), next()));

  EXPECT_EQ(content_in_words(notebook_), before);
}

TEST_F(AKit, NamesTheLaterThingThatTookAnOldName) {
  put(trials::Medium{.name = "felt"});
  put(trials::Medium{.name = "rope"});
  const std::string felt = uid_of_medium("felt");
  EXPECT_EQ(refusal_of_changing(felt, trials::Medium{.name = "felt", .condition = "wet"}),
            "it was changed");
  put(trials::Medium{.name = "felt"});

  const auto undone = notebook_.undo(3, next());

  ASSERT_FALSE(undone);
  EXPECT_EQ(undone.error().sentence,
            "Entry 3 (change the medium felt, now the medium felt, wet) cannot be undone: later "
            "entries rest on it: 4 (put the medium felt into the kit).");
}

class MergingKits : public AKit {
 protected:
  MergingKits() { put_all(); }
  [[nodiscard]] Notebook copied() const {
    EXPECT_TRUE(notebook_.back_up_to(scratch_.file("there.keen")));
    return std::move(*Notebook::open_to_write(scratch_.file("there.keen"), kOpener));
  }
  [[nodiscard]] Notebook with_another_edge() {
    Notebook there = std::move(*Notebook::create(
        scratch_.file("there.keen"), {.uid = "there", .made_by = "test"}, kOpener));
    EXPECT_TRUE(add_to_kit(there, trials::NamedEdge{.name = "fine", .note = "other"}, next()));
    return there;
  }
};

TEST_F(MergingKits, BringsAKitIntoANewNotebook) {
  Notebook fresh = std::move(
      *Notebook::create(scratch_.file("fresh.keen"), {.uid = "f", .made_by = "test"}, kOpener));

  const auto merged = merge(fresh, notebook_, "merge bench.keen", {}, next());
  const auto again = merge(fresh, notebook_, "merge bench.keen", {}, next());

  ASSERT_TRUE(merged) << merged.error().front().sentence;
  EXPECT_EQ(content_in_words(fresh), content_in_words(notebook_));
  ASSERT_TRUE(again);
  EXPECT_FALSE(again->entry);
}

TEST_F(MergingKits, FindsOneThingThatIsNotTheSameInConflict) {
  Notebook there = copied();
  trials::KitStone dressed = std::get<trials::KitStone>(a_kit()[6]);
  dressed.note = "dished";
  ASSERT_TRUE(change_in_kit(there, kit().stones[0].uid, dressed, next()));

  const auto merged = merge(notebook_, there, "merge there.keen", {}, next());
  const auto kept =
      merge(notebook_, there, "merge there.keen", {.keeps_what_is_here = true}, next());

  ASSERT_FALSE(merged);
  EXPECT_EQ(merged.error()[0].sentence,
            "The stone the coarse plate of the kit is not the same in both notebooks.");
  ASSERT_TRUE(kept);
  EXPECT_EQ(kit().stones[0].thing, std::get<trials::KitStone>(a_kit()[6]));
}

TEST_F(MergingKits, KnowsByNameAndSetsApartWhatIsCalledAlike) {
  const Notebook there = with_another_edge();

  const auto merged = merge(notebook_, there, "merge there.keen", {}, next());
  const auto apart = merge(notebook_,
                           there,
                           "merge there.keen",
                           {.alike_names = AlikeNames::are_apart, .apart = "T."},
                           next());

  ASSERT_FALSE(merged);
  EXPECT_EQ(merged.error()[0].sentence,
            "The edge fine of the kit is not the same in both notebooks.");
  ASSERT_TRUE(apart);
  EXPECT_EQ(
      apart->remarks,
      std::vector<std::string>{"The other notebook's edge fine is called edge fine (T.) here."});
  EXPECT_EQ(kit().edges[1].thing.name, "fine (T.)");
}

}  // namespace
}  // namespace keenfall::notebook
