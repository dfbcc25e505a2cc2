// Which runs belong together: the arm, the medium, the block and the specimen of every run used.
//
// Arms stand in their listing order (trials/arm_order.h); a medium is one medium cut by one method,
// which is what shares a scatter and is compared. A block counts only where it holds runs of
// several arms of a medium, and tells blocks of each medium apart; specimens count only where a
// blade has several.
#pragma once

#include "trials/trial.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace keenfall::blunting {

struct GroupsOfRun {
  std::size_t arm = 0;                  // index into RunGroups::arms
  std::size_t medium = 0;               // index into RunGroups::media
  std::optional<std::size_t> block;     // block x medium, below block_count
  std::optional<std::size_t> specimen;  // below specimen_count
};

struct RunGroups {
  std::vector<trials::Arm> arms;
  std::vector<std::size_t> medium_of_arm;
  std::vector<std::string> media;  // medium with method, in words
  std::size_t block_count = 0;
  std::size_t specimen_count = 0;
  std::vector<GroupsOfRun> runs;  // one for each of `used`
};

// used: indices into Trial::runs.
[[nodiscard]] RunGroups group_runs(const trials::Trial& trial, std::span<const std::size_t> used);

}  // namespace keenfall::blunting
