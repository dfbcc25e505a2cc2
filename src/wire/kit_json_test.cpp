#include "wire/kit_json.h"

#include "wire/revisions.h"
#include "wire/schema_faults_test.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::wire {
namespace {

using nlohmann::json;

// One thing on each shelf, all of it told; trials rest on what trials can rest on.
notebook::KeptKit a_full_kit() {
  const std::vector<std::string> used{"felt", "matting"};
  const trials::Medium matting{.name = "matting", .condition = "dry"};
  const trials::Hardness vickers{.reading = 640,
                                 .scale = trials::HardnessScale::vickers,
                                 .error = 5,
                                 .how_known = trials::HowKnown::mill_sheet};
  const trials::Blade blade{
      .name = "C",
      .steel = "X153CrMoV12",
      .hardness = trials::Hardness{.reading = 61, .how_known = trials::HowKnown::declared_by_maker},
      .specimens = {{.name = "i", .hardness = vickers}, {.name = "ii"}}};
  const trials::EdgePreparation prepared{.bevel_angle = trials::PerSideAngle{17},
                                         .apex_angle = trials::PerSideAngle{20},
                                         .finish = "9 µm diamond",
                                         .thickness_behind_edge_mm = 0.35};
  const trials::ReadingKind glow{.name = "edge_glow",
                                 .words = "edge glow",
                                 .unit = "lx",
                                 .keener_when = trials::KeenerWhen::higher};
  return {
      .blades = {{.uid = "b", .thing = blade, .used_in = used}},
      .edges = {{.uid = "e", .thing = {"fine", prepared, "by hand"}, .used_in = {}}},
      .media = {{.uid = "m", .thing = matting, .used_in = used}},
      .lots = {{.uid = "l", .thing = {matting, "roll 7", 30, "spring"}, .used_in = used}},
      .threads = {{.uid = "t",
                   .thing = {"thread_push", "0.25 mm polyester", "3"},
                   .used_in = used}},
      .kinds = {{.uid = "k", .thing = glow, .used_in = used}},
      .stones = {
          {.uid = "s", .thing = {"the coarse plate", "diamond", "45 µm", "flat"}, .used_in = {}}}};
}

json told(const notebook::KeptKit& kit) {
  json document = json::parse(kit_to_json(kit));
  EXPECT_EQ(testing::faults_against_api(document, "Kit"), "");
  return document;
}

TEST(KitJson, SaysWhatTrialsRestOnWhateverItIs) {
  const json document = told(a_full_kit());

  for (const char* shelf : {"blades", "media", "lots", "threads", "kinds"}) {
    EXPECT_EQ(document[shelf].back()["used_in"], json({"felt", "matting"})) << shelf;
  }
  for (const char* shelf : {"edges", "stones"}) {
    EXPECT_FALSE(document[shelf].back().contains("used_in")) << shelf;
  }
}

TEST(KitJson, IsReadBackAsItWasWritten) {
  const notebook::KeptKit kit = a_full_kit();
  const std::vector<notebook::KitThing> things{kit.blades[0].thing,
                                               kit.edges[0].thing,
                                               kit.media[0].thing,
                                               kit.lots[0].thing,
                                               kit.threads[0].thing,
                                               kit.kinds[0].thing,
                                               kit.stones[0].thing};
  const json document = told(kit);

  for (std::size_t shelf = 0; shelf < kKitShelves.size(); ++shelf) {
    const json thing = document[std::string(kKitShelves.at(shelf))].back();
    const auto added = kit_thing_from(shelf, thing.dump());
    const auto changed = kit_change_from(shelf, json{{"thing", thing}, {"why", "mistyped"}}.dump());

    ASSERT_TRUE(added) << kKitShelves.at(shelf) << ": " << added.error().front().sentence;
    EXPECT_EQ(*added, things[shelf]) << kKitShelves.at(shelf);
    ASSERT_TRUE(changed) << kKitShelves.at(shelf);
    EXPECT_EQ(changed->thing, things[shelf]) << kKitShelves.at(shelf);
    EXPECT_EQ(changed->why, "mistyped");
    EXPECT_EQ(changed->revision, revision_of(things[shelf])) << kKitShelves.at(shelf);
  }
}

TEST(KitJson, OfNothingHasTheKindsThatAreKnownOnly) {
  const json document = told({});

  for (const auto& [shelf, things] : document.items()) {
    EXPECT_TRUE(shelf == "kinds" || things.empty()) << shelf;
  }
  EXPECT_EQ(document["kinds"].size(), trials::known_reading_kinds().size());
  for (const json& kind : document["kinds"]) {
    EXPECT_EQ(kind["own"], false);
    EXPECT_FALSE(kind.contains("uid"));
  }
}

TEST(KitJson, OfOnesOwnKindsComesAfterTheKnownOnes) {
  const json kinds = told(a_full_kit())["kinds"];

  EXPECT_EQ(kinds.front()["own"], false);
  EXPECT_EQ(kinds.back()["own"], true);
  EXPECT_EQ(kinds.back()["name"], "edge_glow");
}

TEST(KitRequests, SayEveryFieldThatIsWrong) {
  const auto refused = kit_change_from(
      0,
      R"({"thing": {"name": " ", "hardness": {"reading": 0, "scale": "HRA"},)"
      R"( "specimens": [{"name": "i"}, {"hardness": {"reading": 60, "scale": "HRC"}}], "revision": "0"}, "reason": "x"})");

  ASSERT_FALSE(refused);
  std::vector<std::string> fields;
  for (const base::Problem& problem : refused.error()) fields.push_back(problem.place.column);
  EXPECT_EQ(fields,
            (std::vector<std::string>{"thing.name",
                                      "thing.hardness.reading",
                                      "thing.hardness.scale",
                                      "thing.specimens[1].name",
                                      "reason"}));
}

TEST(KitRequests, TakeLinesInANoteAndNoneInAName) {
  EXPECT_TRUE(kit_thing_from(6, R"({"name": "the plate\n", "note": "worn\nat one end"})"));
  EXPECT_FALSE(kit_thing_from(6, R"({"name": "the\nplate"})"));
  EXPECT_FALSE(kit_thing_from(6, R"({"name": "the plate", "note": "\u001b[2J"})"));
}

TEST(KitRequests, NeedTheThingThatIsChanged) {
  const auto refused = kit_change_from(6, R"({"name": "the coarse plate"})");

  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().front().place.column, "thing");
}

}  // namespace
}  // namespace keenfall::wire
