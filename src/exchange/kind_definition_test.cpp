#include "exchange/kind_definition.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>

namespace keenfall::exchange {
namespace {

using testing::HasSubstr;

std::string definition_refusal(std::string_view text) {
  const auto kind = parse_kind_definition(text);
  return kind ? "taken" : base::in_words(kind.error());
}

TEST(KindDefinitions, NeedNameUnitAndDirection) {
  const auto kind = parse_kind_definition("flank_wear:mm:lower");

  ASSERT_TRUE(kind);
  EXPECT_EQ(*kind,
            (trials::ReadingKind{.name = "flank_wear", .words = "flank wear", .unit = "mm"}));
}

TEST(KindDefinitions, TakeOptions) {
  const auto kind = parse_kind_definition("bite:mm:higher:level=1.5:zero=below:0.01:largest=40");

  ASSERT_TRUE(kind);
  EXPECT_EQ(kind->keener_when, trials::KeenerWhen::higher);
  EXPECT_EQ(kind->default_level, 1.5);
  EXPECT_EQ(kind->zero, trials::ZeroReading::below_resolution);
  EXPECT_EQ(kind->resolution, 0.01);
  EXPECT_EQ(kind->largest, 40);
}

TEST(KindDefinitions, MayBeEvidenceWithHonestZeros) {
  const auto kind = parse_kind_definition("stains:stains:lower:use=evidence");

  ASSERT_TRUE(kind);
  EXPECT_EQ(kind->use, trials::ReadingUse::evidence);
  EXPECT_EQ(kind->zero, trials::ZeroReading::honest);
}

TEST(KindDefinitions, ThatAreIncompleteAreRefusedWithAnExample) {
  EXPECT_EQ(
      definition_refusal("flank_wear:mm"),
      "column --define-kind: A kind is defined as name:unit:direction; “flank_wear:mm” lacks a "
      "part. Accepted: flank_wear:mm:lower or flank_wear:mm:lower:level=2:zero=below:0.01.");
  EXPECT_THAT(definition_refusal(""), HasSubstr("lacks a part"));
}

TEST(KindDefinitions, SayWhatIsWrongWithAnOption) {
  EXPECT_THAT(definition_refusal("w:mm:down"), HasSubstr("lower or higher, not “down”"));
  EXPECT_THAT(definition_refusal("w:mm:lower:level=1"), HasSubstr("above 1"));
  EXPECT_THAT(definition_refusal("w:mm:lower:level=x"), HasSubstr("above 1"));
  EXPECT_THAT(definition_refusal("w:mm:lower:zero=below"), HasSubstr("smallest step"));
  EXPECT_THAT(definition_refusal("w:mm:lower:zero=below:0"), HasSubstr("smallest step"));
  EXPECT_THAT(definition_refusal("w:mm:lower:colour=red"), HasSubstr("“colour=red”: the option"));
}

TEST(Kinds, AreFoundAmongTheDefinedFirst) {
  const std::array defined = {trials::ReadingKind{.name = "wear", .unit = "mm"}};

  EXPECT_EQ(find_kind("Wear", defined), defined.data());
  EXPECT_EQ(find_kind("thread push", defined)->name, "thread_push");
  EXPECT_EQ(find_kind("moon", defined), nullptr);
  EXPECT_THAT(list_of_kinds(defined), HasSubstr("wear, thread_push, "));
}

TEST(KindDefinition, TurnsNoKnownKindRound) {
  const auto turned = parse_kind_definition("thread_push:gf:higher");

  ASSERT_FALSE(turned);
  EXPECT_EQ(turned.error().sentence,
            "The kind thread_push is known here, and of it the lower reading is the keener one.");
  EXPECT_TRUE(parse_kind_definition("thread_push:gf:lower:level=3"));
}

TEST(KindDefinitions, AreWrittenAsTheyCanBeReadAgain) {
  for (const char* text : {"flank_wear:mm:lower:zero=below:0.01",
                           "edge_angle:deg:lower:largest=180",
                           "bite:%:higher:level=1.25",
                           "chips:count:lower:use=evidence",
                           "nicks:count:lower:use=evidence:zero=refused"}) {
    const auto kind = parse_kind_definition(text);

    ASSERT_TRUE(kind) << text;
    EXPECT_EQ(kind_definition_text(*kind), text);
  }
}

}  // namespace
}  // namespace keenfall::exchange
