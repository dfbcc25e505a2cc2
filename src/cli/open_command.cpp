#include "cli/open_command.h"

#include "cli/bench_opening.h"
#include "cli/ending.h"
#include "cli/hand.h"
#include "cli/open_sign.h"
#include "cli/option_numbers.h"
#include "cli/typed_options.h"
#include "server/app.h"
#include "server/app_parts.h"
#include "workbench/open_app.h"

#include <algorithm>
#include <chrono>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <system_error>
#include <utility>
#include <vector>

namespace keenfall::cli {

namespace {

constexpr const char* kNothingOpened = "nothing was opened";
// What is being answered may still be sent. A change is kept whole or not at all.
constexpr std::chrono::seconds kLongestEnding{3};
constexpr const char* kStoppedEarly = "Stopped. An answer that took long was not waited for.\n";

base::Result<std::optional<std::uint16_t>> own_port(const std::optional<std::string>& typed) {
  if (!typed) return std::optional<std::uint16_t>();
  return port_of("--port", *typed).map([](std::uint16_t port) { return std::optional(port); });
}

// One line, by which a person or a program finds it; and what a window without a shell is there
// for.
std::string opened_words(const std::string& address, bool own_window) {
  const std::string line = "Keenfall is open at " + address + " until Ctrl-C.\n";
  if (!own_window) return line;
  return line +
         "\nIts pages are in your browser; if none came up, open that address there. Leave this "
         "window open\nwhile you work. Closing it stops Keenfall; what you have taken in is "
         "kept.\n";
}

bool is_same_file(const std::string& one, const std::string& other) {
  std::error_code fault;
  return std::filesystem::equivalent(one, other, fault) && !fault;
}

// Shows what is open already where that is what is meant; nothing where this one is to serve. An
// open Keenfall never changes its notebook for it: somebody may be writing in the other.
std::optional<Outcome> shown_already(const TypedOptions& typed,
                                     const std::optional<std::string>& notebook,
                                     const Surroundings& surroundings) {
  const bool is_to_serve = typed.no_open || typed.port || typed.demo || typed.bench.is_open;
  if (is_to_serve) return std::nullopt;
  const std::vector<OpenNow> all = open_now(surroundings.runtime_folder);
  const auto meant = std::ranges::find_if(all, [&](const OpenNow& open) {
    return !notebook || is_same_file(*notebook, open.notebook);
  });
  if (meant == all.end()) return std::nullopt;
  if (surroundings.show_on_desktop) (void)surroundings.show_on_desktop(meant->address);
  return Outcome{.out = "Keenfall is open already, at " + meant->address + "\n" +
                        (surroundings.show_on_desktop ? "Your browser shows it. " : "") +
                        "It is stopped at the foot of its pages, or where it was started.\n"};
}

// The notebook that was named or is made for the demo; nothing where the first screen is to ask.
base::Result<std::optional<std::string>> notebook_meant(const TypedOptions& typed,
                                                        const Surroundings& surroundings) {
  const NotebookJobs& notebooks = surroundings.use_cases.notebook;
  const std::string named = typed.positionals.empty() ? "" : typed.positionals.front();
  if (named.empty() && !typed.demo) return std::optional<std::string>();
  if (!named.empty()) {
    const auto place = notebooks.place(named);
    if (place) return std::optional(place->path);
    if (!typed.demo) return base::failed(place.error());
  }
  const workbench::OpenRequest demo{.open = {.how = wire::OpenHow::demo, .path = named},
                                    .folder = surroundings.working_folder,
                                    .made_by = "keenfall " + surroundings.program_version};
  return notebooks.to_open(demo, hand_of(typed, surroundings)).map([](std::string path) {
    return std::optional(std::move(path));
  });
}

}  // namespace

Outcome open_command(std::span<const std::string> words, const Surroundings& surroundings) {
  const auto typed = typed_options(Command::open, words);
  if (!typed) return wrong_usage(typed.error(), "open");
  const auto port = own_port(typed->port);
  if (!port) return wrong_usage({port.error()}, "open");
  auto bench = bench_asked_for(typed->bench, surroundings);
  if (!bench) return wrong_usage(bench.error(), "open");
  if (typed->positionals.size() > 1) {
    return wrong_usage({{.sentence = "open takes one notebook at most: keenfall open bench.keen",
                         .place = {.column = "--"}}},
                       "open");
  }
  workbench::OpenApp::Settings settings{.program_version = surroundings.program_version,
                                        .folder = surroundings.working_folder,
                                        .who = hand_of(*typed, surroundings).who,
                                        .machine_words = surroundings.machine_words,
                                        .utc_now = surroundings.utc_now};
  const auto notebook = notebook_meant(*typed, surroundings);
  if (!notebook) return refused({notebook.error()}, kNothingOpened);
  if (auto shown = shown_already(*typed, *notebook, surroundings)) return *std::move(shown);
  settings.notebook = *notebook;
  workbench::OpenApp open(std::move(settings));
  server::App app({.port = *port, .work = {.threads_each = surroundings.threads_at_hand}});
  std::optional<server::BenchDoor> door;
  if (*bench) door.emplace(open, **std::move(bench));
  server::add_app_routes({.routes = app.routes(),
                          .works = app.works(),
                          .open = open,
                          .ask_to_stop = surroundings.ask_for_stop,
                          .bench_door = door ? &*door : nullptr});
  const auto address = app.begin();
  if (!address) return refused({address.error()}, kNothingOpened);
  if (door) {
    if (const auto problem = door->begin()) return refused({*problem}, kNothingOpened);
  }
  {
    const OpenSign sign(surroundings.runtime_folder, app.port(), [&open, at = *address] {
      return OpenNow{.address = at, .notebook = open.notebook().value_or("")};
    });
    surroundings.write_at_once(opened_words(*address, typed->own_window) +
                               (door ? bench_words(*door) : ""));
    if (!typed->no_open && surroundings.show_on_desktop) {
      (void)surroundings.show_on_desktop(*address);
    }
    surroundings.wait_for_stop();
  }
  done_within(
      kLongestEnding,
      [&] {
        if (door) door->stop();
        app.stop();
      },
      [&surroundings] {
        if (surroundings.end_at_once) surroundings.end_at_once(kStoppedEarly);
      });
  return {.out = "Stopped.\n"};
}

}  // namespace keenfall::cli
