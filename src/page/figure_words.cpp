#include "page/figure_words.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>
#include <set>

namespace keenfall::page {

std::string key_words(const std::vector<telling::ArmName>& names,
                      const std::vector<std::size_t>& arms) {
  if (!telling::labels_need_a_key(names)) return {};
  std::string words;
  std::set<std::string> said;
  for (const std::size_t arm : arms) {
    if (!said.insert(names[arm].label).second) continue;
    words += fmt::format("{}{}: {}", words.empty() ? " " : "; ", names[arm].label, names[arm].name);
  }
  return words + ".";
}

std::string some_of(const std::vector<std::string>& sentences) {
  constexpr std::size_t kMostSaid = 8;
  std::string words;
  const std::size_t said = std::min(sentences.size(), kMostSaid);
  for (std::size_t i = 0; i < said; ++i) words += (i == 0 ? "" : "; ") + sentences[i];
  if (said < sentences.size()) {
    words += fmt::format("; and {} more in the table", sentences.size() - said);
  }
  return words + ".";
}

}  // namespace keenfall::page
