#include "cli/bench_scale_command.h"

#include "base/shell_word.h"
#include "cli/bench_scale_text.h"
#include "cli/option_numbers.h"
#include "cli/text_layout.h"
#include "cli/typed_options.h"
#include "materials/quantity.h"
#include "scale/live_scale.h"
#include "scale/serial_devices.h"

#include <algorithm>
#include <chrono>
#include <optional>
#include <utility>
#include <vector>

namespace keenfall::cli {

namespace {

using base::Problem;
using base::Result;

constexpr std::chrono::milliseconds kLookAround{200};  // for a wish to stop
// Of what settled: below it the load was changed, and the next one is waited for.
constexpr double kTakenOff = 0.5;

// What was typed, understood.
struct Watching {
  scale::LiveScale::Settings settings;
  std::optional<scale::HoldAsked> hold;
};

Problem of_option(const std::string& option, const std::string& sentence) {
  return {.sentence = sentence, .place = {.column = option}};
}

Problem no_device() {
  std::string sentence = "scale needs one device, as in: keenfall scale /dev/ttyUSB0.";
  const std::vector<std::string> devices = scale::serial_devices();
  sentence += devices.empty() ? " No USB line is plugged in now." : " Plugged in now:";
  for (const std::string& device : devices) sentence += " " + base::shell_word(device);
  return of_option("--", sentence);
}

Result<int> baud_of(const std::string& typed) {
  const std::span<const int> known = scale::known_speeds();
  const auto found =
      std::ranges::find_if(known, [&](int baud) { return std::to_string(baud) == typed; });
  if (found != known.end()) return *found;
  return base::failed(of_option(
      "--baud", "--baud is 300, 600, 1200, 2400, 4800, 9600 or 19200, not \"" + typed + "\""));
}

Result<bool> comma_meant(const std::string& typed) {
  if (typed == "comma" || typed == "point") return typed == "comma";
  return base::failed(of_option("--decimal", "--decimal is comma or point, not \"" + typed + "\""));
}

Result<scale::HoldKind> hold_kind_of(const std::string& typed) {
  if (typed == "peak") return scale::HoldKind::peak;
  if (typed == "stable") return scale::HoldKind::stable;
  return base::failed(of_option("--hold", "--hold is peak or stable, not \"" + typed + "\""));
}

Result<scale::HoldAsked> hold_of(const TypedOptions& typed) {
  const auto kind = hold_kind_of(typed.scale.hold.value_or("peak"));
  if (!kind) return base::failed(kind.error());
  scale::HoldAsked asked{.kind = *kind};
  if (!typed.scale.full_press) return asked;
  const auto press = materials::parse_quantity(*typed.scale.full_press);
  if (!press) return base::failed(under_option(press.error(), "--full-press"));
  asked.full_press = *press;
  const auto armed = scale::Hold::armed(asked);
  if (!armed) return base::failed(under_option(armed.error(), "--full-press"));
  return asked;
}

// A value into its place, or what is wrong with it among the problems.
template <class T, class Place>
void put(const Result<T>& read, Place& place, std::vector<Problem>& problems) {
  if (read) {
    place = *read;
  } else {
    problems.push_back(read.error());
  }
}

base::ResultOrProblems<Watching> watching_of(const TypedOptions& typed) {
  Watching watching;
  std::vector<Problem> problems;
  if (typed.positionals.size() == 1) {
    watching.settings.port.path = typed.positionals.front();
  } else {
    problems.push_back(no_device());
  }
  if (typed.scale.baud) put(baud_of(*typed.scale.baud), watching.settings.port.baud, problems);
  if (typed.format) {
    put(scale::data_format_of(*typed.format).map_error([](Problem problem) {
      return under_option(std::move(problem), "--format");
    }),
        watching.settings.port.format,
        problems);
  }
  if (typed.decimal) {
    put(comma_meant(*typed.decimal), watching.settings.lines.comma_is_decimal, problems);
  }
  const bool has_hold = typed.scale.hold || typed.scale.full_press;
  if (has_hold) put(hold_of(typed), watching.hold, problems);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return watching;
}

// Arms again after each reading that was held, once its load is taken off.
class HoldAgain {
 public:
  HoldAgain(scale::LiveScale& live, scale::HoldAsked asked)
      : live_(live), asked_(std::move(asked)) {
    (void)live_.arm(asked_);
  }

  // What was held since; empty: nothing.
  [[nodiscard]] std::string text(const scale::ScaleState& now, const Look& look) {
    if (auto held = live_.take_held()) {
      last_ = held->number;
      std::string text = held_text(*held, look);
      if (held->kind == scale::HoldKind::peak) (void)live_.arm(asked_);
      return text;
    }
    const bool is_taken_off =
        now.newest && now.newest->reading.number && *now.newest->reading.number < kTakenOff * last_;
    if (!now.is_armed && is_taken_off) (void)live_.arm(asked_);
    return "";
  }

 private:
  scale::LiveScale& live_;
  scale::HoldAsked asked_;
  double last_ = 0;
};

std::string first_line(const scale::PortSettings& port, const Look& look) {
  const bool is_plain = port.format == scale::DataFormat::bits_8_no_parity;
  return wrapped(shown_as("Listening at " + port.path + ", " + std::to_string(port.baud) + " " +
                              (is_plain ? "8N1" : "7E1") + ", until Ctrl-C.",
                          look),
                 {},
                 look);
}

}  // namespace

Outcome bench_scale_command(std::span<const std::string> words, const Surroundings& surroundings) {
  const auto typed = typed_options(Command::bench_scale, words);
  if (!typed) return wrong_usage(typed.error(), "scale");
  const auto watching = watching_of(*typed);
  if (!watching) return wrong_usage(watching.error(), "scale");
  scale::LiveScale live(watching->settings);
  scale::ScaleState before = live.state();
  if (before.connection == scale::Connection::cannot_open && before.problem) {
    return refused({*before.problem}, "nothing was read");
  }
  const Look& look = surroundings.look;
  // Armed before anybody is told to press.
  std::optional<HoldAgain> holds;
  if (watching->hold) holds.emplace(live, *watching->hold);
  surroundings.write_at_once(first_line(watching->settings.port, look));
  while (!surroundings.is_stop_asked_for()) {
    const scale::ScaleState now = live.wait_for_news(before.news, kLookAround);
    const std::string text =
        scale_news_text(before, now, look) + (holds ? holds->text(now, look) : "");
    if (!text.empty()) surroundings.write_at_once(text);
    const bool is_read_by_nobody = surroundings.is_output_gone && surroundings.is_output_gone();
    if (is_read_by_nobody) return {};
    before = now;
  }
  return {.out = "Stopped.\n"};
}

}  // namespace keenfall::cli
