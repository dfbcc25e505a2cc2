// How much the runs of trials scatter, of the last trials that were asked for it, so that nothing
// is judged again while a plan is written.
//
// Of one trial as it was read: the same object. Used from several threads.
#pragma once

#include "planning/own_repeatability.h"
#include "trials/trial.h"

#include <list>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::workbench {

struct ScatterOfArm {
  trials::Arm arm;
  std::string kind;  // of reading, by name
  planning::OwnScatter scatter;
};

class ScattersAtHand {
 public:
  // Nothing where there are none, or not any more; empty where no arm tells its scatter.
  [[nodiscard]] std::optional<std::vector<ScatterOfArm>> find(
      const std::shared_ptr<const trials::Trial>& trial);
  void keep(std::shared_ptr<const trials::Trial> trial, std::vector<ScatterOfArm> scatters);

 private:
  struct OfTrial {
    std::shared_ptr<const trials::Trial> trial;
    std::vector<ScatterOfArm> scatters;
  };
  std::mutex mutex_;
  std::list<OfTrial> kept_;  // the one used last stands first
};

}  // namespace keenfall::workbench
