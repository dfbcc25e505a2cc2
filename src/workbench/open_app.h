// What is open in the app while it is served: the notebook's path, who sits before it, and what is
// kept in memory between requests. The notebook itself is opened by each job for itself. Used from
// several threads.
#pragma once

#include "base/result.h"
#include "wire/app_json.h"
#include "workbench/bench_book.h"
#include "workbench/counted_look.h"
#include "workbench/judged_now.h"
#include "workbench/notebook_opening.h"
#include "workbench/scale_in_use.h"

#include <chrono>
#include <functional>
#include <mutex>
#include <optional>
#include <string>

namespace keenfall::workbench {

class OpenApp {
 public:
  struct Settings {
    std::string program_version;  // "0.1.0"
    std::string folder;           // where notebooks are made where only a name is given
    std::optional<std::string> notebook;
    std::string who;
    std::string machine_words;             // "bench-2, process 4711"
    std::function<std::string()> utc_now;  // "2026-11-26T12:00:00Z"
    // How long a change waits for another that is being written, its own or a command's.
    std::chrono::milliseconds patience{5000};
  };

  explicit OpenApp(Settings settings);

  [[nodiscard]] const Settings& settings() const { return settings_; }
  [[nodiscard]] AtHand& at_hand() { return at_hand_; }
  [[nodiscard]] BenchBook& bench_book() { return bench_book_; }
  [[nodiscard]] ScaleInUse& scale() { return scale_; }

  void open(const std::string& notebook);
  // Its path; a Problem where none is open.
  [[nodiscard]] base::Result<std::string> notebook() const;
  // What is open, and the safety lines. A notebook that cannot be read any more is there with why.
  [[nodiscard]] wire::AppTold told() const;

  // Where what was taken in is, for whoever stops Keenfall.
  [[nodiscard]] std::string parting_words() const;

  [[nodiscard]] Hand hand() const;
  // Of a request that came then: it waits for another that is being written since then.
  [[nodiscard]] Hand hand(std::chrono::steady_clock::time_point came_at,
                          const std::string& why = {}) const;
  [[nodiscard]] JudgedBy judged_by() const;

 private:
  Settings settings_;
  AtHand at_hand_;
  BenchBook bench_book_;
  ScaleInUse scale_;
  mutable std::mutex mutex_;  // of notebook_
  std::optional<std::string> notebook_;
};

}  // namespace keenfall::workbench
