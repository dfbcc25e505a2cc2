#include "trust/held_folder.h"

#include <gtest/gtest.h>

#include <optional>
#include <string>

namespace keenfall::trust {
namespace {

std::filesystem::path a_folder(const std::string& name) {
  auto folder = std::filesystem::path(::testing::TempDir()) / ("keenfall-held-" + name);
  std::filesystem::remove_all(folder);
  return folder;
}

TEST(HeldFolder, IsHeldByOneAtATime) {
  const auto folder = a_folder("twice");
  std::optional<base::Result<HeldFolder>> first(HeldFolder::hold(folder));
  ASSERT_TRUE(*first);

  const auto second = HeldFolder::hold(folder);
  ASSERT_FALSE(second);
  EXPECT_EQ(second.error().sentence,
            "Results in " + folder.string() + " are being measured by another program already.");

  first.reset();
  EXPECT_TRUE(HeldFolder::hold(folder));
}

TEST(HeldFolder, IsRefusedWhereItCannotBe) {
  const auto held = HeldFolder::hold("/dev/null/results");

  ASSERT_FALSE(held);
  EXPECT_EQ(
      held.error().sentence,
      "Results cannot be kept in /dev/null/results: the folder cannot be made or written to.");
}

}  // namespace
}  // namespace keenfall::trust
