// The scale that is in use at the bench: at most one, of this machine, for whoever reads next.
//
// What is wrong with it is a state that is told, and typing goes on without it. Used from several
// threads.
#pragma once

#include "base/result.h"
#include "scale/live_scale.h"
#include "wire/scale_page.h"

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

  [[nodiscard]] wire::ScaleTold told() const;

  // For the next reading. Fails where no scale is in use.
  [[nodiscard]] std::optional<base::Problem> arm(const scale::HoldAsked& asked);

  // What is held, once, in that unit. Fails where nothing is held or it does not convert to it; it
  // is gone then, too.
  [[nodiscard]] base::Result<wire::ScaleReading> take_held(const std::string& unit);

 private:
  [[nodiscard]] std::shared_ptr<scale::LiveScale> live() const;

  mutable std::mutex mutex_;  // of both
  std::optional<wire::UseScale> used_;
  std::shared_ptr<scale::LiveScale> live_;
};

}  // namespace keenfall::workbench
