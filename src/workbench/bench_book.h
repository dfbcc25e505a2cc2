// Runs that are cut at the bench of the open notebook: which there are, beginning one, what is
// tapped for it, and putting it into its trial when it is over.
//
// What is tapped is on the disk before it is acknowledged. Taps that arrive while others are being
// written are written together with the next: one write to the disk for all of them. A run comes
// into its trial with the entry that ends it and goes from it when that one is taken back. Used
// from several threads. Fails and throws as notebook_changes.h does.
#pragma once

#include "base/result.h"
#include "wire/bench_page.h"
#include "workbench/app_asking.h"
#include "workbench/judged_now.h"
#include "workbench/notebook_opening.h"

#include <condition_variable>
#include <cstddef>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::workbench {

[[nodiscard]] base::Result<wire::BenchTold> bench_of(AtHand& at_hand, const TrialMeant& trial);

// Refused where the plan is not sealed, and where the line is another run than was meant.
[[nodiscard]] base::Result<wire::BenchRunTold> begin_at_bench(AtHand& at_hand,
                                                              const TrialMeant& trial,
                                                              const wire::BeginBenchRun& begin,
                                                              const Hand& hand);

struct BenchRunMeant {
  std::string notebook;
  std::string uid;
};

[[nodiscard]] base::Result<wire::BenchRunTold> run_at_bench(AtHand& at_hand,
                                                            const BenchRunMeant& run);

// Is a reading that was typed for the run, and is not entered yet, worth a second look? False where
// the run has gone on since, or there is nothing to go by.
[[nodiscard]] base::Result<bool> is_worth_a_second_look(AtHand& at_hand,
                                                        const BenchRunMeant& run,
                                                        const wire::TypedReading& typed);

class BenchBook {
 public:
  struct Tapped {
    BenchRunMeant run;
    std::vector<bench::Entry> entries;
  };

  // Out: how the run stands with them.
  [[nodiscard]] base::Result<wire::BenchRunTold> keep(AtHand& at_hand,
                                                      Tapped tapped,
                                                      const Hand& hand);

 private:
  struct Waiting {
    Tapped tapped;
    std::optional<base::Result<wire::BenchRunTold>> answer;
    bool is_answered = false;  // under the lock, unlike the answer
  };

  class Turn;  // of the one who writes

  std::mutex mutex_;
  std::condition_variable written_;
  bool is_writing_ = false;
  std::vector<Waiting*> waiting_;
};

}  // namespace keenfall::workbench
