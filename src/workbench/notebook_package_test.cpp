// A notebook through a data package and back, and packages that are not as they should be.
#include "workbench/notebook_package.h"

#include "notebook/any_trial_test.h"
#include "notebook/check.h"
#include "notebook/content_in_words_test.h"
#include "notebook/kept_trials.h"
#include "notebook/looks.h"
#include "notebook/merge.h"
#include "notebook/random_uid.h"
#include "notebook/strike.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include <unistd.h>

namespace keenfall::workbench {
namespace {

using notebook::Notebook;
using notebook::testing::content_in_words;

std::filesystem::path scratch_folder() {
  const std::filesystem::path in_memory = "/dev/shm";
  const auto place =
      std::filesystem::is_directory(in_memory) ? in_memory : std::filesystem::temp_directory_path();
  auto folder = place / ("keenfall_package_" + std::to_string(getpid()));
  std::filesystem::remove_all(folder);
  std::filesystem::create_directory(folder);
  return folder;
}

Notebook new_notebook(const std::string& path) {
  return std::move(*Notebook::create(
      path, {.uid = notebook::random_uid(), .made_by = "test"}, {.words = "R.", .at_utc = "now"}));
}

notebook::Authorship by() {
  return {.client_id = notebook::random_uid(), .at_utc = "2026-11-26T12:00:00Z", .who = "R."};
}

RC_GTEST_PROP(ADataPackage, IsTakenBackByANewNotebookEqualInContent, ()) {
  const auto folder = scratch_folder();
  Notebook notebook = new_notebook(folder / "a.keen");
  for (const char* name : {"spring", "autumn"}) {
    RC_ASSERT(take(notebook, notebook::testing::any_trial(name), {}, by()).has_value());
    const std::string answer = R"({"said": ")" + *notebook::testing::any_words() + R"("})";
    RC_ASSERT(
        count_look(
            notebook, name, {.inputs = {.sha256 = std::string(64, 'a')}, .answer = answer}, by())
            .has_value());
  }
  RC_ASSERT(!write_package(notebook, folder / "package", "2026-11-26T12:00:00Z").has_value());
  Notebook back = new_notebook(folder / "b.keen");

  const auto package = read_package(folder / "package");
  RC_ASSERT(package.has_value());
  RC_ASSERT(merge(back, package->content->notebook(), "take package", {}, by()).has_value());

  RC_ASSERT(content_in_words(back) == content_in_words(notebook));
  RC_ASSERT(check(back).empty());
}

class APackage : public ::testing::Test {
 protected:
  void SetUp() override {
    Notebook notebook = new_notebook(folder_ / "a.keen");
    trials::Trial trial{
        .name = "spring",
        .blades = {{.name = "A", .steel = "C75S"}},
        .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
    trials::Run run{.name = "1", .arm = {.blade = "A", .medium = {.name = "felt"}}};
    run.readings = {{.cuts = 0, .reading = 104}, {.cuts = 10, .reading = 151.5}};
    trial.runs = {run};
    ASSERT_TRUE(take(notebook, trial, {}, by()));
    ASSERT_FALSE(write_package(notebook, package_, "2026-11-26T12:00:00Z"));
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  [[nodiscard]] std::string text(const std::string& name) const {
    std::ifstream file(package_ / name);
    return {std::istreambuf_iterator<char>(file), {}};
  }
  // In a file of the package, and of the descriptor everything that would notice it.
  void replace(const std::string& name, const std::string& from, const std::string& to) const {
    std::string changed = text(name);
    const auto at = changed.find(from);
    ASSERT_NE(at, std::string::npos) << changed;
    changed.replace(at, from.size(), to);
    std::ofstream(package_ / name) << changed;
  }
  void forget_hashes() const {
    std::string descriptor = text("datapackage.json");
    for (auto at = descriptor.find("\"hash\""); at != std::string::npos;
         at = descriptor.find("\"hash\"")) {
      descriptor.replace(at, 6, "\"note\"");
    }
    std::ofstream(package_ / "datapackage.json") << descriptor;
  }
  [[nodiscard]] std::vector<base::Problem> problems() const {
    const auto read = read_package(package_);
    return read ? std::vector<base::Problem>() : read.error();
  }

  std::filesystem::path folder_ = scratch_folder();
  std::filesystem::path package_ = folder_ / "package";
};

TEST_F(APackage, IsKnownByItsDescriptor) {
  EXPECT_TRUE(is_package(package_));
  EXPECT_TRUE(is_package(package_ / "datapackage.json"));
  EXPECT_FALSE(is_package(folder_));
  EXPECT_FALSE(is_package(folder_ / "a.keen"));
}

TEST_F(APackage, IsNotWrittenOverAnything) {
  const Notebook notebook = std::move(*Notebook::open_to_read(folder_ / "a.keen"));

  const auto problem = write_package(notebook, package_, "2026-11-26T12:00:00Z");

  ASSERT_TRUE(problem);
  EXPECT_NE(problem->sentence.find("it was left as it is"), std::string::npos);
  EXPECT_TRUE(problems().empty());
}

TEST_F(APackage, LeavesAFolderOfAnyOtherNameAlone) {
  const Notebook notebook = std::move(*Notebook::open_to_read(folder_ / "a.keen"));
  std::filesystem::create_directory(folder_ / "out.unfinished");
  std::ofstream(folder_ / "out.unfinished" / "mine") << "precious";

  ASSERT_FALSE(write_package(notebook, folder_ / "out", "2026-11-26T12:00:00Z"));

  EXPECT_TRUE(read_package(folder_ / "out"));
  EXPECT_TRUE(std::filesystem::exists(folder_ / "out.unfinished" / "mine"));
  for (const auto& entry : std::filesystem::directory_iterator(folder_)) {
    EXPECT_NE(entry.path().filename().string().substr(0, 10), "unfinished");
  }
}

TEST_F(APackage, MayBeNamedWithASlashBehind) {
  const Notebook notebook = std::move(*Notebook::open_to_read(folder_ / "a.keen"));

  ASSERT_FALSE(write_package(notebook, folder_ / "out/", "2026-11-26T12:00:00Z"));

  EXPECT_TRUE(read_package(folder_ / "out/"));
  EXPECT_EQ(std::filesystem::status(folder_ / "out").permissions(),
            std::filesystem::status(folder_).permissions());  // those of any new folder
}

TEST_F(APackage, SaysWhereItsNameIsTooLong) {
  const Notebook notebook = std::move(*Notebook::open_to_read(folder_ / "a.keen"));
  const std::string longest = folder_ / std::string(255, 'x');  // NAME_MAX of Linux

  EXPECT_FALSE(write_package(notebook, longest, "2026-11-26T12:00:00Z"));
  const auto problem = write_package(notebook, longest + "x", "2026-11-26T12:00:00Z");

  ASSERT_TRUE(problem);
  EXPECT_EQ(problem->sentence,
            "The folder \"" + longest + "x\" cannot be made: File name too long.");
  EXPECT_FALSE(read_package(longest + "x"));
}

TEST_F(APackage, OfWhichAFileWasChangedIsRefused) {
  replace("reading.csv", "151.5", "115.5");

  ASSERT_EQ(problems().size(), 1U);
  EXPECT_EQ(problems()[0].sentence,
            "This file is not the one that the package was written with: its SHA-256 is another "
            "than the descriptor says.");
  EXPECT_EQ(problems()[0].place.file, package_ / "reading.csv");
}

TEST_F(APackage, NamesEveryRowThatCannotBe) {
  forget_hashes();
  replace("reading.csv", "151.5", "many");
  replace("reading.csv", "1,0,0,0", "1,0,0,-5");

  const auto found = problems();

  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].sentence, "The row breaks the rule that cuts >= 0.");
  EXPECT_EQ(found[0].place.line, 2U);
  EXPECT_EQ(found[1].place.column, "reading");
  EXPECT_EQ(found[1].place.found, "many");
}

TEST_F(APackage, WhoseRowsDoNotFitTogetherIsRefused) {
  forget_hashes();
  replace("reading.csv", "1,1,0", "1,1,7");

  ASSERT_EQ(problems().size(), 1U);
  EXPECT_EQ(problems()[0].sentence,
            "The rows of this package do not fit together: a reading is of a series that its trial "
            "has not.");
}

TEST_F(APackage, ThatSaysWhatNoTableMaySayIsRefused) {
  struct Slip {
    std::string file;
    std::string from;
    std::string to;
    std::string sentence;
  };
  const std::string run = "Run 1 of A on felt, trial spring, ";
  const std::string kind = "Trial spring, kind of reading thread_push: ";
  const std::vector<Slip> slips = {
      {"reading.csv", "10,151.5", "10,-5", run + "reads -5 at 10, which cannot be."},
      {"reading.csv", "10,151.5", "10,0", run + "reads 0 at 10, which cannot be."},
      {"reading.csv", "10,151.5", "1e300,151.5", run + "has 1e+300 as its cuts."},
      {"series.csv",
       "lower,curve,2,",
       "lower,curve,0,",
       kind + "edges cannot be compared at 0 times the start reading."},
      {"series.csv",
       "lower,curve,2,",
       "lower,curve,-3,",
       kind + "edges cannot be compared at -3 times the start reading."},
      {"series.csv", "lower", "higher", kind + "the lower reading is the keener one."},
      {"series.csv", ",gf,,", ",parsec,,", kind + "it cannot be in \"parsec\"."},
      {"run.csv", "not_recorded,,,", "not_recorded,,-4,", run + "has -4 as its cut_length_mm."},
  };
  for (const Slip& slip : slips) {
    const std::string whole = text(slip.file);
    forget_hashes();
    replace(slip.file, slip.from, slip.to);

    const auto found = problems();

    ASSERT_EQ(found.size(), 1U) << slip.sentence;
    EXPECT_EQ(found[0].sentence, slip.sentence);
    EXPECT_EQ(found[0].place.file, package_ / slip.file);
    std::ofstream(package_ / slip.file) << whole;
  }
  EXPECT_TRUE(problems().empty());
}

TEST_F(APackage, WithAnEmptyIdentityIsRefused) {
  forget_hashes();
  const std::string runs = text("run.csv");
  const auto from = runs.find("\n1,") + 3;
  replace("run.csv", runs.substr(from, 32), "");

  ASSERT_FALSE(problems().empty());
  EXPECT_EQ(problems()[0].sentence, "Nothing stands in run.uid, by which it would be known again.");
}

TEST_F(APackage, WhoseListsHaveGapsIsRefused) {
  forget_hashes();
  replace("reading.csv", "1,1,0", "1,2,0");
  EXPECT_EQ(problems().at(0).sentence,
            "The rows of this package do not fit together: the places in a list of reading have a "
            "gap.");
  replace("reading.csv", "1,2,0", "1,1,0");
  ASSERT_TRUE(problems().empty());

  // One reading of each of two series, of which the first is then lost.
  replace("series.csv", "\n1,0,", "\n1,1,");
  replace("reading.csv", "1,0,0", "1,0,1");
  replace("reading.csv", "1,1,0", "1,1,1");

  EXPECT_EQ(problems().at(0).sentence,
            "The rows of this package do not fit together: the places in a list of series have a "
            "gap.");
}

TEST_F(APackage, WhoseRowsReferToNothingIsRefused) {
  forget_hashes();
  replace("reading.csv", "\n1,1", "\n8,1");

  ASSERT_EQ(problems().size(), 1U);
  EXPECT_EQ(problems()[0].sentence, "The row refers to one that is not there.");
  EXPECT_EQ(problems()[0].place.line, 3U);
}

TEST_F(APackage, OfAnotherProgramOrANewerOneIsRefused) {
  replace("datapackage.json", R"("keenfall_format": "1")", R"("keenfall_format": "7")");
  EXPECT_EQ(problems()[0].sentence,
            "This data package was written by a newer Keenfall (format 7).");

  replace("datapackage.json", R"("keenfall_format": "7")", R"("own": "1")");
  EXPECT_EQ(problems()[0].sentence,
            "This data package is not one of a notebook: it does not say which format it has.");
}

TEST_F(APackage, OfWhichATableIsNotDescribedIsRefused) {
  replace("datapackage.json", "\"name\": \"reading\"", "\"name\": \"readings\"");

  ASSERT_EQ(problems().size(), 1U);
  EXPECT_EQ(problems()[0].sentence, "This package has no table \"reading\", so it is not whole.");
}

TEST_F(APackage, WithoutAFileItDescribesIsRefused) {
  std::filesystem::remove(package_ / "run.csv");

  ASSERT_FALSE(problems().empty());
  EXPECT_EQ(problems()[0].place.file, package_ / "run.csv");
}

}  // namespace
}  // namespace keenfall::workbench
