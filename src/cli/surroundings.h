// Everything a command meets outside itself: the terminal, the clock, Ctrl-C, and the use cases.
#pragma once

#include "cli/look.h"
#include "cli/use_cases.h"

#include <functional>
#include <string>

namespace keenfall::cli {

struct Surroundings {
  Look look;  // of standard output
  UseCases use_cases;
  std::function<bool()> is_stop_asked_for;
  std::function<double()> seconds_now;                     // of a clock that never goes back
  std::function<void(const std::string&)> write_progress;  // at once; empty: nobody watches
  unsigned threads_at_hand = 1;
  std::string program_version;
  std::function<std::string()> utc_now;  // "2026-11-26T12:00:00Z"
  std::string login_name;                // of who sits here; who changes a notebook without --who
  std::string machine_words;             // "bench-2, process 4711"
  std::string working_folder = {};       // in which names without a folder are
  std::string runtime_folder = {};       // where this user's programs find each other (open_sign.h)
  std::string state_folder = {};         // what this user's programs keep; empty: there is none
  // Of what goes on until it is stopped (open).
  std::function<void(const std::string&)> write_at_once = {};  // to standard output
  std::function<bool()> is_output_gone = {};  // nobody reads standard output any more; empty: no
  std::function<void()> wait_for_stop = {};   // until somebody asks for it
  std::function<void()> ask_for_stop = {};    // from any thread
  std::function<void(const std::string& last_words)> end_at_once = {};   // with success
  std::function<bool(const std::string& address)> show_on_desktop = {};  // empty: there is none
};

}  // namespace keenfall::cli
