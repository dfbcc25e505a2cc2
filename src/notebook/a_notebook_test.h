// For tests: a notebook in a folder of its own, and changes by one person.
#pragma once

#include "notebook/made_notebook.h"
#include "notebook/notebook.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <string>
#include <utility>

namespace keenfall::notebook::testing {

class ANotebook : public ::testing::Test {
 protected:
  [[nodiscard]] Notebook made() const {
    return std::move(*Notebook::create(
        path_, {.uid = "00112233445566778899aabbccddeeff", .made_by = "keenfall test"}, kOpener));
  }

  Authorship next() {
    return {.client_id = "c" + std::to_string(++changes_),
            .at_utc = "2026-11-26T12:00:00Z",
            .who = "R."};
  }

  ScratchFolder scratch_{::testing::UnitTest::GetInstance()->current_test_info()->name()};
  const std::filesystem::path& folder_ = scratch_.path();
  std::string path_ = scratch_.file("bench.keen");
  int changes_ = 0;
};

}  // namespace keenfall::notebook::testing
