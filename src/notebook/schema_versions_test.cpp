// Notebooks of every schema version open, and are brought up to date where they are written to.
#include "notebook/a_notebook_test.h"
#include "notebook/bench_runs.h"
#include "notebook/check.h"
#include "notebook/kept_trials.h"
#include "notebook/kit.h"
#include "notebook/looks.h"
#include "notebook/plans.h"
#include "notebook/typed_sheets.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <string>
#include <variant>

namespace keenfall::notebook {
namespace {

using testing::kOpener;

using testing::ANotebook;

std::string stored_notebook(int version) {
  return std::string(KEENFALL_SOURCE_DIR) + "/tests/notebooks/schema_" + std::to_string(version) +
         ".keen";
}

std::int64_t version_in(const std::string& path) {
  constexpr int kPlaceOfVersion = 63;  // the last of four bytes, big-endian
  std::ifstream file(path, std::ios::binary);
  file.seekg(kPlaceOfVersion);
  return file.get();
}

TEST_F(ANotebook, OfTheFirstSchemaIsReadAsItIs) {
  std::filesystem::copy_file(stored_notebook(1), path_);

  {
    const auto notebook = Notebook::open_to_read(path_);
    ASSERT_TRUE(notebook);
    EXPECT_TRUE(check(*notebook).empty());
    EXPECT_EQ(kept_trial(*notebook, "m1")->runs.size(), 4U);
    EXPECT_TRUE(looks_at(*notebook, "m1").empty());
  }

  EXPECT_EQ(version_in(path_), 1);
}

TEST_F(ANotebook, OfTheFirstSchemaIsBroughtUpToDateWhereItIsWrittenTo) {
  std::filesystem::copy_file(stored_notebook(1), path_);

  {
    auto notebook = Notebook::open_to_write(path_, kOpener);
    ASSERT_TRUE(notebook);
    EXPECT_TRUE(check(*notebook).empty());
    EXPECT_EQ(notebook->journal().size(), 2U);
    const auto trial = kept_trial(*notebook, "m1");
    ASSERT_EQ(trial->runs.size(), 4U);
    EXPECT_EQ(trial->runs[0].readings[2].reading, 212);
    EXPECT_EQ(trial->runs[2].readings[2].struck_reason, "thread slipped");
    ASSERT_TRUE(notebook->undo(2, next()));
    EXPECT_TRUE(check(*notebook).empty());
  }

  EXPECT_EQ(version_in(path_), 4);
}

TEST_F(ANotebook, OfTheSecondSchemaStillOpens) {
  std::filesystem::copy_file(stored_notebook(2), path_);

  const auto notebook = Notebook::open_to_write(path_, kOpener);

  ASSERT_TRUE(notebook);
  EXPECT_TRUE(check(*notebook).empty());
  const auto looks = looks_at(*notebook, "felt");
  ASSERT_EQ(looks.size(), 1U);
  EXPECT_EQ(looks[0].judgement.inputs.readings, 16U);
  EXPECT_EQ(kept_trial(*notebook, "felt")->runs[1].readings[1].struck_reason, "thread slipped");
}

TEST_F(ANotebook, OfTheSecondSchemaTakesAKitAndAPlan) {
  std::filesystem::copy_file(stored_notebook(2), path_);
  auto notebook = Notebook::open_to_write(path_, kOpener);
  ASSERT_TRUE(notebook);

  ASSERT_TRUE(add_to_kit(*notebook, trials::KitStone{.name = "coarse"}, next()));
  ASSERT_TRUE(make_trial(*notebook, "next", {.claims = {{.words = "A lasts"}}}, next()));

  EXPECT_TRUE(check(*notebook).empty());
  EXPECT_EQ(kept_kit(*notebook).stones.size(), 1U);
  EXPECT_EQ(kept_plan(*notebook, "next")->claims[0].words, "A lasts");
}

TEST_F(ANotebook, OfTheThirdSchemaStillOpens) {
  std::filesystem::copy_file(stored_notebook(3), path_);

  const auto notebook = Notebook::open_to_write(path_, kOpener);

  ASSERT_TRUE(notebook);
  EXPECT_TRUE(check(*notebook).empty());
  EXPECT_EQ(looks_at(*notebook, "felt").size(), 1U);
  const auto plan = kept_plan(*notebook, "next felt");
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->plan, testing::what_is_asked().plan);
  EXPECT_EQ(plan->sealed_at_utc, "2026-11-27T07:00:00Z");
  EXPECT_NE(notebook->journal().back().what.find(plan->sha256), std::string::npos);
  const KeptKit kit = kept_kit(*notebook);
  EXPECT_EQ(kit.blades.size(), 3U);
  EXPECT_EQ(kit.lots[0].thing, std::get<trials::MediumLot>(testing::a_kit()[3]));
  EXPECT_EQ(kit.kinds[0].thing, std::get<trials::ReadingKind>(testing::a_kit()[5]));
}

TEST_F(ANotebook, OfTheFourthSchemaStillOpens) {
  std::filesystem::copy_file(stored_notebook(4), path_);

  const auto notebook = Notebook::open_to_write(path_, kOpener);

  ASSERT_TRUE(notebook);
  EXPECT_TRUE(check(*notebook).empty());
  const auto runs = all_bench_runs(*notebook);
  ASSERT_EQ(runs.size(), 1U);
  EXPECT_EQ(runs[0].to_cut.order, 1);
  ASSERT_EQ(runs[0].entries.size(), 12U);
  EXPECT_EQ(std::get<bench::ReadingTaken>(runs[0].entries[2].what).scale_line, "ST,GS,+  104.2 g");
  EXPECT_EQ(std::get<bench::TakenBack>(runs[0].entries[11].what).id, "e11");
  EXPECT_EQ(typed_sheet(*notebook, "")->revision, 1);
}

}  // namespace
}  // namespace keenfall::notebook
