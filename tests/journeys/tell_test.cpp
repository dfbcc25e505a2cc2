// What is told of a trial: a report as JSON and the readings as a table, taken back to the same
// numbers.
#include "tables_on_disk.h"

#include "wire/schema_faults_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cstddef>
#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace keenfall::journeys {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

// A path in the scratch folder at which nothing is.
std::string new_path(const std::string& name) {
  std::filesystem::remove(scratch(name));
  return scratch(name).string();
}

nlohmann::json without_time(nlohmann::json judgement) {
  judgement["fit"].erase("cpu_seconds");
  return judgement;
}

nlohmann::json judged_apart(const std::string& path) {
  return without_time(nlohmann::json::parse(keenfall({"judge", path, "--json"}).out));
}

TEST(AReport, OfTheDemosTableIsWholeAndAsDocumented) {
  const std::string table = new_path("matting.csv");
  keenfall({"demo", "--quiet", "--table=" + table});
  const std::string out = new_path("matting.report.json");

  const Said said = keenfall({"tell", table, "--out=" + out});

  EXPECT_EQ(said.exit_code, 0) << said.err;
  EXPECT_THAT(said.out, HasSubstr("37 runs and every reading."));
  const auto report = nlohmann::json::parse(content_of(out));
  EXPECT_EQ(wire::testing::faults_against_schema(report, "report.schema.json"), "");
  EXPECT_EQ(report["from"], nlohmann::json({"matting.csv"}));
  ASSERT_EQ(report["judgements"].size(), 1U);
  const auto& told = report["judgements"][0];
  const auto judgement = judged_apart(table);
  EXPECT_EQ(told["judgement"]["comparisons"], judgement["comparisons"]);
  ASSERT_EQ(told["runs"].size(), judgement["runs"].size());
  for (std::size_t r = 0; r < told["runs"].size(); ++r) {
    const auto& run = report["trial"]["runs"][told["runs"][r]["run"].get<std::size_t>()];
    EXPECT_EQ(run["name"], judgement["runs"][r]["name"]);
    EXPECT_EQ(told["runs"][r]["checkpoints"].front()["cuts"], 0);
  }
}

TEST(AReport, OfANotebookCountsAsALookAndItsTableDoesNot) {
  const std::string table = a_table("told.csv", readings_of(2));
  const std::string notebook = new_path("told.keen");
  keenfall({"new", notebook});
  keenfall({"take", notebook, table});
  keenfall({"strike", notebook, "--run=2", "--blade=A", "--cuts=40", "--reason=slipped"});
  const std::string csv = new_path("told again.csv");

  const Said as_table = keenfall({"tell", notebook, "--out=" + csv});
  const Said as_json = keenfall({"tell", notebook, "--format=json"});

  EXPECT_EQ(as_table.exit_code, 0) << as_table.err;
  EXPECT_EQ(as_json.exit_code, 0) << as_json.err;
  EXPECT_THAT(as_json.err, HasSubstr("Counted as look 1 at this trial"));
  const auto report = nlohmann::json::parse(as_json.out);
  EXPECT_EQ(wire::testing::faults_against_schema(report, "report.schema.json"), "");
  EXPECT_EQ(report["title"], "told");
  // The table is taken back to the numbers of the report.
  const auto told = without_time(report["judgements"][0]["judgement"]);
  const auto again = judged_apart(csv);
  for (const char* key : {"arms", "comparisons", "runs", "fit"}) EXPECT_EQ(again[key], told[key]);
  EXPECT_EQ(told["runs"][1]["readings_struck"], 1);
}

TEST(AReport, OfSeveralKindsHasTheirJudgementsInTheOrderOfJudge) {
  const std::string table = KEENFALL_SOURCE_DIR "/examples/edge-lives/read_and_tested.csv";

  const Said said = keenfall({"tell", table, "--format=json"});

  EXPECT_EQ(said.exit_code, 0) << said.err;
  const auto report = nlohmann::json::parse(said.out);
  EXPECT_EQ(wire::testing::faults_against_schema(report, "report.schema.json"), "");
  ASSERT_EQ(report["judgements"].size(), 3U);
  const auto& lives = report["judgements"][1];
  EXPECT_EQ(lives["judgement"]["kind"]["name"], "edge_life");
  const auto& run = report["trial"]["runs"][lives["runs"][0]["run"].get<std::size_t>()];
  EXPECT_EQ(run["edge_lives"][0]["lasted_cuts"], lives["judgement"]["runs"][0]["lasted_cuts"]);
  EXPECT_EQ(report["judgements"][2]["judgement"]["kind"]["name"], "read_and_tested");
  EXPECT_THAT(report["judgements"][2]["runs"][0]["checkpoints"], IsEmpty());
}

TEST(AReport, IsNotWrittenOverAnythingNorOfATableThatIsRefused) {
  const std::string table = a_table("kept.csv", readings_of(2));
  const std::string wrong = a_table("wrong.csv", "blade,medium,run,cuts,reading\nA,felt,1,x,100\n");
  const std::string out = new_path("never.json");

  const Said over_itself = keenfall({"tell", table, "--out=" + table});
  const Said of_wrong = keenfall({"tell", wrong, "--out=" + out});

  EXPECT_EQ(over_itself.exit_code, 4);
  EXPECT_THAT(over_itself.err, HasSubstr("it exists already, and is left as it is"));
  EXPECT_EQ(content_of(table), readings_of(2));
  EXPECT_EQ(of_wrong.exit_code, 3);
  EXPECT_THAT(of_wrong.err, AllOf(HasSubstr("column cuts"), HasSubstr("nothing was told")));
  EXPECT_FALSE(std::filesystem::exists(out));
}

// What stands between two texts in a page, without its escapes.
std::string between(const std::string& page, const std::string& before, const std::string& after) {
  const std::size_t found = page.find(before);
  if (found == std::string::npos) return {};
  const std::size_t begin = found + before.size();
  std::string text = page.substr(begin, page.find(after, begin) - begin);
  for (const auto& [escape, character] :
       {std::pair{"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}, {"&amp;", "&"}}) {
    for (auto at = text.find(escape); at != std::string::npos; at = text.find(escape, at + 1)) {
      text.replace(at, std::string_view(escape).size(), character);
    }
  }
  return text;
}

// "a%2Cb" is "a,b" (RFC 3986, section 2.1).
std::string unescaped_address(const std::string& address) {
  std::string text;
  for (std::size_t i = 0; i < address.size(); ++i) {
    if (address[i] != '%') {
      text += address[i];
      continue;
    }
    text += static_cast<char>(std::stoi(address.substr(i + 1, 2), nullptr, 16));
    i += 2;
  }
  return text;
}

struct Told {
  const char* name;
  std::vector<std::string> words;  // of keenfall, without where the page goes
};

const std::string kExamples = KEENFALL_SOURCE_DIR "/examples/";

// Tables with options of every sort, with foreign headers, own kinds of reading, edge lives.
std::vector<Told> told_trials() {
  return {
      {"demo", {"demo", "--quiet", "--worth-it=1.2", "--looks=3,6", "--claim=blades"}},
      {"demo in newtons", {"demo", "--quiet", "--told-in=N,in", "--stop-reading=400gf"}},
      {"milling",
       {"tell",
        kExamples + "milling/milling_flank_wear.csv",
        "--column=blade=condition",
        "--column=medium=material",
        "--column=run=insert_set",
        "--column=cuts=time_min",
        "--column=reading=vb_mm",
        "--define-kind=flank_wear:mm:lower:zero=below:0.01",
        "--kind=flank_wear",
        "--stop-reading=0.3 mm",
        "--seed=5"}},
      {"lives", {"tell", kExamples + "edge-lives/edge_lives.csv", "--worth-it=2"}},
      {"read and tested", {"tell", kExamples + "edge-lives/read_and_tested.csv", "--model=plain"}}};
}

class APageJudgedAgain : public ::testing::TestWithParam<Told> {};

// The page's own command, in a shell, on the table that the page holds.
TEST_P(APageJudgedAgain, SaysTheSame) {
  const std::filesystem::path folder = scratch(std::string("again ") + GetParam().name);
  std::filesystem::create_directory(folder);
  std::vector<std::string> words = GetParam().words;
  words.push_back("--out=" + new_path(std::string("again ") + GetParam().name + "/page.html"));
  ASSERT_EQ(keenfall(words).exit_code, 0);
  const std::string page = content_of((folder / "page.html").string());
  std::ofstream(folder / "readings.csv")
      << unescaped_address(between(page, "href=\"data:text/csv;charset=utf-8,", "\""));
  const std::string command = between(page, "<code>keenfall judge ", "</code>");

  const Said said = run(
      {.program = "/bin/sh",
       .words = {"-c",
                 "cd \"$FOLDER\" && exec \"$KEENFALL\" judge " + command + " --json=again.json"},
       .environment = {
           {"LC_ALL", "C.UTF-8"}, {"FOLDER", folder.string()}, {"KEENFALL", KEENFALL_PROGRAM}}});

  ASSERT_EQ(said.exit_code, 0) << command << "\n" << said.err;
  const auto told = nlohmann::json::parse(
      between(page, "<script type=\"application/json\" id=\"report-data\">", "</script>"));
  const auto answer = nlohmann::json::parse(content_of((folder / "again.json").string()));
  auto again = nlohmann::json::array({answer});
  for (const auto& other : answer["also_judged"]) again.push_back(other);
  ASSERT_EQ(again.size(), told["judgements"].size());
  for (std::size_t i = 0; i < again.size(); ++i) {
    const auto before = without_time(told["judgements"][i]["judgement"]);
    const auto after = without_time(again[i]);
    for (const char* key : {"kind", "counted", "worth_it_margin", "arms", "comparisons", "fit"}) {
      EXPECT_EQ(before.value(key, nlohmann::json()), after.value(key, nlohmann::json())) << key;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(OfTrials,
                         APageJudgedAgain,
                         ::testing::ValuesIn(told_trials()),
                         [](const auto& trial) {
                           std::string name = trial.param.name;
                           std::erase(name, ' ');
                           return name;
                         });

}  // namespace
}  // namespace keenfall::journeys
