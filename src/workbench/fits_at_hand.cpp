#include "workbench/fits_at_hand.h"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace keenfall::workbench {

namespace {

// A fit of a thousand runs takes some 70 MB.
constexpr std::size_t kMostFitsKept = 6;

}  // namespace

std::optional<FitAtHand> FitsAtHand::find(const FitWanted& wanted) {
  const std::lock_guard lock(mutex_);
  const auto found = std::ranges::find(kept_, wanted, &FitAtHand::of);
  if (found == kept_.end()) return std::nullopt;
  kept_.splice(kept_.begin(), kept_, found);
  return kept_.front();
}

void FitsAtHand::keep(FitAtHand fit) {
  const std::lock_guard lock(mutex_);
  std::erase_if(kept_, [&](const FitAtHand& one) { return one.of == fit.of; });
  kept_.push_front(std::move(fit));
  if (kept_.size() > kMostFitsKept) kept_.pop_back();
}

}  // namespace keenfall::workbench
