#include "benchmarks/peers.h"

#include <fmt/format.h>

#include <filesystem>

namespace keenfall::benchmarks {

namespace {

// Packages of Debian, named where they are missing.
constexpr const char* kNlmePackage = "r-cran-nlme";

bool has_nlme() {
  return measured_program(
             {"Rscript", "-e", "quit(status = !requireNamespace('nlme', quietly = TRUE))"})
      .has_value();
}

bool has_module(const PeerScript& script) {
  return measured_program({script.interpreter, "-c", "import " + script.python_module}).has_value();
}

}  // namespace

std::optional<base::Result<Measured>> measured_peer(const PeerScript& script) {
  if (!is_on_path(script.interpreter)) {
    fmt::print("  skipped: the peer {} needs {}, which is not installed\n",
               script.file,
               script.interpreter);
    return std::nullopt;
  }
  if (script.interpreter == "Rscript" && !has_nlme()) {
    fmt::print(
        "  skipped: the peer {} needs {}, which is not installed\n", script.file, kNlmePackage);
    return std::nullopt;
  }
  if (!script.python_module.empty() && !has_module(script)) {
    fmt::print("  skipped: the peer {} needs python3-{}, which is not installed\n",
               script.file,
               script.python_module);
    return std::nullopt;
  }
  std::vector<std::string> words{
      script.interpreter,
      (std::filesystem::path(KEENFALL_SOURCE_DIR) / "benchmarks" / "peers" / script.file).string()};
  words.insert(words.end(), script.words.begin(), script.words.end());
  return measured_program(words);
}

}  // namespace keenfall::benchmarks
