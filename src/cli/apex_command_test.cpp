#include "cli/apex_command.h"

#include "cli/widest_line.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace keenfall::cli {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

Surroundings surroundings(const Look& look = {}) {
  return {.look = look,
          .use_cases = {},
          .is_stop_asked_for = [] { return false; },
          .seconds_now = [] { return 0.0; },
          .program_version = "0.1.0"};
}

Outcome apex(std::vector<std::string> words, const Look& look = {}) {
  words.push_back("--threads=1");
  return apex_command(words, surroundings(look));
}

TEST(ApexCommand, SaysFirstWhenTheEdgeIsHalfAsKeen) {
  const std::string text = apex({"--cuts=127"}).out;

  EXPECT_THAT(text,
              StartsWith("An edge of X153CrMoV12 (20° per side, fine) is half as keen after "));
  EXPECT_THAT(text, HasSubstr("plausible parameters, not validated"));
  EXPECT_THAT(text, HasSubstr("Of the metal that left the apex "));
  EXPECT_LE(widest_line(text), 80);
}

// Clean stock leaves a wear-resistant steel keen for well over 100 cuts (docs/methods/apex.md).
TEST(ApexCommand, SaysWhereHalfKeennessWasNotReached) {
  const std::string text = apex({"--medium=new sisal matting", "--cuts=31"}, {.width = 200}).out;

  EXPECT_THAT(text, HasSubstr("is not yet half as keen after 31 cuts"));
  EXPECT_THAT(text, HasSubstr("fewer than a tenth are"));
}

TEST(ApexCommand, DrawsTheSectionAlsoWithoutUnicodeAndNarrow) {
  const std::string wide = apex({"--cuts=63"}, {.width = 120}).out;
  const std::string plain = apex({"--cuts=63"}, {.width = 60, .unicode = false}).out;

  EXPECT_THAT(wide, HasSubstr("⣿"));
  EXPECT_THAT(plain, HasSubstr("####"));
  EXPECT_THAT(plain, Not(HasSubstr("?")));
  EXPECT_LE(widest_line(wide), 120);
  EXPECT_LE(widest_line(plain), 60);
}

TEST(ApexCommand, GivesJsonAlone) {
  const auto document = nlohmann::json::parse(apex({"--cuts=15", "--json"}).out);

  EXPECT_EQ(document["format"], "keenfall-apex");
  EXPECT_EQ(document["readings"].size(), 5U);
}

TEST(ApexCommand, ListsEveryNumberWithItsMark) {
  const std::string text = apex({"--list"}, {.width = 100}).out;

  EXPECT_THAT(text, HasSubstr("X153CrMoV12"));
  EXPECT_THAT(text, HasSubstr("reference_wear_rate_mm3_per_newton_metre"));
  EXPECT_THAT(text, HasSubstr("t t"));
  EXPECT_THAT(text, HasSubstr("plausible: no source"));
  EXPECT_THAT(text, HasSubstr("coarse"));
  EXPECT_LE(widest_line(text), 100);
}

TEST(ApexCommand, ListsOneSteelWithItsSources) {
  const std::string text = apex({"--list", "--steel=AISI A11"}, {.width = 100}).out;

  EXPECT_THAT(text, HasSubstr("toughness"));
  EXPECT_THAT(text, HasSubstr("gomes1995"));
}

TEST(ApexCommand, CutsOneEdgeOnly) {
  const Outcome outcome = apex({"--steel=75Ni8", "--steel=AISI A11"});

  EXPECT_EQ(outcome.code, ExitCode::wrong_usage);
  EXPECT_THAT(outcome.err, HasSubstr("apex cuts one edge: --steel can be said once"));
}

TEST(ApexCommand, IsRefusedAnAngleThatIsNone) {
  const Outcome outcome = apex({"--angle=95"});

  EXPECT_EQ(outcome.code, ExitCode::wrong_usage);
  EXPECT_THAT(outcome.err, HasSubstr("at least 1 degree and below 90 degrees"));
}

}  // namespace
}  // namespace keenfall::cli
