// A resharpening as tests ask it, by its options.
#pragma once

#include "cli/resharpen_command.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>
#include <vector>

namespace keenfall::cli {

using Words = std::vector<std::string>;

// The worked number of docs/methods/resharpening.md.
inline Words an_edge(const Words& more = {}) {
  Words words = {
      "--steel=1.2379", "--angle=17deg-per-side", "--thickness=300um", "--land=3um", "--chip=12um"};
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

inline Outcome resharpen(const Words& words, const Look& look = {.width = 100}) {
  Surroundings surroundings;
  surroundings.look = look;
  surroundings.program_version = "0.1.0";
  return resharpen_command(words, surroundings);
}

inline std::string text_of(const Words& more, const Look& look = {.width = 100}) {
  return resharpen(an_edge(more), look).out;
}

// Without the breaks of lines.
inline std::string as_one_line(std::string text) {
  std::ranges::replace(text, '\n', ' ');
  return text;
}

inline nlohmann::json json_of(const Words& more) {
  Words words = an_edge(more);
  words.emplace_back("--json");
  return nlohmann::json::parse(resharpen(words).out);
}

}  // namespace keenfall::cli
