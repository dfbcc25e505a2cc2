#include "cli/section_text.h"

#include "cli/sentence_text.h"
#include "cli/text_layout.h"

#include <fmt/format.h>
#include <cstddef>
#include <vector>

namespace keenfall::cli {

namespace {

constexpr std::size_t kMostItems = 12;
constexpr Indent kItem = {.first = 2, .rest = 4};

}  // namespace

std::string section_text(const telling::Section& section, const Look& look) {
  std::vector<telling::Sentence> items = section.items;
  const bool is_long = items.size() > kMostItems && section.when_long != telling::WhenLong::kept;
  if (is_long && section.when_long == telling::WhenLong::left_out) return {};
  if (is_long) {
    items.resize(kMostItems);
    items.push_back(telling::plain(
        fmt::format("and {} more; --json holds them all.", section.items.size() - kMostItems)));
  }
  const bool has_lead = !section.lead.words.empty();
  return wrapped(has_lead ? sentence_text(section.lead, look) : shown_as(section.heading, look),
                 {},
                 look) +
         sentences_text(items, kItem, look) + sentences_text(section.remarks, kItem, look);
}

}  // namespace keenfall::cli
