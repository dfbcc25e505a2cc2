// The devices that are let in at the bench, and the code by which one more is.
//
// A code is of eight characters out of 31 (8.5e11 codes). It lets one device in and lives for ten
// minutes. Of one address five wrong ones a minute are looked at, and with the hundredth from
// anywhere the code dies: so guessing has a chance of 1.2e-10, and who guesses keeps nobody else
// out. The desk is told. A device gets a key of its own of 128 bits;
// what is kept of it is its SHA-256, so that the file lets nobody in. Several programs of one
// person may share the file: each sees what the others changed. Used from several threads.
#pragma once

#include "base/result.h"
#include "server/refusal.h"
#include "wire/devices.h"

#include <chrono>
#include <deque>
#include <functional>
#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::server {

struct PairingCode {
  std::string code;              // "K7MP-2WXR"
  std::chrono::seconds left{0};  // then it lets nobody in any more
};

class PairedDevices {
 public:
  using Clock = std::chrono::steady_clock;
  struct Settings {
    std::string file = {};                   // where they are kept; empty: while it runs
    std::function<Clock::time_point()> now;  // empty: the machine's
    std::function<std::string()> utc_now;    // "2026-11-26T12:00:00Z"
  };

  // A file that cannot be read is as one that is not there: each device asks to be let in anew.
  explicit PairedDevices(Settings settings);

  // The one before lets nobody in any more.
  PairingCode new_code();
  // That still lets somebody in.
  [[nodiscard]] std::optional<PairingCode> code();

  // from: the address that asks. Out: its key. Refused with 403 where the code is not the one, and
  // with 429 where so many were tried from there within a minute that nobody looks at another; 500
  // where it cannot be kept.
  [[nodiscard]] tl::expected<std::string, Refusal> let_in(const wire::AskToBeLetIn& ask,
                                                          const std::string& from);
  // Wrong codes of the last ten minutes, in a sentence; empty: there were none.
  [[nodiscard]] std::string wrong_tries_in_words();

  // Is it a device's key? That device is seen then. Quick: nothing is written.
  [[nodiscard]] bool is_let_in(std::string_view key);
  // Which were seen when is written at most once a minute.
  void keep_seen();

  [[nodiscard]] std::vector<wire::Device> all();
  // False: there is no such device. Throws std::runtime_error where it cannot be kept.
  bool put_out(const std::string& id);

 private:
  struct LiveCode {
    std::string code;
    Clock::time_point until;
    unsigned wrong_tries = 0;
  };

  [[nodiscard]] bool is_right(std::string_view code);
  void forget_old_tries();
  // What another program wrote meanwhile. Nothing is read where the file stands as it was read.
  void look_at_file();
  // While no other program does, `change` is made to what stands in the file, and kept there. False
  // where that cannot be. mutex_ is not held: who only asks waits for no disk.
  using Change = std::function<void(std::vector<wire::Device>&)>;
  [[nodiscard]] bool keep(const Change& change);

  Settings settings_;
  std::mutex keeping_;  // one writes at a time; taken before mutex_
  std::mutex mutex_;    // of all below
  std::vector<wire::Device> devices_;
  std::optional<LiveCode> live_;
  struct WrongTry {
    std::string from;
    Clock::time_point at;
  };
  std::deque<WrongTry> wrong_tries_;            // of the last ten minutes
  std::map<std::string, std::string> seen_at_;  // by id, of those seen since that was written
  Clock::time_point seen_kept_at_{};
  std::string file_as_read_;  // which file it was, and when it was written
};

}  // namespace keenfall::server
