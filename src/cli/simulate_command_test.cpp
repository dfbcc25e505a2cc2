#include "cli/simulate_command.h"

#include "cli/widest_line.h"
#include "exchange/long_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include <unistd.h>

namespace keenfall::cli {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::StartsWith;
using ::testing::UnorderedElementsAre;

// A short trial, so that tests are quick.
const std::vector<std::string> kShort = {
    "--medium=uplifted sisal matting", "--runs=2", "--cuts=15", "--edge-length=2", "--threads=1"};

std::vector<std::string> steels_of(const trials::Trial& trial) {
  std::vector<std::string> steels;
  for (const trials::Blade& blade : trial.blades) steels.push_back(blade.steel);
  return steels;
}

class SimulateCommand : public ::testing::Test {
 protected:
  SimulateCommand()
      : folder_(std::filesystem::temp_directory_path() /
                ("keenfall-simulate-" + std::to_string(getpid()))) {
    std::filesystem::create_directory(folder_);
    around_.is_stop_asked_for = [] { return false; };
    around_.seconds_now = [] { return 0.0; };
    around_.utc_now = [] { return "2026-11-26T12:00:00Z"; };
    around_.program_version = "0.1.0";
    around_.use_cases.notebook.trials = [](const std::string&) {
      return base::Result<std::vector<notebook::KeptTrial>>(
          std::vector<notebook::KeptTrial>{{.name = "spring"}});
    };
  }
  ~SimulateCommand() override { std::filesystem::remove_all(folder_); }

  Outcome simulated(std::vector<std::string> words) {
    words.insert(words.end(), kShort.begin(), kShort.end());
    return simulate_command(words, around_);
  }

  std::string in_folder(const std::string& name) const { return (folder_ / name).string(); }

  static std::string content(const std::string& path) {
    std::ifstream file(path);
    return {std::istreambuf_iterator<char>(file), {}};
  }

  std::filesystem::path folder_;
  Surroundings around_;
};

TEST_F(SimulateCommand, GivesATableAloneThatIsTakenWithoutComplaint) {
  const Outcome outcome = simulated({});

  EXPECT_EQ(outcome.code, ExitCode::answered);
  const auto trial = exchange::take_table_text(outcome.out, "simulated.csv", {});
  ASSERT_TRUE(trial) << in_words(trial.error().front());
  EXPECT_EQ(trial->runs.size(), 4U);
  EXPECT_THAT(steels_of(*trial), UnorderedElementsAre("X153CrMoV12", "C75S"));
  EXPECT_EQ(trial->runs[0].arm.edge.bevel_angle, trials::PerSideAngle{20});
  EXPECT_EQ(trial->runs[0].arm.edge.finish, "fine, teeth 0.6 µm");
  EXPECT_THAT(outcome.err, HasSubstr("plausible parameters, not validated"));
}

TEST_F(SimulateCommand, RefusesThreadsAndAnglesOutOfTheirRange) {
  for (const char* threads : {"-5", "0", "257"}) {
    const Outcome outcome =
        simulate_command(std::vector<std::string>{std::string("--threads=") + threads}, around_);
    EXPECT_EQ(outcome.code, ExitCode::wrong_usage) << threads;
    EXPECT_THAT(outcome.err, HasSubstr("--threads must be a whole number of threads")) << threads;
  }
  const Outcome flat = simulated({"--angle=1e-310"});
  EXPECT_NE(flat.code, ExitCode::answered);
  EXPECT_THAT(flat.err, HasSubstr("from 1 to 45 degrees"));
  EXPECT_THAT(flat.out, IsEmpty());
}

TEST_F(SimulateCommand, MarksEveryRunAsSimulated) {
  const auto trial = exchange::take_table_text(simulated({}).out, "simulated.csv", {}).value();

  for (const trials::Run& run : trial.runs) {
    EXPECT_THAT(run.notes, ::testing::Contains("simulated: no edge was cut"));
  }
}

TEST_F(SimulateCommand, GivesTheSameTableForTheSameSeed) {
  EXPECT_EQ(simulated({"--seed=7"}).out, simulated({"--seed=7"}).out);
  EXPECT_NE(simulated({"--seed=7"}).out, simulated({"--seed=8"}).out);
}

TEST_F(SimulateCommand, WritesATableAndSaysHowToJudgeIt) {
  const std::string path = in_folder("made.csv");

  const Outcome outcome = simulated({"--out=" + path});

  EXPECT_EQ(content(path), simulated({}).out);
  EXPECT_THAT(outcome.out, HasSubstr("keenfall judge"));
  EXPECT_EQ(simulated({"--out=" + path}).code, ExitCode::file_trouble);
}

TEST_F(SimulateCommand, TellsTheTruthOnlyWhereItIsAskedFor) {
  const std::string path = in_folder("made.csv");

  const Outcome without = simulated({"--out=" + path});
  const Outcome with = simulated({"--truth"});

  EXPECT_THAT(without.out, Not(HasSubstr("truth")));
  EXPECT_THAT(with.out, HasSubstr("cuts to half keenness"));
  EXPECT_THAT(with.out, HasSubstr("On uplifted sisal matting, "));
  EXPECT_THAT(with.out, HasSubstr(" times as long as "));
  EXPECT_LE(widest_line(with.out), 80);
}

TEST_F(SimulateCommand, GivesJsonAlone) {
  const auto document = nlohmann::json::parse(simulated({"--json"}).out);

  EXPECT_EQ(document["format"], "keenfall-simulation");
  EXPECT_EQ(document["trial"]["runs"].size(), 4U);
}

// A table of one's own, written from what the document says was used.
std::string table_from(const nlohmann::json& things) {
  std::string text = "name";
  for (const auto& constant : things[0]["constants"]) {
    text += "," + constant["field"].get<std::string>();
  }
  for (const auto& thing : things) {
    text += "\n\"" + thing["name"].get<std::string>() + "\"";
    for (const auto& constant : thing["constants"]) text += "," + constant["usual"].dump();
  }
  return text + "\n";
}

// With nothing but the document at hand, the files it was made from being gone.
TEST_F(SimulateCommand, GivesJsonFromWhichATrialOfOnesOwnMediumIsRepeated) {
  std::ofstream(in_folder("media.csv"))
      << "name,abrasive_hv,groove_width_um,reference_wear_rate_mm3_per_newton_metre,"
         "hits_per_mm_cut\nfelt,613.7,0.51,1.13e-6,0.37\n";
  std::ofstream(in_folder("finishes.csv")) << "name,land_width_um\nhoned,0.31\n";
  const std::vector<std::string> edge = {"--medium=felt", "--finish=honed", "--steel=75Ni8"};
  const auto simulated_with = [&](std::vector<std::string> words) {
    words.insert(words.end(), edge.begin(), edge.end());
    words.insert(words.end(), kShort.begin() + 1, kShort.end());
    words.push_back("--json");
    const Outcome outcome = simulate_command(words, around_);
    EXPECT_EQ(outcome.code, ExitCode::answered) << outcome.err;
    return nlohmann::json::parse(outcome.out);
  };
  const auto first = simulated_with(
      {"--media=" + in_folder("media.csv"), "--finishes=" + in_folder("finishes.csv")});
  const auto& used = first["constants_used"];
  std::ofstream(in_folder("steels2.csv")) << table_from(used["steels"]);
  std::ofstream(in_folder("media2.csv")) << table_from(used["media"]);
  std::ofstream(in_folder("finishes2.csv")) << table_from(used["finishes"]);

  const auto again = simulated_with({"--steels=" + in_folder("steels2.csv"),
                                     "--media=" + in_folder("media2.csv"),
                                     "--finishes=" + in_folder("finishes2.csv")});

  EXPECT_EQ(again["trial"], first["trial"]);
  EXPECT_EQ(again["truth"], first["truth"]);
  EXPECT_EQ(used["media"][0]["constants"][0]["mark"], "declared");
}

TEST_F(SimulateCommand, PutsTheTrialIntoANotebookUnderItsName) {
  workbench::MadeTrial made;
  around_.use_cases.notebook.take_made = [&](workbench::MadeTrial given, const workbench::Hand&) {
    made = std::move(given);
    return base::ResultOrProblems<workbench::TakenIn>(
        workbench::TakenIn{.trial = made.trial.name, .taken = {}, .remarks = {}, .left_out = {}});
  };

  const Outcome outcome = simulated({"--notebook=bench.keen", "--trial=tried out", "--seed=7"});

  EXPECT_EQ(outcome.code, ExitCode::answered);
  EXPECT_EQ(made.notebook, "bench.keen");
  EXPECT_EQ(made.trial.name, "tried out");
  EXPECT_EQ(made.made_from, "simulated, seed 7");
  EXPECT_THAT(outcome.out, HasSubstr("bench.keen --trial='tried out'"));
}

// A line break within the quotes would name another trial.
TEST_F(SimulateCommand, SaysHowToJudgeItOnOneLineThatCanBePasted) {
  around_.look.width = 60;
  around_.use_cases.notebook.take_made = [](workbench::MadeTrial given, const workbench::Hand&) {
    return base::ResultOrProblems<workbench::TakenIn>(
        workbench::TakenIn{.trial = given.trial.name, .taken = {}, .remarks = {}, .left_out = {}});
  };

  const Outcome outcome = simulated({"--notebook=my bench.keen", "--seed=7", "--steel=c75s"});

  EXPECT_THAT(outcome.out,
              HasSubstr("To judge it:\n"
                        "  keenfall judge 'my bench.keen' --trial='simulated C75S; uplifted sisal "
                        "matting; 20 deg fine; seed 7'\n"));
}

// Nothing is cut for a trial that has no place to go.
TEST_F(SimulateCommand, RefusesANameThatTheNotebookHasBeforeItCuts) {
  around_.is_stop_asked_for = [] {
    ADD_FAILURE() << "edges were cut";
    return true;
  };

  const Outcome outcome = simulated({"--notebook=bench.keen", "--trial=spring"});

  EXPECT_EQ(outcome.code, ExitCode::table_refused);
  EXPECT_THAT(outcome.err, HasSubstr("has a trial “spring” already"));
  EXPECT_THAT(outcome.err, HasSubstr("nothing was simulated"));
}

TEST_F(SimulateCommand, NamesATrialAfterWhatItIs) {
  std::vector<std::string> names;
  around_.use_cases.notebook.take_made = [&](workbench::MadeTrial given, const workbench::Hand&) {
    names.push_back(given.trial.name);
    return base::ResultOrProblems<workbench::TakenIn>(
        workbench::TakenIn{.trial = given.trial.name, .taken = {}, .remarks = {}, .left_out = {}});
  };

  (void)simulated({"--notebook=bench.keen", "--seed=7", "--steel=c75s"});
  (void)simulated({"--notebook=bench.keen", "--angle=15", "--angle=20"});

  EXPECT_EQ(names.at(0), "simulated C75S; uplifted sisal matting; 20 deg fine; seed 7");
  EXPECT_EQ(
      names.at(1),
      "simulated X153CrMoV12, C75S; uplifted sisal matting; 15 deg fine, 20 deg fine; seed 1");
}

// The table's own limit: what it would refuse line by line is refused once, before it is cut.
TEST_F(SimulateCommand, RefusesAnAngleThatNoTableTakes) {
  const Outcome at_the_limit = simulated({"--angle=45"});
  const Outcome beyond = simulated({"--angle=45.1"});

  EXPECT_TRUE(exchange::take_table_text(at_the_limit.out, "simulated.csv", {}));
  EXPECT_EQ(beyond.code, ExitCode::wrong_usage);
  EXPECT_THAT(beyond.err, HasSubstr("the apex angle per side is out of its range, at 45.1"));
  EXPECT_THAT(beyond.out, IsEmpty());
}

TEST_F(SimulateCommand, NamesWrongWordsAndNumbersOutOfRangeTogether) {
  const Outcome outcome = simulate_command(std::vector<std::string>{"--steel=wood",
                                                                    "--runs=0",
                                                                    "--angle=89",
                                                                    "--stop-level=1",
                                                                    "--scatter=run=9",
                                                                    "--repeats=few"},
                                           around_);

  EXPECT_EQ(outcome.code, ExitCode::wrong_usage);
  for (const char* said : {"“wood”",
                           "runs of each arm is out of its range, at 0",
                           "apex angle per side is out of its range, at 89",
                           "stop level is out of its range, at 1",
                           "scatter of runs is out of its range, at 9",
                           "\"few\""}) {
    EXPECT_THAT(outcome.err, HasSubstr(said));
  }
}

TEST_F(SimulateCommand, CutsAllSteelsOfAFileWhereNoneIsNamed) {
  const std::string path = in_folder("steels.csv");
  std::ofstream(path) << "name,hardness_hrc,matrix_hv,carbide_volume_fraction,"
                         "toughness_mpa_sqrt_m\nours,58,640,0.02,30\ntheirs,60,660,0.05,25\n";

  const auto trial =
      exchange::take_table_text(simulated({"--steels=" + path}).out, "simulated.csv", {}).value();

  EXPECT_THAT(steels_of(trial), UnorderedElementsAre("ours", "theirs"));
}

TEST_F(SimulateCommand, SaysBesideTheTruthHowToGetItsRange) {
  const std::string text = simulated({"--truth"}).out;

  EXPECT_THAT(text, HasSubstr("with the usual constants alone"));
  EXPECT_THAT(text, HasSubstr("keenfall predict"));
}

TEST_F(SimulateCommand, CutsMixedWorkAndCrossesEdges) {
  const Outcome outcome = simulated({"--schedule=9 new sisal matting, pause 8 h wet",
                                     "--angle=15",
                                     "--angle=20",
                                     "--finish=coarse"});

  const auto trial = exchange::take_table_text(outcome.out, "simulated.csv", {}).value();
  EXPECT_EQ(trials::arms_of(trial).size(), 8U);
  EXPECT_THAT(outcome.out, HasSubstr("\"9 new sisal matting, pause 8 h wet\""));
}

TEST_F(SimulateCommand, RefusesEveryWrongOptionAtOnce) {
  const Outcome outcome = simulate_command(std::vector<std::string>{"--steel=wood",
                                                                    "--medium=rope",
                                                                    "--schedule=many cuts",
                                                                    "--angle=steep",
                                                                    "--finish=rough",
                                                                    "--runs=few",
                                                                    "--scatter=weather=1",
                                                                    "--reading=bite",
                                                                    "--seed=-1",
                                                                    "--cuts=1.5"},
                                           around_);

  EXPECT_EQ(outcome.code, ExitCode::wrong_usage);
  EXPECT_THAT(outcome.out, IsEmpty());
  for (const char* said : {"“wood”",
                           "“rope”",
                           "“many cuts”",
                           "\"steep\"",
                           "“rough”",
                           "\"few\"",
                           "\"weather=1\"",
                           "\"bite\"",
                           "\"-1\"",
                           "\"1.5\""}) {
    EXPECT_THAT(outcome.err, HasSubstr(said));
  }
}

TEST_F(SimulateCommand, RefusesNumbersThatTheSimulatorCannotUse) {
  const Outcome outcome = simulate_command(std::vector<std::string>{"--runs=0"}, around_);

  EXPECT_EQ(outcome.code, ExitCode::wrong_usage);
  EXPECT_THAT(outcome.err, HasSubstr("the number of runs of each arm is out of its range"));
}

TEST_F(SimulateCommand, RefusesATableOfConstantsByLineAndColumn) {
  const std::string path = in_folder("finishes.csv");
  std::ofstream(path) << "name,land_width_um\nhone,thin\n";

  const Outcome outcome = simulated({"--finishes=" + path});

  EXPECT_EQ(outcome.code, ExitCode::table_refused);
  EXPECT_THAT(outcome.err, HasSubstr("line 2, column land_width_um"));
  EXPECT_THAT(outcome.err, HasSubstr("nothing was simulated"));
}

TEST_F(SimulateCommand, StopsWhenAsked) {
  around_.is_stop_asked_for = [] { return true; };

  const Outcome outcome = simulated({});

  EXPECT_EQ(outcome.code, ExitCode::stopped);
  EXPECT_THAT(outcome.out, IsEmpty());
}

}  // namespace
}  // namespace keenfall::cli
