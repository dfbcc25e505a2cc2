#include "cli/help_entries.h"

#include "cli/text_layout.h"

#include <cstddef>

namespace keenfall::cli {

std::string entries_text(const std::vector<HelpEntry>& entries, const Look& look) {
  constexpr int kTermColumns = 26;
  std::string text;
  for (const HelpEntry& entry : entries) {
    const int term_columns = columns_of(entry.term);
    const bool fits = term_columns + 2 < kTermColumns;
    std::string lines =
        wrapped(shown_as(entry.meaning, look), {.first = kTermColumns, .rest = kTermColumns}, look);
    if (fits) {
      lines.replace(2, static_cast<std::size_t>(term_columns), entry.term);
      text += lines;
    } else {
      text += "  " + std::string(entry.term) + "\n" + lines;
    }
  }
  return text;
}

}  // namespace keenfall::cli
