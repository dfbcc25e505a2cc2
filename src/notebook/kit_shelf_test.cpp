// Every kind of thing on the kit's shelf: what it is called, what it becomes, what goes with it.
#include "notebook/a_notebook_test.h"
#include "notebook/check.h"
#include "notebook/content_in_words_test.h"
#include "notebook/kept_trials.h"
#include "notebook/kit.h"

#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace keenfall::notebook {
namespace {

using testing::a_kit;
using testing::a_trial;
using testing::content_in_words;

// As a_kit(), each with all of it told otherwise; the lot is of a medium that is not there yet.
std::vector<KitThing> another_kit() {
  return {trials::Blade{.name = "D",
                        .steel = "X46Cr13",
                        .hardness = trials::Hardness{.reading = 640,
                                                     .scale = trials::HardnessScale::vickers,
                                                     .how_known = trials::HowKnown::measured},
                        .specimens = {{.name = "ii", .hardness = trials::Hardness{.reading = 59}},
                                      {.name = "iii"}}},
          trials::NamedEdge{.name = "coarse",
                            .edge = {.apex_angle = trials::PerSideAngle{22.5},
                                     .finish = "FEPA-F 220",
                                     .thickness_behind_edge_mm = 0.35},
                            .note = "on the wheel"},
          trials::Medium{.name = "uplifted matting", .condition = "gritty"},
          trials::MediumLot{.medium = {.name = "felt"}, .name = "bale 2", .note = "autumn"},
          trials::Thread{.kind = "cord_draw", .name = "2 mm hemp"},
          trials::ReadingKind{.name = "edge_glow",
                              .words = "edge glow",
                              .unit = "lx",
                              .keener_when = trials::KeenerWhen::higher,
                              .largest = 90},
          trials::KitStone{.name = "the wheel", .abrasive = "fused alumina", .grit = "FEPA-F 220"}};
}

template <class Thing>
KitThing last_of(const std::vector<InKit<Thing>>& things) {
  return things.back().thing;
}

// Of the kind with that place in KitThing, what came in last and by what it is known.
KitThing last_thing(const KeptKit& kit, std::size_t kind) {
  const std::vector<KitThing> last{last_of(kit.blades),
                                   last_of(kit.edges),
                                   last_of(kit.media),
                                   last_of(kit.lots),
                                   last_of(kit.threads),
                                   last_of(kit.kinds),
                                   last_of(kit.stones)};
  return last.at(kind);
}

std::vector<std::string> first_uids(const KeptKit& kit) {
  return {kit.blades[0].uid,
          kit.edges[0].uid,
          kit.media[0].uid,
          kit.lots[0].uid,
          kit.threads[0].uid,
          kit.kinds[0].uid,
          kit.stones[0].uid};
}

class AShelf : public testing::ANotebook {
 protected:
  void put(const KitThing& thing) {
    const auto added = add_to_kit(notebook_, thing, next());
    ASSERT_TRUE(added) << added.error().sentence;
  }
  void put_all() {
    for (const KitThing& thing : a_kit()) put(thing);
  }
  [[nodiscard]] KeptKit kit() const { return kept_kit(notebook_); }
  // What the journal says of the change, or why it was refused.
  std::string changing(const std::string& uid, const KitThing& thing) {
    const auto changed = change_in_kit(notebook_, uid, thing, next());
    if (!changed) return changed.error().sentence;
    return *changed ? (*changed)->what : "nothing changed";
  }
  void undo_last() { ASSERT_TRUE(notebook_.undo(*notebook_.last_to_undo(), next())); }

  Notebook notebook_ = made();
};

TEST_F(AShelf, HasOneOfEachNameOfEveryKind) {
  put_all();
  const std::vector<std::string> words{"a blade C",
                                       "an edge fine",
                                       "a medium new matting, dry",
                                       "a lot roll 7 of new matting, dry",
                                       "a thread 0.25 mm polyester, lot 3",
                                       "a kind of reading flank_wear",
                                       "a stone the coarse plate"};

  for (std::size_t kind = 0; kind < words.size(); ++kind) {
    const auto again = add_to_kit(notebook_, a_kit()[kind], next());
    ASSERT_FALSE(again) << words[kind];
    EXPECT_EQ(again.error().sentence, "The kit has " + words[kind] + " already.");
    EXPECT_EQ(again.error().kind, base::ProblemKind::conflicting);
  }
  EXPECT_EQ(notebook_.journal().size(), a_kit().size());
}

TEST_F(AShelf, TakesNoNameThatAnotherOfItsKindHas) {
  put_all();
  for (const KitThing& thing : another_kit()) put(thing);
  const std::vector<std::string> uids = first_uids(kit());

  for (std::size_t kind = 0; kind < uids.size(); ++kind) {
    EXPECT_NE(changing(uids[kind], another_kit()[kind]).find(" already."), std::string::npos)
        << kind;
  }
}

TEST_F(AShelf, HoldsEveryKindAsItIsToldAnewAndAsItWasAfterUndo) {
  put_all();
  const auto before = content_in_words(notebook_);
  const std::vector<std::string> uids = first_uids(kit());

  for (std::size_t kind = 0; kind < uids.size(); ++kind) {
    const KitThing told = another_kit()[kind];
    EXPECT_EQ(changing(uids[kind], told).substr(0, 7), "change ") << kind;
    EXPECT_EQ(last_thing(kit(), kind), told) << kind;
    EXPECT_EQ(changing(uids[kind], told), "nothing changed") << kind;
  }
  // The medium that the lot had was renamed on the way; the lot's new one came in with it.
  EXPECT_EQ(first_uids(kit()), uids);
  EXPECT_TRUE(check(notebook_).empty());

  for (std::size_t i = 0; i < uids.size(); ++i) undo_last();
  EXPECT_EQ(content_in_words(notebook_), before);
}

TEST_F(AShelf, KnowsNoThingOfOneKindByTheUidOfAnother) {
  put_all();
  const std::vector<std::string> uids = first_uids(kit());

  for (std::size_t kind = 0; kind < uids.size(); ++kind) {
    const KitThing of_another_kind = another_kit()[(kind + 1) % uids.size()];
    EXPECT_EQ(changing(uids[kind], of_another_kind), "The kit has no such thing any more.") << kind;
  }
}

TEST_F(AShelf, TakesABladeAwayWithItsSpecimensAndHasThemBack) {
  put(a_kit()[0]);
  const auto before = content_in_words(notebook_);

  ASSERT_TRUE(take_from_kit(notebook_, kit().blades[0].uid, next()));

  EXPECT_TRUE(content_in_words(notebook_).empty());
  EXPECT_TRUE(check(notebook_).empty());
  undo_last();
  EXPECT_EQ(content_in_words(notebook_), before);
}

TEST_F(AShelf, KeepsTheRowOfASpecimenThatIsMeasuredLater) {
  put(a_kit()[0]);
  auto measured = std::get<trials::Blade>(a_kit()[0]);
  measured.specimens[0].hardness = trials::Hardness{.reading = 61.5};

  EXPECT_EQ(changing(kit().blades[0].uid, measured), "change the blade C");
  EXPECT_EQ(kit().blades[0].thing, measured);
  undo_last();
  EXPECT_EQ(KitThing(kit().blades[0].thing), a_kit()[0]);
}

TEST_F(AShelf, AsksWhyASpecimenOfATrialWasMeasuredOtherwise) {
  trials::Trial cut = a_trial();
  cut.blades[1].specimens[0].hardness = trials::Hardness{.reading = 58};
  ASSERT_TRUE(take(notebook_, cut, {}, next()));
  const std::string uid = kit().blades[1].uid;
  trials::Blade otherwise = cut.blades[1];
  otherwise.specimens[0].hardness = trials::Hardness{.reading = 56};

  EXPECT_EQ(changing(uid, otherwise),
            "What the blade B is can be corrected with a reason: the trial matting rests on it.");
  Authorship by = next();
  by.why = "the tester was not level";
  const auto corrected = change_in_kit(notebook_, uid, otherwise, by);

  ASSERT_TRUE(corrected && *corrected);
  EXPECT_EQ(kit().blades[1].thing, otherwise);
}

}  // namespace
}  // namespace keenfall::notebook
