#include "wire/sent_json.h"

#include "wire/app_requests.h"
#include "wire/asked_json.h"
#include "wire/planning_requests.h"
#include "wire/tables_json.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <ctime>
#include <string>

namespace keenfall::wire {
namespace {

using nlohmann::json;

std::string nested(std::size_t depth) { return std::string(depth, '[') + std::string(depth, ']'); }

// The least of a few times: that of a processor that nobody else needed meanwhile.
std::clock_t time_to_refuse(const std::string& body) {
  std::clock_t least = std::clock();
  for (int i = 0; i < 5; ++i) {
    const std::clock_t begun = std::clock();
    EXPECT_FALSE(arms_asked_from(body));
    least = std::min(least, std::clock() - begun);
  }
  return least;
}

std::string with_so_many_keys(int keys) {
  json object = json::object();
  for (int i = 0; i < keys; ++i) object["key " + std::to_string(i)] = i;
  return object.dump();
}

TEST(WhatIsSent, TakesNotMuchLongerForEachKeyTheMoreKeysThereAre) {
  constexpr int kFew = 5'000;
  const std::clock_t few = time_to_refuse(with_so_many_keys(kFew));
  const std::clock_t many = time_to_refuse(with_so_many_keys(4 * kFew));

  EXPECT_LT(many, 8 * few);
}

TEST(WhatIsSent, MayBeNestedAsDeepAsAnyRequestNeeds) {
  EXPECT_FALSE(too_much_sent(nested(kDeepestNesting)));
  EXPECT_TRUE(too_much_sent(nested(kDeepestNesting + 1)));
  EXPECT_TRUE(too_much_sent(R"({"a":)" + nested(kDeepestNesting) + "}"));
}

TEST(WhatIsSent, IsNotNestedByWhatStandsInATextOrSideBySide) {
  EXPECT_FALSE(too_much_sent(json{{"a", std::string(1000, '[') + "\"" + nested(70)}}.dump()));
  std::string many = "[[]";
  for (int i = 0; i < 1000; ++i) many += ",[]";
  EXPECT_FALSE(too_much_sent(many + "]"));
}

TEST(WhatIsSent, MayHoldSoManyValuesOnly) {
  std::string list = "[0";
  for (std::size_t i = 2; i < kMostSentValues; ++i) list += ",0";

  EXPECT_FALSE(too_much_sent(list + "]"));
  const auto problem = too_much_sent(list + ",0]");

  ASSERT_TRUE(problem);
  EXPECT_EQ(problem->kind, base::ProblemKind::too_large);
}

// As deep as would end the process where a value is copied or written by a function that calls
// itself.
TEST(WhatIsSent, IsRefusedWhereItIsDeepWhateverItsFieldMeans) {
  constexpr std::size_t kDeep = 200'000;
  const std::string deep = nested(kDeep);
  const std::string arms =
      R"({"blades": ["A"], "edges": [{}], "crossed": true, "cuttings": )" + deep + "}";

  const auto refused = arms_asked_from(arms);

  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().front().sentence, "What was sent is nested too deeply.");
  EXPECT_FALSE(strike_from(R"({"reason": )" + deep + "}"));
  EXPECT_FALSE(read_tables_from(R"({"sources": )" + deep + "}"));
  EXPECT_FALSE(take_tables_from(deep));
}

TEST(WhatIsSent, IsNamedByItsTypeWhereItIsAListOrAnObject) {
  const auto of_list = name_from(R"({"name": [1, 2, 3]})");
  const auto of_object = name_from(R"({"name": {"a": 1}})");

  ASSERT_FALSE(of_list);
  EXPECT_EQ(of_list.error().front().place.found, "a list of 3");
  ASSERT_FALSE(of_object);
  EXPECT_EQ(of_object.error().front().place.found, "an object");
}

TEST(WhatIsSent, IsShownInWholeCharacters) {
  EXPECT_EQ(shown_of("sisal", 5), "sisal");
  EXPECT_EQ(shown_of("sisal rope", 5), "sisal...");
  EXPECT_EQ(shown_of("9 µm", 3), "9 ...");  // µ has two bytes
  EXPECT_EQ(shown_of("a\nb\u202Ec", 80), "a\uFFFDb\uFFFDc");
  EXPECT_EQ(shown_of("", 80), "");
}

TEST(ATextOfAPerson, HasALength) {
  EXPECT_FALSE(taken_instead(std::string(1000, 'x'), Lines::one, 1000));
  EXPECT_EQ(taken_instead(std::string(1001, 'x'), Lines::one, 1000),
            "a text of at most 1,000 bytes");
}

TEST(ATextOfAPerson, HasNoCharacterThatIsNotToBeSeen) {
  for (const std::string unseen : {"\x01",
                                   "\x07",
                                   "\x1B",
                                   "\x7F",
                                   "\u0085",
                                   "\u2028",
                                   "\u202A",
                                   "\u202E",
                                   "\u2066",
                                   "\u2069"}) {
    const json shown = unseen;
    EXPECT_TRUE(taken_instead("a" + unseen, Lines::one, 100)) << shown;
    EXPECT_TRUE(taken_instead("a" + unseen, Lines::many, 100)) << shown;
  }
  EXPECT_TRUE(taken_instead(std::string("a\0b", 3), Lines::one, 100));
  for (const std::string seen : {"ä µ", "1° – 2″", "日本", "שלום", "\u2027", "\u2070", "\u00A0"}) {
    EXPECT_FALSE(taken_instead(seen, Lines::one, 100)) << seen;
  }
}

TEST(ATextOfAPerson, MayHaveLinesWhereItIsNoName) {
  EXPECT_TRUE(taken_instead("a\nb", Lines::one, 100));
  EXPECT_FALSE(taken_instead("a\r\n\tb", Lines::many, 100));
}

TEST(EveryRequest, LimitsItsTexts) {
  const std::string long_text(1001, 'n');
  const json claim = {{"words", long_text}, {"worth_it_margin", 1.5}};

  EXPECT_FALSE(name_from(json{{"name", long_text}}.dump()));
  EXPECT_FALSE(name_from(json{{"name", "a\nb\x07\u202E"}}.dump()));
  EXPECT_FALSE(new_trial_from(json{{"name", long_text}}.dump()));
  EXPECT_FALSE(asked_from(json{{"revision", "none"}, {"claims", {claim}}}.dump()));
  EXPECT_FALSE(why_from(json{{"why", long_text}}.dump()));
  EXPECT_FALSE(strike_from(json{{"run", 0}, {"reason", long_text}}.dump()));
  EXPECT_FALSE(own_scatter_asked_from(json{{"blade", "A"}, {"medium", "a\tb"}}.dump()));
  EXPECT_FALSE(arms_asked_from(
      json{{"blades", {"A", long_text}}, {"edges", json::array()}, {"cuttings", 1}}.dump()));
  EXPECT_FALSE(take_tables_from(
      json{{"sources", {{{"name", "x"}, {"text", "a"}}}}, {"trial_name", "a\u202Eb"}}.dump()));
}

TEST(EveryRequest, TakesAReasonOfTwoLinesAndALongPath) {
  EXPECT_TRUE(strike_from(json{{"run", 0}, {"reason", "it slipped\nat the tip"}}.dump()));
  EXPECT_TRUE(
      open_notebook_from(json{{"how", "open"}, {"path", "/" + std::string(2000, 'f')}}.dump()));
}

TEST(ATypedSheet, OfMoreCellsThanAnyIsNotTakenApart) {
  std::string row = "[\"\"";
  for (std::size_t i = 0; i < kMostSentValues; ++i) row += R"(,"")";
  const auto refused = read_tables_from(R"({"sources": [{"name": "x", "cells": [)" + row + "]]}]}");

  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().front().kind, base::ProblemKind::too_large);
}

}  // namespace
}  // namespace keenfall::wire
