// The scale that is in use at the bench: at most one, of this machine, for whoever armed it last.
//
// What it holds stays held until the next hold is armed, so that an answer that was lost is asked
// for again.
// What is wrong with it is a state that is told, and typing goes on without it. Used from several
// threads.
#pragma once

#include "base/result.h"
#include "scale/live_scale.h"
#include "wire/scale_page.h"

#include <cstdint>
#include <memory>
#include <mutex>
#include <optional>
#include <string>

namespace keenfall::workbench {

class ScaleInUse {
 public:
  // The one before is let go of. Nothing that was armed or held stays.
  void use(const wire::UseScale& use);
  void put_away();

  // unit: in which a held reading is told; empty: as the scale shows it. Of one that does not
  // convert to it, state.hold_trouble says so.
  [[nodiscard]] wire::ScaleTold told(const std::string& unit = {}) const;

  // For the next reading. Fails where no scale is in use.
  [[nodiscard]] std::optional<base::Problem> arm(const scale::HoldAsked& asked);

 private:
  std::mutex changing_;       // a line is opened by one at a time
  mutable std::mutex mutex_;  // of all below
  std::uint64_t hold_ = 0;
  std::optional<wire::UseScale> used_;
  std::shared_ptr<scale::LiveScale> live_;
};

}  // namespace keenfall::workbench
