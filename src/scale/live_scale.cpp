#include "scale/live_scale.h"

#include "scale/joined_lines.h"

#include <algorithm>
#include <condition_variable>
#include <mutex>
#include <stop_token>
#include <thread>
#include <utility>

namespace keenfall::scale {

namespace {

using Clock = std::chrono::steady_clock;
using std::chrono::milliseconds;

base::Problem too_long(const std::string& bytes) {
  return {.kind = base::ProblemKind::too_large,
          .sentence = "the line is longer than any that a scale sends",
          .place = {.found = shown_line(bytes)},
          .accepted = "the speed and the data format (8N1, 7E1) that the scale is set to"};
}

}  // namespace

struct LiveScale::Inside {
  explicit Inside(Settings settings_given) : settings(std::move(settings_given)) {
    try_to_open();
    thread = std::jthread([this](const std::stop_token& stop) { go_on(stop); });
  }

  [[nodiscard]] double now_s() const {
    return std::chrono::duration<double>(Clock::now() - begun).count();
  }

  // `change` is done on the state under the lock, and counts as news.
  template <class Change>
  void tell(const Change& change) {
    {
      const std::scoped_lock lock(mutex);
      change(told);
      if (hold) {
        told.is_armed = true;
        told.stage = hold->stage();
        told.highest = hold->highest();
        told.hold_trouble = hold->trouble();
        told.held = hold->held();
      } else {
        told.is_armed = false;
        told.stage = PressStage::waiting;
        told.highest.reset();
        told.hold_trouble.clear();
        told.held.reset();
      }
      ++told.news;
    }
    changed.notify_all();
  }

  [[nodiscard]] ScaleState as_told_now() const {
    ScaleState state = told;
    state.now_s = now_s();
    return state;
  }

  void try_to_open() {
    auto opened = Port::open(settings.port);
    if (opened) {
      port.emplace(std::move(*opened));
      lines = JoinedLines();
      quiet_since = Clock::now();
      return tell([](ScaleState& state) {
        state.connection = Connection::listening;
        state.problem.reset();
      });
    }
    if (opened.error() == last_problem) return;
    last_problem = opened.error();
    tell([&](ScaleState& state) { state.problem = opened.error(); });
  }

  void lose() {
    port.reset();
    last_problem.reset();
    tell([this](ScaleState& state) {
      if (hold) hold->break_off();
      state.connection = Connection::unplugged;
      state.problem.reset();
      state.newest.reset();
      state.newest_refusal.reset();
    });
  }

  void fall_silent() {
    tell([](ScaleState& state) { state.connection = Connection::silent; });
  }

  void hear(const std::string& piece) {
    const auto now = Clock::now();
    lines.after_pause(std::chrono::duration<double>(now - quiet_since).count());
    quiet_since = now;
    const double at_s = now_s();
    tell([](ScaleState& state) { state.connection = Connection::hearing; });
    for (const JoinedLine& line : lines.take(piece)) take_line(line, at_s);
  }

  void take_line(const JoinedLine& line, double at_s) {
    const auto reading = line.is_too_long
                             ? base::Result<Reading>(base::failed(too_long(line.bytes)))
                             : reading_of_line(line.bytes, settings.lines);
    tell([&](ScaleState& state) {
      if (!reading) {
        ++state.lines_refused;
        state.newest_refusal = reading.error();
        return;
      }
      ++state.lines_read;
      state.newest_refusal.reset();
      state.newest = SeenReading{.reading = *reading, .at_s = at_s};
      if (hold) hold->take(at_s, *reading);
    });
  }

  void listen(const std::stop_token& stop) {
    const auto silent_at = quiet_since + settings.silent_after;
    const bool is_silent = state_now() == Connection::silent;
    const auto left = std::chrono::ceil<milliseconds>(silent_at - Clock::now());
    const milliseconds patience =
        is_silent ? settings.silent_after : std::max(left, milliseconds(0));
    std::string piece;
    switch (port->read(piece, patience, stop)) {
      case PortEvent::heard:
        return hear(piece);
      case PortEvent::gone:
        return lose();
      case PortEvent::nothing:
        if (!is_silent && Clock::now() >= silent_at && !stop.stop_requested()) fall_silent();
        return;
    }
  }

  [[nodiscard]] Connection state_now() const {
    const std::scoped_lock lock(mutex);
    return told.connection;
  }

  void go_on(const std::stop_token& stop) {
    while (!stop.stop_requested()) {
      if (port) {
        listen(stop);
        continue;
      }
      std::unique_lock lock(mutex);
      pause.wait_for(lock, stop, settings.try_again_after, [] { return false; });
      lock.unlock();
      if (!stop.stop_requested()) try_to_open();
    }
  }

  const Settings settings;
  const Clock::time_point begun = Clock::now();
  // Of the thread alone, once it runs.
  std::optional<Port> port;
  std::optional<base::Problem> last_problem;
  JoinedLines lines;
  Clock::time_point quiet_since;
  // Of everybody, under the lock.
  mutable std::mutex mutex;
  mutable std::condition_variable changed;
  std::condition_variable_any pause;
  ScaleState told;
  std::optional<Hold> hold;
  std::jthread thread;  // last: it ends before what it uses
};

LiveScale::LiveScale(const Settings& settings) : inside_(std::make_unique<Inside>(settings)) {}
LiveScale::~LiveScale() = default;

ScaleState LiveScale::state() const {
  const std::scoped_lock lock(inside_->mutex);
  return inside_->as_told_now();
}

ScaleState LiveScale::wait_for_news(std::uint64_t seen, std::chrono::milliseconds at_most) const {
  std::unique_lock lock(inside_->mutex);
  inside_->changed.wait_for(lock, at_most, [&] { return inside_->told.news != seen; });
  return inside_->as_told_now();
}

std::optional<base::Problem> LiveScale::arm(const HoldAsked& asked) {
  auto armed = Hold::armed(asked);
  if (!armed) return armed.error();
  inside_->tell([&](ScaleState&) { inside_->hold.emplace(std::move(*armed)); });
  return std::nullopt;
}

void LiveScale::disarm() {
  inside_->tell([this](ScaleState&) { inside_->hold.reset(); });
}

std::optional<HeldReading> LiveScale::take_held() {
  std::optional<HeldReading> taken;
  // Asking for what is not there yet is no news.
  if (!state().held) return taken;
  inside_->tell([&](ScaleState&) {
    if (!inside_->hold || !inside_->hold->held()) return;
    taken = inside_->hold->held();
    inside_->hold.reset();
  });
  return taken;
}

}  // namespace keenfall::scale
