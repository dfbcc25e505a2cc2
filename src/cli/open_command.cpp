#include "cli/open_command.h"

#include "cli/hand.h"
#include "cli/option_numbers.h"
#include "cli/typed_options.h"
#include "server/app.h"
#include "server/app_parts.h"
#include "workbench/open_app.h"

#include <cstdint>
#include <optional>
#include <utility>

namespace keenfall::cli {

namespace {

constexpr const char* kNothingOpened = "nothing was opened";

base::Result<std::optional<std::uint16_t>> port_of(const std::optional<std::string>& typed) {
  constexpr CountRange kPorts{.least = 1, .most = 65535};
  if (!typed) return std::optional<std::uint16_t>();
  return count_of("--port", *typed, kPorts).map([](long port) {
    return std::optional(static_cast<std::uint16_t>(port));
  });
}

// One line, by which a person or a program finds it.
std::string opened_words(const std::string& address) {
  return "Keenfall is open at " + address + " until Ctrl-C.\n";
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
  const auto port = port_of(typed->port);
  if (!port) return wrong_usage({port.error()}, "open");
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
  settings.notebook = *notebook;
  workbench::OpenApp open(std::move(settings));
  server::App app({.port = *port, .work = {.threads_each = surroundings.threads_at_hand}});
  server::add_app_routes({.routes = app.routes(), .works = app.works(), .open = open});
  const auto address = app.begin();
  if (!address) return refused({address.error()}, kNothingOpened);
  surroundings.write_at_once(opened_words(*address));
  if (!typed->no_open && surroundings.show_on_desktop) {
    (void)surroundings.show_on_desktop(*address);
  }
  surroundings.wait_for_stop();
  app.stop();
  return {.out = "Stopped.\n"};
}

}  // namespace keenfall::cli
