#include "cli/bench_opening.h"

#include "cli/option_numbers.h"
#include "server/http_message.h"
#include "server/qr_code.h"

#include <filesystem>
#include <system_error>
#include <utility>
#include <vector>

namespace keenfall::cli {

namespace {

// Where the devices are kept; empty where nothing can be.
std::string devices_file(const std::string& state_folder) {
  if (state_folder.empty()) return {};
  const std::filesystem::path folder = std::filesystem::path(state_folder) / "keenfall";
  std::error_code fault;
  std::filesystem::create_directories(folder, fault);
  if (fault) return {};
  std::filesystem::permissions(folder, std::filesystem::perms::owner_all, fault);
  return folder / "devices.json";
}

std::vector<base::Problem> problems_of(const TypedBench& typed) {
  const auto belongs_to = [](const char* option, const char* other) {
    return base::Problem{.kind = base::ProblemKind::missing,
                         .sentence = std::string(option) + " says nothing without " + other + ".",
                         .place = {.column = option}};
  };
  std::vector<base::Problem> problems;
  if (!typed.is_open) {
    if (typed.port) problems.push_back(belongs_to("--bench-port", "--bench"));
    if (typed.name) problems.push_back(belongs_to("--bench-name", "--bench"));
    if (typed.certificate) problems.push_back(belongs_to("--bench-certificate", "--bench"));
    if (typed.key) problems.push_back(belongs_to("--bench-key", "--bench"));
  } else if (typed.certificate && !typed.key) {
    problems.push_back(belongs_to("--bench-certificate", "--bench-key"));
  } else if (typed.key && !typed.certificate) {
    problems.push_back(belongs_to("--bench-key", "--bench-certificate"));
  }
  return problems;
}

}  // namespace

base::ResultOrProblems<std::optional<server::BenchDoor::Settings>> bench_asked_for(
    const TypedBench& typed, const Surroundings& surroundings) {
  using Asked = std::optional<server::BenchDoor::Settings>;
  if (auto problems = problems_of(typed); !problems.empty()) {
    return tl::unexpected(std::move(problems));
  }
  if (!typed.is_open) return Asked();
  server::BenchDoor::Settings settings{.devices = {.file = devices_file(surroundings.state_folder),
                                                   .utc_now = surroundings.utc_now}};
  if (typed.port) {
    const auto port = port_of("--bench-port", *typed.port);
    if (!port) return base::failed_by(port.error());
    settings.port = *port;
  }
  if (typed.name) settings.names.push_back(server::in_lower_case(*typed.name));
  if (typed.certificate) {
    settings.certificate = {.chain_file = *typed.certificate, .key_file = *typed.key};
  }
  return Asked(std::move(settings));
}

std::string bench_words(server::BenchDoor& door) {
  (void)door.devices().new_code();
  const wire::DevicesTold told = door.told();
  std::string words;
  if (!told.letting_in) {
    words = "Devices would be let in, but this machine is on no network.\n";
  } else {
    words = "A device at the bench is let in at " + told.addresses.front() +
            "/bench with the code " + told.letting_in->code +
            ",\nonce, for ten minutes. Its camera may read this instead; "
            "more codes are under Devices.\n\n" +
            server::qr_drawn(told.letting_in->squares) + "\n";
  }
  for (const std::string& caution : told.cautions) words += caution + "\n";
  return words;
}

}  // namespace keenfall::cli
