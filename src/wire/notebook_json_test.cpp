#include "wire/notebook_json.h"

#include "wire/schema_faults_test.h"

#include "notebook/kept_trials.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <string>

#include <unistd.h>

namespace keenfall::wire {
namespace {

using nlohmann::json;

class NotebookJson : public ::testing::Test {
 protected:
  void TearDown() override { std::filesystem::remove(path_); }

  notebook::Authorship next() {
    return {.client_id = "c" + std::to_string(++changes_),
            .at_utc = "2026-11-26T12:00:00Z",
            .who = "R."};
  }
  [[nodiscard]] json document() const { return json::parse(notebook_to_json(notebook_, "0.1.0")); }

  int changes_ = 0;
  std::string path_ = [] {
    const auto path = std::filesystem::temp_directory_path() /
                      ("keenfall_json_" + std::to_string(getpid()) + ".keen");
    std::filesystem::remove(path);
    return path.string();
  }();
  notebook::Notebook notebook_ =
      std::move(*notebook::Notebook::create(path_,
                                            {.uid = "0011", .made_by = "keenfall test"},
                                            {.words = "R.", .at_utc = "2026-11-26T11:00:00Z"}));
};

TEST_F(NotebookJson, HasTheDocumentedShapeWhereNothingIsInIt) {
  EXPECT_EQ(testing::faults_against_schema(document(), "notebook.schema.json"), "");
  EXPECT_EQ(document()["notebook"]["uid"], "0011");
  EXPECT_TRUE(document()["tables"]["run"].empty());
}

TEST_F(NotebookJson, HoldsRowsStrikesAndTheJournal) {
  trials::Trial trial{
      .name = "spring",
      .blades = {{.name = "A"}},
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  trials::Run run{.name = "line\none \"1\"", .arm = {.blade = "A", .medium = {.name = "felt"}}};
  run.readings = {{.cuts = 0, .reading = 0.1 + 0.2, .struck_reason = "burr"}};
  trial.runs = {run};
  ASSERT_TRUE(take(notebook_, trial, {}, next()));
  ASSERT_TRUE(notebook_.undo(1, next()));
  ASSERT_TRUE(notebook_.undo(2, next()));

  const json all = document();

  EXPECT_EQ(testing::faults_against_schema(all, "notebook.schema.json"), "");
  EXPECT_EQ(all["tables"]["run"][0]["name"], "line\none \"1\"");
  EXPECT_EQ(all["tables"]["reading"][0]["reading"], 0.1 + 0.2);
  EXPECT_EQ(all["tables"]["reading"][0]["struck_reason"], "burr");
  EXPECT_TRUE(all["tables"]["reading"][0]["doubtful_reason"].is_null());
  EXPECT_EQ(all["journal"][1]["undoes"], 1);
  EXPECT_EQ(all["journal"][1]["undone_by"], 3);
}

}  // namespace
}  // namespace keenfall::wire
