// Fits of the last few trials that were judged, so that another margin, level or claim asks the
// same draws again.
//
// Full draws and quick ones are kept beside each other. A fit is of one trial as it was read, with
// its struck readings counted or not, of which kind of reading, from which seed and by which
// engine. Used from several threads.
#pragma once

#include "trials/trial.h"
#include "workbench/fitted_trial.h"

#include <cstdint>
#include <list>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::workbench {

struct FitWanted {
  std::shared_ptr<const trials::Trial> trial;  // as it was read: the same object
  bool with_struck = false;
  std::optional<std::string> kind;
  std::uint64_t seed = 1;
  Engine engine = Engine::full;

  bool operator==(const FitWanted&) const = default;
};

struct FitAtHand {
  FitWanted of;
  std::shared_ptr<const FittedTrial> fitted;
  std::vector<std::string> not_in_its_table;  // TrialTable::left_out of the fitted trial
  std::string counted_words;  // how the trial's own question to it was counted; empty: not yet
};

class FitsAtHand {
 public:
  // Nothing where there is none, or not any more.
  [[nodiscard]] std::optional<FitAtHand> find(const FitWanted& wanted);
  void keep(FitAtHand fit);

 private:
  std::mutex mutex_;
  std::list<FitAtHand> kept_;  // the one used last stands first
};

}  // namespace keenfall::workbench
