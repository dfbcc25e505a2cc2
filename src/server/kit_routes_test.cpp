#include "server/asked_app_test.h"

#include <gmock/gmock.h>

#include <map>

namespace keenfall::server::testing {
namespace {

using ::testing::HasSubstr;

class KitRoutes : public AskedApp {
 protected:
  KitRoutes() { (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench.keen"}}); }

  static std::string as_seen(const json& thing) {
    return "?revision=" + thing["revision"].get<std::string>();
  }
  json kept(const std::string& shelf, const json& thing) {
    const json kit = got("POST", "/kit/" + shelf, "Kit", thing);
    return kit.is_object() ? kit[shelf].back() : json();
  }
};

const json& things_to_keep() {
  static const json things = {
      {"blades",
       {{"name", "N"},
        {"steel", "X90CrMoV18"},
        {"hardness",
         {{"reading", 58.5}, {"scale", "HRC"}, {"error", 0.5}, {"how_known", "measured"}}},
        {"specimens",
         {{{"name", "I"}, {"hardness", {{"reading", 700}, {"scale", "HV"}}}}, {{"name", "II"}}}}}},
      {"edges",
       {{"name", "fine"},
        {"edge",
         {{"bevel_angle_per_side_deg", 15},
          {"apex_angle_per_side_deg", 20},
          {"finish", "9 µm diamond"},
          {"thickness_behind_edge_mm", 0.4}}},
        {"note", "by hand"}}},
      {"media", {{"name", "matting"}, {"condition", "dry"}}},
      {"lots",
       {{"medium", "sisal cord"},
        {"condition", "dry"},
        {"name", "roll 3"},
        {"length_m", 25},
        {"note", "from the cellar"}}},
      {"threads", {{"kind", "thread_push"}, {"name", "0.25 mm polyester"}, {"lot", "7"}}},
      {"kinds",
       {{"name", "flank_wear"}, {"words", "flank wear"}, {"unit", "mm"}, {"keener_when", "lower"}}},
      {"stones",
       {{"name", "the coarse plate"},
        {"abrasive", "diamond"},
        {"grit", "45 µm"},
        {"note", "flat"}}}};
  return things;
}

TEST_F(KitRoutes, KeepEveryThingAsItWasTyped) {
  for (const auto& [shelf, thing] : things_to_keep().items()) {
    const json answer = kept(shelf, thing);
    for (const auto& [field, value] : thing.items()) {
      json found = answer[field];
      if (field == "edge") found.erase("words");
      EXPECT_EQ(found, value) << shelf << "." << field;
    }
    EXPECT_EQ(answer["uid"].get<std::string>().size(), 32U) << shelf;
  }
}

TEST_F(KitRoutes, TellAnEdgeInOtherUnitsAndKeepItAsItWas) {
  const json edge = {{"name", "thin"}, {"edge", {{"thickness_behind_edge_mm", 0.38}}}};
  headers_ = {{.name = "x-keenfall-told-in", .text = "in"}};

  const json told = kept("edges", edge)["edge"];

  EXPECT_EQ(told["words"], "0.015 in behind the edge");
  EXPECT_EQ(told["thickness_behind_edge_mm"], 0.38);
  EXPECT_EQ(got("GET", "/kit", "Kit")["edges"][0]["edge"], told);
  headers_.clear();
  EXPECT_EQ(got("GET", "/kit", "Kit")["edges"][0]["edge"]["words"], "0.38 mm behind the edge");
}

TEST_F(KitRoutes, BeginWithNothingButTheKnownKindsOfReading) {
  const json kit = got("GET", "/kit", "Kit");

  EXPECT_TRUE(kit["blades"].empty());
  EXPECT_EQ(kit["kinds"][0]["name"], "thread_push");
  EXPECT_EQ(kit["kinds"][0]["own"], false);
  EXPECT_FALSE(kit["kinds"][0].contains("uid"));
}

TEST_F(KitRoutes, ChangeAndTakeAwayOnEveryShelf) {
  for (const auto& [shelf, thing] : things_to_keep().items()) {
    json answer = kept(shelf, thing);
    const std::string path = "/kit/" + shelf + "/" + answer["uid"].get<std::string>();
    answer["name"] = "another_name";
    const json changed = got("PUT", path, "Kit", {{"thing", answer}});
    EXPECT_EQ(changed[shelf].back()["name"], "another_name") << shelf;
    EXPECT_EQ(changed[shelf].back()["uid"], answer["uid"]) << shelf;

    const std::size_t before = changed[shelf].size();
    const std::string seen = path + as_seen(changed[shelf].back());
    EXPECT_EQ(got("DELETE", seen, "Kit")[shelf].size(), before - 1) << shelf;
    EXPECT_EQ(refused(404, "DELETE", seen, nullptr)["kind"], "unknown_name") << shelf;
  }
}

TEST_F(KitRoutes, ArePutRightByUndo) {
  (void)kept("stones", things_to_keep()["stones"]);
  (void)undone();

  EXPECT_TRUE(got("GET", "/kit", "Kit")["stones"].empty());
  const json journal = got("GET", "/journal", "Journal");
  EXPECT_THAT(journal.dump(), HasSubstr("the coarse plate"));
}

TEST_F(KitRoutes, TakeAThingOnlyFromItsOwnShelf) {
  const json blade = kept("blades", {{"name", "N"}});
  const std::string uid = blade["uid"];

  (void)refused(404, "DELETE", "/kit/stones/" + uid + as_seen(blade), nullptr);
  const json stone = {{"name", "M"}, {"revision", blade["revision"]}};
  (void)refused(404, "PUT", "/kit/stones/" + uid, {{"thing", stone}});
  EXPECT_EQ(got("GET", "/kit", "Kit")["blades"].size(), 1U);
}

TEST_F(KitRoutes, NameTheFieldThatCannotBeUsed) {
  const auto field_of = [&](const std::string& shelf, const json& thing) {
    return refused(400, "POST", "/kit/" + shelf, thing)["column"].get<std::string>();
  };

  EXPECT_EQ(field_of("blades", json::object()), "name");
  EXPECT_EQ(field_of("blades", {{"name", "  "}}), "name");
  EXPECT_EQ(field_of("blades", {{"name", "N"}, {"hardness", {{"scale", "HRC"}}}}),
            "hardness.reading");
  EXPECT_EQ(field_of("blades", {{"name", "N"}, {"hardness", {{"reading", 60}, {"scale", "HRA"}}}}),
            "hardness.scale");
  EXPECT_EQ(field_of("blades", {{"name", "N"}, {"maker", "unknown"}}), "maker");
  EXPECT_EQ(field_of("edges", {{"name", "fine"}}), "edge");
  EXPECT_EQ(field_of("edges", {{"name", "fine"}, {"edge", {{"bevel_angle_per_side_deg", 95}}}}),
            "edge.bevel_angle_per_side_deg");
  EXPECT_EQ(field_of("lots", {{"medium", "matting"}, {"name", "3"}, {"length_m", 0}}), "length_m");
  EXPECT_EQ(field_of("kinds", {{"name", "wear"}, {"words", "wear"}, {"unit", "mm"}}),
            "keener_when");
  EXPECT_EQ(field_of("threads", {{"kind", "tread_push"}, {"name", "yarn"}}), "kind");
}

TEST_F(KitRoutes, RefuseAHardnessOffItsScaleAndAMicroBevelBelowItsBevel) {
  const auto hard = [&](double reading, const char* scale) -> json {
    return {{"name", "N"}, {"hardness", {{"reading", reading}, {"scale", scale}}}};
  };
  const json off = refused(400, "POST", "/kit/blades", hard(200, "HRC"));
  EXPECT_EQ(off["sentence"], "The hardness of N is 200 HRC, and the C scale goes from 20 to 70.");
  EXPECT_EQ(off["column"], "hardness.reading");
  (void)refused(400, "POST", "/kit/blades", hard(19.9, "HRC"));
  (void)kept("blades", hard(700, "HV"));

  const auto ground = [&](double bevel, double apex) -> json {
    return {{"name", "E"},
            {"edge", {{"bevel_angle_per_side_deg", bevel}, {"apex_angle_per_side_deg", apex}}}};
  };
  const json below = refused(400, "POST", "/kit/edges", ground(20, 15));
  EXPECT_EQ(below["column"], "edge.apex_angle_per_side_deg");
  EXPECT_THAT(below["sentence"], HasSubstr("is 15° per side, below its bevel of 20°"));
  (void)kept("edges", ground(15, 15));
  EXPECT_THAT(refused(409, "POST", "/kit/edges", ground(15, 20))["sentence"],
              HasSubstr("The kit has an edge E already."));
}

TEST_F(KitRoutes, RemarkOnASteelThatIsNotInTheTableAndAMediumThatCameInWithItsLot) {
  const auto remarks = [&](const std::string& shelf, const json& thing) {
    return got("POST", "/kit/" + shelf, "Kit", thing).value("remarks", json::array());
  };

  EXPECT_EQ(remarks("blades", {{"name", "A"}, {"steel", "X46Cr31"}}),
            (json{"The steel X46Cr31 is not in the table; nearest: X46Cr13."}));
  EXPECT_TRUE(remarks("blades", {{"name", "B"}, {"steel", "X46Cr13"}}).empty());
  EXPECT_EQ(remarks("blades", {{"name", "C"}, {"steel", "my grandfather's"}}),
            (json{"The steel my grandfather's is not in the table."}));
  EXPECT_EQ(remarks("lots", {{"medium", "matting"}, {"name", "roll 1"}}),
            (json{"The medium matting was not in the kit and came into it with its lot."}));
  EXPECT_EQ(remarks("lots", {{"medium", "mating"}, {"name", "roll 2"}}),
            (json{"The medium mating was not in the kit and came into it with its lot; nearest: "
                  "matting."}));
  EXPECT_TRUE(remarks("lots", {{"medium", "matting"}, {"name", "roll 3"}}).empty());
  EXPECT_FALSE(got("GET", "/kit", "Kit").contains("remarks"));
}

TEST_F(KitRoutes, RefuseTheSameNameTwiceAndGritsWithoutTheirSystem) {
  (void)kept("stones", {{"name", "plate"}});

  EXPECT_EQ(refused(409, "POST", "/kit/stones", {{"name", "plate"}})["kind"], "conflicting");
  EXPECT_THAT(refused(400, "POST", "/kit/stones", {{"name", "bare"}, {"grit", "1000"}})["sentence"],
              HasSubstr("does not say its system"));
}

// What a trial rests on stays, and is corrected with a reason only.
TEST_F(KitRoutes, SayWhichTrialRestsOnABladeAndAskWhyItIsCorrected) {
  (void)with_demo();
  json blade = got("GET", "/kit", "Kit")["blades"][0];
  const std::string path = "/kit/blades/" + blade["uid"].get<std::string>();

  EXPECT_FALSE(blade["used_in"].empty());
  EXPECT_THAT(refused(409, "DELETE", path + as_seen(blade), nullptr)["sentence"],
              HasSubstr("rests on it"));
  blade["steel"] = "X46Cr13";
  EXPECT_THAT(refused(400, "PUT", path, {{"thing", blade}})["sentence"],
              HasSubstr("with a reason"));
  const json corrected =
      got("PUT", path, "Kit", {{"thing", blade}, {"why", "the mill sheet was another's"}});
  EXPECT_EQ(corrected["blades"][0]["steel"], "X46Cr13");
  EXPECT_THAT(got("GET", "/journal", "Journal").dump(), HasSubstr("the mill sheet was another's"));
}

TEST_F(KitRoutes, WriteOverNothingThatWasChangedSinceItWasSeen) {
  for (const auto& [shelf, thing] : things_to_keep().items()) {
    const json seen = kept(shelf, thing);
    const std::string path = "/kit/" + shelf + "/" + seen["uid"].get<std::string>();
    json theirs = seen;
    theirs["name"] = "theirs";
    const json now = got("PUT", path, "Kit", {{"thing", theirs}})[shelf].back();
    json mine = seen;
    mine["name"] = "mine";

    const json problem = refused(409, "PUT", path, {{"thing", mine}});
    EXPECT_EQ(problem["column"], "revision") << shelf;
    EXPECT_THAT(problem["sentence"], HasSubstr(" theirs was changed elsewhere meanwhile")) << shelf;
    EXPECT_EQ(refused(409, "DELETE", path + as_seen(seen), nullptr)["column"], "revision") << shelf;
    EXPECT_EQ(got("GET", "/kit", "Kit")[shelf].back(), now) << shelf;

    mine["revision"] = now["revision"];
    EXPECT_EQ(got("PUT", path, "Kit", {{"thing", mine}})[shelf].back()["name"], "mine") << shelf;
  }
}

TEST_F(KitRoutes, SayWhatItIsNow) {
  const json seen = kept("blades", things_to_keep()["blades"]);
  const std::string path = "/kit/blades/" + seen["uid"].get<std::string>();
  json theirs = seen;
  theirs["steel"] = "X46Cr13";
  (void)got("PUT", path, "Kit", {{"thing", theirs}});
  json mine = seen;
  mine["steel"] = "X50CrMoV15";

  EXPECT_EQ(refused(409, "PUT", path, {{"thing", mine}})["sentence"],
            "The blade N was changed elsewhere meanwhile. It is now: X46Cr13, 58.5 ± 0.5 HRC, "
            "measured, specimens I and II.");
}

// An answer that did not arrive is asked for again.
TEST_F(KitRoutes, TakeTheSameChangeAgain) {
  json blade = kept("blades", {{"name", "N"}});
  const std::string path = "/kit/blades/" + blade["uid"].get<std::string>();
  blade["steel"] = "X46Cr13";

  const json once = got("PUT", path, "Kit", {{"thing", blade}});
  EXPECT_EQ(got("PUT", path, "Kit", {{"thing", blade}}), once);
}

TEST_F(KitRoutes, NeedToBeToldWhatWasSeen) {
  json blade = kept("blades", {{"name", "N"}});
  const std::string path = "/kit/blades/" + blade["uid"].get<std::string>();
  blade.erase("revision");

  EXPECT_EQ(refused(400, "PUT", path, {{"thing", blade}})["column"], "thing.revision");
  EXPECT_EQ(refused(400, "DELETE", path, nullptr)["column"], "revision");
}

// Every text of a thing, those within it as well.
void put_in_every_text(json& thing, const std::string& text) {
  for (auto& [field, value] : thing.items()) {
    const bool is_chosen =
        field == "scale" || field == "how_known" || field == "keener_when" || field == "kind";
    if (value.is_string() && !is_chosen) value = text;
    if (value.is_structured()) put_in_every_text(value, text);
  }
}

TEST_F(KitRoutes, GiveScriptsBackAsTheTextTheyAre) {
  const std::string script = "</script><script>alert('1')</script>{@html 1}";
  for (const auto& [shelf, thing] : things_to_keep().items()) {
    json hostile = thing;
    put_in_every_text(hostile, script + shelf);
    if (shelf == "blades") hostile["specimens"].erase(1);
    const json answer = kept(shelf, hostile);
    for (const auto& [field, value] : hostile.items()) {
      json found = answer[field];
      if (field == "edge") found.erase("words");
      EXPECT_EQ(found, value) << shelf << "." << field;
    }
  }
  EXPECT_EQ(asked("GET", "/kit").content_type, "application/json");
  EXPECT_THAT(got("GET", "/journal", "Journal")["entries"][0]["what"], HasSubstr(script));
}

TEST_F(KitRoutes, LimitEveryText) {
  const std::map<std::string, std::size_t> texts{{"blades", 4},
                                                 {"edges", 3},
                                                 {"media", 2},
                                                 {"lots", 4},
                                                 {"threads", 2},
                                                 {"kinds", 3},
                                                 {"stones", 4}};
  for (const auto& [shelf, thing] : things_to_keep().items()) {
    json too_long = thing;
    put_in_every_text(too_long, std::string(1001, 'x'));
    const HttpResponse answer = asked("POST", "/kit/" + shelf, too_long.dump());
    EXPECT_EQ(answer.status, 400) << shelf;
    const json problems = json::parse(answer.body)["problems"];
    EXPECT_EQ(problems.size(), texts.at(shelf)) << shelf;
    for (const json& problem : problems) {
      EXPECT_EQ(problem["accepted"], "a text of at most 1,000 bytes") << shelf;
    }
  }
}

TEST_F(KitRoutes, TakeNoBlanksAroundANameAndNoneForAReason) {
  EXPECT_EQ(kept("media", {{"name", " felt\t"}})["name"], "felt");
  EXPECT_EQ(refused(409, "POST", "/kit/media", {{"name", "felt "}})["kind"], "conflicting");

  (void)with_demo();
  json blade = got("GET", "/kit", "Kit")["blades"][0];
  blade["steel"] = "X46Cr13";
  const std::string path = "/kit/blades/" + blade["uid"].get<std::string>();
  EXPECT_EQ(refused(400, "PUT", path, {{"thing", blade}, {"why", "  "}})["column"], "why");
}

TEST_F(KitRoutes, NeedANotebook) {
  open_.open("");
  EXPECT_EQ(asked("GET", "/kit").status, asked("GET", "/home").status);
}

}  // namespace
}  // namespace keenfall::server::testing
