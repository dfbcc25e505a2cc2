// A scale that is read all the time, by a thread of its own: what it shows now, and the next
// reading.
//
// In: device, speed and format. Out, at any time and from any thread: how things stand; and the
// reading that was armed for, once, to whoever takes it. A scale that is not there, is unplugged or
// says nothing is a state, not a failure: it is tried again every second until it comes back.
// Seconds are counted from when it began, by a clock that never goes back.
#pragma once

#include "base/result.h"
#include "scale/hold.h"
#include "scale/line.h"
#include "scale/port.h"

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>

namespace keenfall::scale {

enum class Connection {
  cannot_open,  // `problem` says why
  listening,    // open, and nothing was heard since
  hearing,
  silent,    // open, and nothing was heard for a while: switched off, or sends only when asked to
  unplugged  // it was open and went away; `problem` says why it cannot be opened again, once tried
};

struct SeenReading {
  Reading reading;
  double at_s = 0;

  bool operator==(const SeenReading&) const = default;
};

struct ScaleState {
  std::uint64_t news = 0;  // counts up whenever anything below changes but now_s
  double now_s = 0;
  Connection connection = Connection::cannot_open;
  std::optional<base::Problem> problem;
  std::optional<SeenReading> newest;  // absent: none yet, or the scale is gone
  std::size_t lines_read = 0;
  std::size_t lines_refused = 0;
  std::optional<base::Problem> newest_refusal;  // of the latest line, with it in place.found;
                                                // absent where that one could be read
  bool is_armed = false;
  PressStage stage = PressStage::waiting;  // of what is armed
  std::optional<double> highest;           // of the press, in the unit of `newest`
  std::string hold_trouble;         // why the press before told nothing; empty: it did not fail
  std::optional<HeldReading> held;  // waits to be taken

  bool operator==(const ScaleState&) const = default;
};

class LiveScale {
 public:
  struct Settings {
    PortSettings port;
    LineRules lines;
    std::chrono::milliseconds silent_after{5000};
    std::chrono::milliseconds try_again_after{1000};
  };

  // Tries to open it once before it returns, so that state() tells at once whether it is there.
  explicit LiveScale(const Settings& settings);
  LiveScale(const LiveScale&) = delete;
  LiveScale& operator=(const LiveScale&) = delete;
  LiveScale(LiveScale&&) = delete;
  LiveScale& operator=(LiveScale&&) = delete;
  ~LiveScale();  // lets go of the device

  [[nodiscard]] ScaleState state() const;
  // Returns when there is other news than these, or after that time.
  [[nodiscard]] ScaleState wait_for_news(std::uint64_t seen,
                                         std::chrono::milliseconds at_most) const;

  // For the next reading; what was armed or held before is dropped. A problem where it cannot be.
  [[nodiscard]] std::optional<base::Problem> arm(const HoldAsked& asked);
  void disarm();
  // What is held, given to one taker once; it is disarmed then. Nothing while nothing is held.
  [[nodiscard]] std::optional<HeldReading> take_held();

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace keenfall::scale
