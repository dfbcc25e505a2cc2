#include "cli/open_command.h"

#include "cli/option_numbers.h"
#include "cli/typed_options.h"
#include "server/answers.h"
#include "server/app.h"
#include "wire/app_json.h"

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

wire::OpenNotebookTold told(workbench::NotebookPlace place) {
  return {.name = std::move(place.name),
          .path = std::move(place.path),
          .uid = std::move(place.uid),
          .may_write = place.may_write,
          .why_not = std::move(place.why_not)};
}

void add_app_route(server::Routes& routes, const wire::AppTold& told_app) {
  routes.add(
      "GET", "/api/v1/app", [told_app](const server::HttpRequest&, const server::PathParameters&) {
        return server::json_answer(wire::app_to_json(told_app));
      });
}

// One line, by which a person or a program finds it.
std::string opened_words(const std::string& address) {
  return "Keenfall is open at " + address + " until Ctrl-C.\n";
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
  wire::AppTold told_app{.program_version = surroundings.program_version,
                         .folder = surroundings.working_folder};
  if (!typed->positionals.empty()) {
    const std::string& path = typed->positionals.front();
    auto place = surroundings.use_cases.notebook.place(path);
    if (!place) return refused({place.error()}, kNothingOpened);
    told_app.notebook = told(std::move(*place));
  }
  server::App app({.port = *port, .work = {.threads_each = surroundings.threads_at_hand}});
  add_app_route(app.routes(), told_app);
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
