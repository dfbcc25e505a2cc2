#include "cli/source_list.h"

#include "cli/text_layout.h"

#include <algorithm>

namespace keenfall::cli {

void SourceList::add(const materials::Provenance& from) {
  if (std::ranges::find(keys_, from.source_key) == keys_.end()) {
    keys_.emplace_back(from.source_key);
  }
}

std::string SourceList::text(const Look& look) const {
  if (keys_.empty()) return "";
  std::string lines = "Sources\n";
  for (const std::string& key : keys_) {
    const materials::Source* source = materials::find_source(key);
    std::string line = key + ": ";
    if (source != nullptr) line += source->what;
    if (source != nullptr && !source->address.empty()) {
      line += " (" + std::string(source->address) + ")";
    }
    lines += wrapped(shown_as(line, look), {.first = 2, .rest = 4}, look);
  }
  return lines;
}

std::string mark_letter(materials::TrustMark mark) {
  switch (mark) {
    case materials::TrustMark::seen:
      return "s";
    case materials::TrustMark::seen_second_hand:
      return "2";
    case materials::TrustMark::from_memory:
      return "m";
    case materials::TrustMark::derived:
      return "d";
    case materials::TrustMark::guessed:
      return "g";
    case materials::TrustMark::tuned:
      return "t";
    case materials::TrustMark::declared:
      return "o";
  }
  return "";
}

std::string mark_letters_explained(const Look& look) {
  return wrapped(
      "s: seen at its source. m: from memory, not verified. d: derived from a value that was seen. "
      "2: seen at second hand.",
      {},
      look);
}

}  // namespace keenfall::cli
