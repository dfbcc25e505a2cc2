#include "workbench/fits_at_hand.h"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace keenfall::workbench {

namespace {

// A fit of a thousand runs takes some 70 MB. Quick ones, made anew in a moment, do not drive out
// draws that were waited for.
constexpr std::size_t most_kept(Engine engine) { return engine == Engine::quick ? 3 : 6; }

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
  const Engine engine = fit.of.engine;
  kept_.push_front(std::move(fit));
  std::size_t alike = 0;
  std::erase_if(kept_, [&](const FitAtHand& one) {
    return one.of.engine == engine && ++alike > most_kept(engine);
  });
}

}  // namespace keenfall::workbench
