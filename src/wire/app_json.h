// What is open, as JSON (docs/wire/api.json, App and Stopped).
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace keenfall::wire {

struct OpenNotebookTold {
  std::string name;  // of the file
  std::string path;  // whole
  std::string uid;
  std::string id;  // by which requests say that they mean it; of the uid and the path
  bool may_write = true;
  std::string why_not = {};  // a sentence; where it may not
};

struct AppTold {
  std::string program_version;
  std::optional<OpenNotebookTold> notebook = std::nullopt;
  std::vector<std::string> cautions = {};  // the safety lines
  std::string folder;                      // where notebooks are made where only a name is given
};

[[nodiscard]] std::string app_to_json(const AppTold& app);

// {"sentence": ...}: what is said as Keenfall is stopped.
[[nodiscard]] std::string stopped_to_json(const std::string& sentence);

}  // namespace keenfall::wire
