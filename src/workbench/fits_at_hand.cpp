#include "workbench/fits_at_hand.h"

#include <algorithm>
#include <chrono>
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

FitsAtHand::Turn::Turn(FitsAtHand& fits, FitWanted wanted, const std::function<bool()>& goes_on)
    : fits_(fits), wanted_(std::move(wanted)) {
  constexpr std::chrono::milliseconds kAskedEvery{50};
  std::unique_lock lock(fits_.mutex_);
  const auto is_free = [this] { return std::ranges::count(fits_.being_made_, wanted_) == 0; };
  while (!fits_.given_up_.wait_for(lock, kAskedEvery, is_free)) {
    lock.unlock();
    if (!goes_on()) return;
    lock.lock();
  }
  fits_.being_made_.push_back(wanted_);
  is_mine_ = true;
}

FitsAtHand::Turn::~Turn() {
  if (!is_mine_) return;
  {
    const std::lock_guard lock(fits_.mutex_);
    fits_.being_made_.remove(wanted_);
  }
  fits_.given_up_.notify_all();
}

}  // namespace keenfall::workbench
