// A trial with a plan, through the jobs of the commands: before it is cut, and after.
#include "notebook/check.h"
#include "notebook/content_in_words_test.h"
#include "notebook/kit.h"
#include "notebook/merge.h"
#include "notebook/plans.h"
#include "workbench/notebook_changes.h"
#include "workbench/notebook_export.h"
#include "workbench/notebook_package.h"
#include "workbench/notebook_pages.h"
#include "workbench/report.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include <unistd.h>

namespace keenfall::workbench {
namespace {

// Gone with everything in it when it goes out of scope.
class OwnFolder {
 public:
  OwnFolder() {
    std::filesystem::remove_all(path_);
    std::filesystem::create_directory(path_);
  }
  ~OwnFolder() { std::filesystem::remove_all(path_); }
  OwnFolder(const OwnFolder&) = delete;
  OwnFolder& operator=(const OwnFolder&) = delete;
  OwnFolder(OwnFolder&&) = delete;
  OwnFolder& operator=(OwnFolder&&) = delete;

  [[nodiscard]] std::string file(const std::string& name) const { return path_ / name; }

 private:
  std::filesystem::path path_ =
      std::filesystem::temp_directory_path() / ("keenfall_planned_" + std::to_string(getpid()));
};

const JudgedBy kBy{.hand = {.who = "R.",
                            .machine_words = "bench-2, process 4711",
                            .at_utc = "2026-11-27T12:00:00Z"},
                   .program_version = "0.1.0"};

class APlannedTrial : public ::testing::Test {
 protected:
  APlannedTrial() {
    EXPECT_TRUE(new_notebook(path_, "keenfall test", kBy.hand));
    auto opened = *opened_to_write(path_, kBy.hand);
    for (const char* blade : {"A", "B"}) {
      EXPECT_TRUE(add_to_kit(opened, trials::Blade{.name = blade}, authorship_of(kBy.hand)));
    }
    notebook::Asked asked{.claims = {{.words = "B outlasts A", .worth_it_margin = 1.25}}};
    asked.plan.cuttings = {{.medium = {.name = "felt"}, .checkpoint_cuts = {0, 10, 20, 30}}};
    asked.plan.arms = {{.blade = "A"}, {.blade = "B"}};
    asked.plan.reading.repeats = 1;
    asked.plan.runs_each = 1;
    EXPECT_TRUE(make_trial(opened, "felt", asked, authorship_of(kBy.hand)));
    EXPECT_TRUE(seal(opened, "felt", authorship_of(kBy.hand)));
  }

  void cut_it() const {
    const std::string table = scratch_.file("cut.csv");
    std::ofstream file(table);
    file << "blade,medium,run,cuts,reading\n";
    const int readings[] = {101, 142, 187, 236};
    for (int i = 0; i < 4; ++i) {
      file << "A,felt,1," << 10 * i << "," << readings[i] << "\n";
      file << "B,felt,1," << 20 * i << "," << readings[i] << "\n";
    }
    file.close();
    const auto taken = take_into({.notebook = path_, .tables = {table}, .trial = "felt"}, kBy.hand);
    ASSERT_TRUE(taken) << taken.error().front().sentence;
  }
  [[nodiscard]] auto judged() const {
    const std::vector<std::string> paths = {path_};
    return judge_files(paths, {}, kBy, base::one_thread(), base::unwatched());
  }

  OwnFolder scratch_;
  std::string path_ = scratch_.file("bench.keen");
};

TEST_F(APlannedTrial, ThatWasNotCutIsNeitherJudgedNorToldNorMadeATable) {
  const std::string sentence = "The trial felt has no runs yet: it is planned and was not cut.";
  const std::vector<std::string> paths = {path_};

  const auto answer = judged();
  const auto report = report_of_files(paths, {}, kBy, base::one_thread(), base::unwatched());
  const auto table = trial_in_files(paths, {});
  const auto exported = export_notebook({.notebook = path_, .to = scratch_.file("felt.csv")});
  const auto struck = strike_in(path_, {.run = "1", .cuts = 10, .reason = "slipped"}, kBy.hand);

  ASSERT_FALSE(answer || report || table || exported || struck);
  EXPECT_EQ(answer.error().front().sentence, sentence);
  EXPECT_EQ(answer.error().front().accepted,
            "its readings first: keenfall take " + path_ + " TABLE --trial=felt");
  EXPECT_EQ(report.error().front().sentence, sentence);
  EXPECT_EQ(table.error().front().sentence, sentence);
  EXPECT_EQ(exported.error().sentence, sentence);
  EXPECT_FALSE(std::filesystem::exists(scratch_.file("felt.csv")));
  EXPECT_EQ(struck.error().sentence, "The trial felt has no run called \"1\".");
  EXPECT_TRUE(trial_in(path_, "felt")->looks.empty());
}

TEST_F(APlannedTrial, IsJudgedByItsClaimAndSaysWhatWasDoneOtherwise) {
  cut_it();

  const auto files = judged();

  ASSERT_TRUE(files);
  EXPECT_EQ(files->judgements.front().worth_it_margin, 1.25);
  EXPECT_EQ(files->options.worth_it_margin, 1.25);
  EXPECT_EQ(trial_in(path_, "felt")->looks[0].judgement.question, "--worth-it=1.25");
  ASSERT_EQ(files->plan_words.size(), 4U);
  EXPECT_EQ(files->plan_words[3],
            "1 of 2 runs was read at other cuts than planned: run 1 of B on felt.");
  EXPECT_NE(files->kept_words.find("Claimed: \"B outlasts A\""), std::string::npos);
}

TEST_F(APlannedTrial, IsToldWithItsPlan) {
  cut_it();
  const std::vector<std::string> paths = {path_};

  const auto made = report_of_files(paths, {}, kBy, base::one_thread(), base::unwatched());

  ASSERT_TRUE(made);
  ASSERT_FALSE(made->report.planned.empty());
  EXPECT_EQ(made->report.planned[0], "Claimed: \"B outlasts A\"; worth it from 1.25 times.");
  EXPECT_NE(made->report.judged_again_by.find("--worth-it=1.25"), std::string::npos);
}

TEST_F(APlannedTrial, GoesThroughADataPackageWithTheKit) {
  auto opened = *opened_to_write(path_, kBy.hand);
  const std::vector<notebook::KitThing> things = {
      trials::NamedEdge{.name = "fine", .edge = {.bevel_angle = trials::PerSideAngle{17}}},
      trials::MediumLot{.medium = {.name = "felt"}, .name = "roll 7", .length_m = 30},
      trials::Thread{.kind = "thread_push", .name = "0.25 mm polyester"},
      trials::ReadingKind{.name = "flank_wear", .words = "flank wear", .unit = "mm"},
      trials::KitStone{.name = "coarse", .abrasive = "diamond", .grit = "45 µm"}};
  for (const notebook::KitThing& thing : things) {
    ASSERT_TRUE(add_to_kit(opened, thing, authorship_of(kBy.hand)));
  }
  notebook::Asked asked{.claims = {{.words = "A lasts"}}};
  asked.plan.cuttings = {{.medium = {.name = "rope"}, .checkpoint_cuts = {0, 2.5}}};
  asked.plan.arms = {{.blade = "B"}};
  asked.plan.reading.stations = {"heel", ""};
  asked.plan.start_gate = trials::StartGate{.target_reading = 104};
  asked.plan.looks = {2, 4};
  asked.plan.house_blade = "A";
  asked.plan.runs = {{.arm = 0, .specimen = "1"}};
  ASSERT_TRUE(make_trial(opened, "both", asked, authorship_of(kBy.hand)));
  ASSERT_FALSE(write_package(opened, scratch_.file("package"), "2026-11-27T12:00:00Z"));
  ASSERT_TRUE(new_notebook(scratch_.file("back.keen"), "keenfall test", kBy.hand));
  auto back = *opened_to_write(scratch_.file("back.keen"), kBy.hand);

  const auto package = read_package(scratch_.file("package"));

  ASSERT_TRUE(package) << package.error().front().sentence;
  const auto merged =
      merge(back, package->content->notebook(), "take package", {}, authorship_of(kBy.hand));
  ASSERT_TRUE(merged) << merged.error().front().sentence;
  EXPECT_EQ(notebook::testing::content_in_words(back), notebook::testing::content_in_words(opened));
  EXPECT_EQ(kept_plan(back, "felt"), kept_plan(opened, "felt"));
  EXPECT_TRUE(check(back).empty());
}

TEST_F(APlannedTrial, WhoseRowsDoNotFitTogetherInAPackageIsRefused) {
  ASSERT_FALSE(write_package(*opened_to_read(path_), scratch_.file("package"), "2026-11-27"));
  const std::string file = scratch_.file("package/plan_arm.csv");
  std::ofstream(file, std::ios::app) << "1,7,1,,,,,0\r\n";
  const std::string descriptor = scratch_.file("package/datapackage.json");
  std::ifstream from(descriptor);
  std::string text(std::istreambuf_iterator<char>(from), {});
  for (const char* what : {"\"hash\"", "\"bytes\""}) {
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 2)) {
      text.replace(at + 1, 1, "x");
    }
  }
  std::ofstream(descriptor) << text;

  const auto package = read_package(scratch_.file("package"));

  ASSERT_FALSE(package);
  EXPECT_EQ(package.error().front().sentence,
            "The rows of this package do not fit together: the places in a list of plan_arm have a "
            "gap.");
}

}  // namespace
}  // namespace keenfall::workbench
