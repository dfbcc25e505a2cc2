#include "benchmarks/peers.h"

#include <fmt/format.h>

#include <filesystem>

namespace keenfall::benchmarks {

namespace {

bool is_r(const PeerScript& script) { return script.interpreter == "Rscript"; }

// The package of Debian that has the library.
std::string package_of(const PeerScript& script) {
  return (is_r(script) ? "r-cran-" : "python3-") + script.library;
}

bool has_library(const PeerScript& script) {
  const std::string asking =
      is_r(script) ? "quit(status = !nzchar(system.file(package = '" + script.library + "')))"
                   : "import " + script.library;
  return measured_program({script.interpreter, is_r(script) ? "-e" : "-c", asking}).has_value();
}

}  // namespace

std::optional<base::Result<Measured>> measured_peer(const PeerScript& script) {
  if (!is_on_path(script.interpreter)) {
    fmt::print("  skipped: the peer {} needs {}, which is not installed\n",
               script.file,
               script.interpreter);
    return std::nullopt;
  }
  if (!script.library.empty() && !has_library(script)) {
    fmt::print("  skipped: the peer {} needs {}, which is not installed\n",
               script.file,
               package_of(script));
    return std::nullopt;
  }
  std::vector<std::string> words{
      script.interpreter,
      (std::filesystem::path(KEENFALL_SOURCE_DIR) / "benchmarks" / "peers" / script.file).string()};
  words.insert(words.end(), script.words.begin(), script.words.end());
  return measured_program(words);
}

}  // namespace keenfall::benchmarks
