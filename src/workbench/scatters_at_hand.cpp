#include "workbench/scatters_at_hand.h"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace keenfall::workbench {

namespace {

// More than are looked at for one plan (measured_before.h), so that a trial that changed drives out
// none of the others.
constexpr std::size_t kMostKept = 60;

}  // namespace

std::optional<std::vector<ScatterOfArm>> ScattersAtHand::find(
    const std::shared_ptr<const trials::Trial>& trial) {
  const std::lock_guard lock(mutex_);
  const auto found = std::ranges::find(kept_, trial, &OfTrial::trial);
  if (found == kept_.end()) return std::nullopt;
  kept_.splice(kept_.begin(), kept_, found);
  return kept_.front().scatters;
}

void ScattersAtHand::keep(std::shared_ptr<const trials::Trial> trial,
                          std::vector<ScatterOfArm> scatters) {
  const std::lock_guard lock(mutex_);
  std::erase_if(kept_, [&trial](const OfTrial& one) { return one.trial == trial; });
  kept_.push_front({.trial = std::move(trial), .scatters = std::move(scatters)});
  if (kept_.size() > kMostKept) kept_.pop_back();
}

}  // namespace keenfall::workbench
