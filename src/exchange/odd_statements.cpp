#include "exchange/odd_statements.h"

#include "exchange/text_lines.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <string>
#include <vector>

namespace keenfall::exchange {

namespace {

struct Count {
  std::size_t rows = 0;
  Origin first;
};

// By what is said.
using Counts = std::map<std::string, Count>;

void count(Counts& counts, const std::vector<SaidBy>& said) {
  for (const SaidBy& one : said) {
    const auto [place, is_new] = counts.emplace(one.words, Count{.rows = 0, .first = one.first});
    place->second.rows += one.by.size();
    if (!is_new) place->second.first = std::min(place->second.first, one.first);
  }
}

Counts::const_iterator standing(const Counts& counts) {
  return std::ranges::max_element(counts, [](const auto& one, const auto& other) {
    if (one.second.rows != other.second.rows) return one.second.rows < other.second.rows;
    return one.second.first > other.second.first;
  });
}

void blame_otherwise(const std::string& whose,
                     const std::string& what,
                     const std::vector<SaidBy>& said,
                     const RunDraft& draft,
                     const Counts& counts,
                     ProblemList& problems) {
  if (counts.size() < 2 || said.empty()) return;
  const auto stands = standing(counts);
  const auto is_standing = [&stands](const SaidBy& one) { return one.words == stands->first; };
  const bool says_what_stands = std::ranges::any_of(said, is_standing);
  for (const SaidBy& other : said) {
    if (is_standing(other)) continue;
    const bool is_most = stands->second.rows > counts.at(other.words).rows;
    const std::string sentence = whose + " has the " + what + " " + in_quotes(other.words) +
                                 " here, and " + in_quotes(stands->first) + " in " +
                                 problems.place_in_words(stands->second.first) +
                                 (is_most ? ", as most rows say." : ", where it is said first.");
    problems.blame(says_what_stands ? other.by : draft.parts.all, sentence);
  }
}

std::string key_of_piece(const RunDraft& draft) {
  return draft[Column::blade].text + '\x1F' + draft[Column::specimen].text;
}

std::string piece_in_words(const RunDraft& draft) {
  std::string blade = "Blade " + in_quotes(draft[Column::blade].text);
  const ToldCell& specimen = draft[Column::specimen];
  if (specimen.is_blank()) return blade;
  return blade + ", specimen " + in_quotes(specimen.text) + ",";
}

}  // namespace

void blame_odd_statements(std::span<const RunDraft> drafts, ProblemList& problems) {
  std::map<std::string, Counts> steels;      // by blade
  std::map<std::string, Counts> hardnesses;  // by piece
  for (const RunDraft& draft : drafts) {
    count(steels[draft[Column::blade].text], draft.parts.steels);
    count(hardnesses[key_of_piece(draft)], draft.parts.hardnesses);
  }
  for (const RunDraft& draft : drafts) {
    const std::string& blade = draft[Column::blade].text;
    blame_otherwise(
        "Blade " + in_quotes(blade), "steel", draft.parts.steels, draft, steels[blade], problems);
    blame_otherwise(piece_in_words(draft),
                    "hardness",
                    draft.parts.hardnesses,
                    draft,
                    hardnesses[key_of_piece(draft)],
                    problems);
  }
}

}  // namespace keenfall::exchange
