// What is exported or merged of a notebook while another writes to it: whole, as of one moment.
#include "workbench/notebook_export.h"
#include "workbench/notebook_merging.h"

#include "notebook/kept_trials.h"
#include "notebook/random_uid.h"
#include "workbench/notebook_changes.h"
#include "workbench/notebook_package.h"

#include <gtest/gtest.h>

#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace keenfall::workbench {
namespace {

const Hand kHand{
    .who = "R.", .machine_words = "bench-2, process 4711", .at_utc = "2026-11-26T12:00:00Z"};

// A trial of a hundred runs, each read ten times.
trials::Trial long_trial(const std::string& name) {
  trials::Trial trial{
      .name = name,
      .blades = {{.name = name}},
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  for (int i = 0; i < 100; ++i) {
    trials::Run run{.name = std::to_string(i), .arm = {.blade = name, .medium = {.name = "felt"}}};
    for (int cuts = 0; cuts < 10; ++cuts) {
      run.readings.push_back({.cuts = double(cuts), .reading = 100.0 + cuts});
    }
    trial.runs.push_back(run);
  }
  return trial;
}

bool takes(const std::string& path, const std::string& trial) {
  auto opened = opened_to_write(path, kHand);
  return opened && notebook::take(*opened, long_trial(trial), {}, authorship_of(kHand)).has_value();
}

// Each stands in a line of its own.
std::ptrdiff_t rows_in(const std::string& json, const std::string& table) {
  const auto begin = json.find("\"" + table + "\": [");
  EXPECT_NE(begin, std::string::npos) << table;
  const std::string rows = json.substr(begin, json.find("}]", begin) - begin);
  return std::ranges::count(rows, '\n');
}

// Below a header.
std::ptrdiff_t rows_of_csv(const std::string& path) {
  std::ifstream file(path);
  return std::count(std::istreambuf_iterator<char>(file), {}, '\n') - 1;
}

// Every second entry takes the second trial away again.
void expect_of_one_moment(std::ptrdiff_t entries,
                          std::ptrdiff_t trials,
                          std::ptrdiff_t runs,
                          std::ptrdiff_t readings) {
  EXPECT_EQ(trials, entries % 2 == 1 ? 1 : 2);
  EXPECT_EQ(runs, 100 * trials);
  EXPECT_EQ(readings, 1000 * trials);
}

class ANotebookBeingWritten : public ::testing::Test {
 protected:
  void SetUp() override {
    folder_ = std::filesystem::temp_directory_path() /
              ("keenfall_moment_" + std::to_string(getpid()) + "_" +
               ::testing::UnitTest::GetInstance()->current_test_info()->name());
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directory(folder_);
    path_ = folder_ / "bench.keen";
    ASSERT_TRUE(new_notebook(path_, "keenfall test", kHand));
    ASSERT_TRUE(takes(path_, "first"));
    writer_ = fork();
    if (writer_ == 0) take_and_undo_until_killed();
  }
  void TearDown() override {
    kill(writer_, SIGKILL);
    int status = 0;
    waitpid(writer_, &status, 0);
    EXPECT_TRUE(WIFSIGNALED(status)) << "the writer ended by itself";
    std::filesystem::remove_all(folder_);
  }

  [[noreturn]] void take_and_undo_until_killed() const {
    for (;;) {
      const bool is_done = takes(path_, "second") && undo_in(path_, std::nullopt, kHand);
      if (!is_done) _exit(1);
    }
  }

  [[nodiscard]] std::string exported_to(const std::string& name) const {
    const std::string to = folder_ / name;
    const auto exported = export_notebook(
        {.notebook = path_, .to = to, .program_version = "0.1.0", .at_utc = kHand.at_utc});
    EXPECT_TRUE(exported) << exported.error().sentence;
    return to;
  }

  static constexpr int kTimes = 15;
  std::filesystem::path folder_;
  std::string path_;
  pid_t writer_ = 0;
};

TEST_F(ANotebookBeingWritten, IsExportedAsAPackageThatCanBeTakenBack) {
  for (int time = 0; time < kTimes; ++time) {
    const std::string folder = exported_to(std::to_string(time));
    const auto package = read_package(folder);
    EXPECT_TRUE(package) << package.error().front().sentence;
    const auto rows = [&](const char* table) { return rows_of_csv(folder + "/" + table + ".csv"); };
    expect_of_one_moment(rows("journal"), rows("trial"), rows("run"), rows("reading"));
  }
}

TEST_F(ANotebookBeingWritten, IsExportedAsJsonWhoseTablesFitTogether) {
  for (int time = 0; time < kTimes; ++time) {
    std::ifstream file(exported_to(std::to_string(time) + ".json"));
    const std::string text((std::istreambuf_iterator<char>(file)), {});

    const auto rows = [&](const char* table) { return rows_in(text, table); };
    expect_of_one_moment(rows("journal"), rows("trial"), rows("run"), rows("reading"));
  }
}

TEST_F(ANotebookBeingWritten, IsMergedAsItWasChecked) {
  for (int time = 0; time < kTimes; ++time) {
    const std::string into = folder_ / (std::to_string(time) + ".keen");
    ASSERT_TRUE(new_notebook(into, "keenfall test", kHand));

    const auto merged = merge_into({.notebook = into, .other = path_}, kHand);

    EXPECT_TRUE(merged) << merged.error().front().sentence;
  }
}

}  // namespace
}  // namespace keenfall::workbench
