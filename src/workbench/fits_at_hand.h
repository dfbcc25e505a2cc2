// Fits of the last few trials that were judged, so that another margin, level or claim asks the
// same draws again.
//
// Full draws and quick ones are kept beside each other. A fit is of one trial as it was read, with
// its struck readings counted or not, of which kind of reading, from which seed and by which
// engine. Used from several threads.
#pragma once

#include "trials/trial.h"
#include "workbench/fitted_trial.h"

#include <condition_variable>
#include <cstdint>
#include <functional>
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
};

class FitsAtHand {
 public:
  // Nothing where there is none, or not any more.
  [[nodiscard]] std::optional<FitAtHand> find(const FitWanted& wanted);
  void keep(FitAtHand fit);

  // Held while the trial's own question is counted, so that what two ask at once is counted once.
  [[nodiscard]] std::unique_lock<std::mutex> counting() { return std::unique_lock(counting_); }

  // Held while such a fit is made: whoever wants the same one waits, until the other is done or
  // given up, or `goes_on` says no. Owns nothing then.
  class Turn {
   public:
    Turn(FitsAtHand& fits, FitWanted wanted, const std::function<bool()>& goes_on);
    ~Turn();
    Turn(const Turn&) = delete;
    Turn& operator=(const Turn&) = delete;
    Turn(Turn&&) = delete;
    Turn& operator=(Turn&&) = delete;
    [[nodiscard]] bool is_mine() const { return is_mine_; }

   private:
    FitsAtHand& fits_;
    FitWanted wanted_;
    bool is_mine_ = false;
  };

 private:
  std::mutex counting_;
  std::mutex mutex_;  // of what follows
  std::condition_variable given_up_;
  std::list<FitWanted> being_made_;
  std::list<FitAtHand> kept_;  // the one used last stands first
};

}  // namespace keenfall::workbench
