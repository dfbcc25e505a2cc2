#include "cli/apex_command.h"

#include "cli/widest_line.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <unistd.h>

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
  EXPECT_THAT(text, HasSubstr("of the others fewer than a tenth are half as keen by then"));
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

TEST(ApexCommand, SaysWhichEdgeItShowsAndHowToGetARange) {
  const std::string text = apex({"--cuts=127"}, {.width = 400}).out;

  EXPECT_THAT(text, HasSubstr("the middle one of 41 edges that differ by luck alone"));
  EXPECT_THAT(text, HasSubstr("with the usual constants alone"));
  EXPECT_THAT(text, HasSubstr("--draws=200"));
  EXPECT_THAT(text, HasSubstr("deepest chip µm"));
  EXPECT_THAT(text, HasSubstr("its lowest place, by wear, chips and folds that fell off together"));
}

TEST(ApexCommand, GivesTheRangeOverAllThatIsPlausibleWhereDrawsAreAskedFor) {
  const std::vector<std::string> words = {"--cuts=63", "--edge-length=2", "--draws=50"};
  std::vector<std::string> as_json = words;
  as_json.push_back("--json");

  const std::string text = apex(words, {.width = 400}).out;
  const auto document = nlohmann::json::parse(apex(as_json).out);

  EXPECT_THAT(text, HasSubstr("the middle 90 % of 50 draws: by a push reading "));
  EXPECT_THAT(text, Not(HasSubstr("--draws")));
  EXPECT_THAT(text, HasSubstr("The push life hangs most on "));
  const auto& range = document["half_keenness_over_plausible"];
  EXPECT_EQ(range["draws"], 50);
  EXPECT_LT(range["push"]["cuts"]["lo90"], range["push"]["cuts"]["hi90"]);
  EXPECT_FALSE(document.contains("no_range_because"));
}

TEST(ApexCommand, GivesTheRangeOfMixedWorkToo) {
  const std::string text =
      apex({"--schedule=9 new sisal matting, pause 8 h wet", "--cuts=15", "--draws=50"},
           {.width = 400})
          .out;

  EXPECT_THAT(text, HasSubstr("the middle 90 % of 50 draws: by a push reading "));
}

TEST(ApexCommand, NamesEveryProblemOfItsOptionsAtOnce) {
  const Outcome outcome = apex({"--steel=wood",
                                "--steel=stone",
                                "--medium=new sisal mating",
                                "--angle=60",
                                "--cuts=0",
                                "--edge-length=-3",
                                "--draws=one",
                                "stray"});

  EXPECT_EQ(outcome.code, ExitCode::wrong_usage);
  for (const char* said : {"--steel can be said once",
                           "“wood”",
                           "“stone”",
                           "did you mean new sisal matting",
                           "the apex angle per side is out of its range, at 60",
                           "the longest run in cuts is out of its range, at 0",
                           "the length of the edge in mm is out of its range, at -3",
                           "\"one\"",
                           "\"stray\""}) {
    EXPECT_THAT(outcome.err, HasSubstr(said));
  }
}

class OwnSteels {
 public:
  explicit OwnSteels(const std::string& rows)
      : path_(std::filesystem::temp_directory_path() /
              ("keenfall-apex-" + std::to_string(getpid()) + ".csv")) {
    std::ofstream(path_) << "name,hardness_hrc,matrix_hv,carbide_volume_fraction,"
                            "toughness_mpa_sqrt_m\n" +
                                rows;
  }
  ~OwnSteels() { std::filesystem::remove(path_); }
  OwnSteels(const OwnSteels&) = delete;
  OwnSteels& operator=(const OwnSteels&) = delete;
  OwnSteels(OwnSteels&&) = delete;
  OwnSteels& operator=(OwnSteels&&) = delete;

  [[nodiscard]] std::string option() const { return "--steels=" + path_.string(); }

 private:
  std::filesystem::path path_;
};

TEST(ApexCommand, CutsTheSteelOfAFileThatHoldsOne) {
  const OwnSteels file("ours,58,640,0.02,30\n");

  EXPECT_THAT(apex({file.option(), "--cuts=15"}).out, StartsWith("An edge of ours ("));
}

TEST(ApexCommand, SaysThatASteelOfAFileStandsInPlaceOfAKnownOne) {
  const OwnSteels file("C75S,58,640,0.02,30\n");

  EXPECT_EQ(apex({file.option(), "--cuts=15", "--quiet"}).err,
            "Note: your own steel C75S is used in place of the known one of that name.\n");
}

TEST(ApexCommand, AsksWhichSteelOfAFileThatHoldsSeveral) {
  const OwnSteels file("ours,58,640,0.02,30\ntheirs,60,660,0.05,25\n");

  const Outcome outcome = apex({file.option(), "--cuts=15"});

  EXPECT_EQ(outcome.code, ExitCode::wrong_usage);
  EXPECT_THAT(outcome.err, HasSubstr("the table of --steels holds 2: say with --steel which"));
  EXPECT_THAT(outcome.err, HasSubstr("ours, theirs"));
  EXPECT_THAT(apex({file.option(), "--cuts=15", "--steel=Theirs"}).out,
              StartsWith("An edge of theirs ("));
}

TEST(ApexCommand, CutsOneEdgeOnly) {
  const Outcome outcome = apex({"--steel=75Ni8", "--steel=AISI A11"});

  EXPECT_EQ(outcome.code, ExitCode::wrong_usage);
  EXPECT_THAT(outcome.err, HasSubstr("apex cuts one edge: --steel can be said once"));
}

TEST(ApexCommand, IsRefusedAnAngleThatIsNone) {
  const Outcome outcome = apex({"--angle=95"});

  EXPECT_EQ(outcome.code, ExitCode::wrong_usage);
  EXPECT_THAT(outcome.err, HasSubstr("from 1 to 45 degrees"));
}

}  // namespace
}  // namespace keenfall::cli
