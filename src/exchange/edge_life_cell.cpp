#include "exchange/edge_life_cell.h"

#include "base/plain_number.h"
#include "exchange/number_cell.h"
#include "exchange/text_lines.h"
#include "trials/counted.h"

#include <algorithm>
#include <array>
#include <string>

namespace keenfall::exchange {

namespace {

constexpr const char* kAccepted =
    "the cuts after which it still passed, such as 40; 40+ where it was never seen to fail; <5 "
    "where it had failed by 5; 40-50 where it failed in between";

base::Problem problem_with(const char* column, std::string_view found, std::string sentence) {
  return {.sentence = std::move(sentence),
          .place = {.column = column, .found = excerpt(found)},
          .accepted = kAccepted};
}

// Zero or more, with nothing behind but a word for what is counted.
std::optional<double> cuts_in(std::string_view text, DecimalMark mark) {
  text = trimmed(text);
  if (text.empty()) return std::nullopt;
  const NumberCell number = number_cell(text, mark);
  if (number.fault != NumberFault::none || number.number < 0) return std::nullopt;
  if (!number.unit.empty() && !trials::counted_in_words(number.unit)) return std::nullopt;
  return number.number;
}

// The rest of the text where it begins, or ends, with one of these words.
template <std::size_t kCount>
std::optional<std::string_view> without_word(std::string_view text,
                                             const std::array<std::string_view, kCount>& before) {
  for (const std::string_view word : before) {
    if (text.size() > word.size() && folded(text.substr(0, word.size())) == folded(word)) {
      return trimmed(text.substr(word.size()));
    }
  }
  return std::nullopt;
}

constexpr std::array<std::string_view, 7> kAtLeast = {
    ">=", "≥", ">", "at least ", "over ", "more than ", "above "};
constexpr std::array<std::string_view, 7> kAtMost = {
    "<=", "≤", "<", "at most ", "under ", "less than ", "below "};

std::optional<EdgeLifeCells> interval_in(std::string_view text, DecimalMark mark) {
  if (const auto rest = without_word(text, std::array<std::string_view, 1>{"between "})) {
    text = *rest;
  }
  for (const std::string_view between : {"–", "—", "..", "…", " to ", " and ", "-"}) {
    const std::size_t at = text.find(between);
    if (at == text.npos || at == 0) continue;
    const auto from = cuts_in(text.substr(0, at), mark);
    const auto to = cuts_in(text.substr(at + between.size()), mark);
    if (from && to) return EdgeLifeCells{.lasted_cuts = *from, .failed_by_cuts = *to};
  }
  return std::nullopt;
}

base::Result<EdgeLifeCells> lasted_in(std::string_view text, DecimalMark mark) {
  if (const auto cuts = cuts_in(text, mark)) return EdgeLifeCells{.lasted_cuts = *cuts};
  if (text.ends_with('+')) {
    if (const auto cuts = cuts_in(text.substr(0, text.size() - 1), mark)) {
      return EdgeLifeCells{.lasted_cuts = *cuts, .is_open = true};
    }
  }
  if (const auto rest = without_word(text, kAtLeast)) {
    if (const auto cuts = cuts_in(*rest, mark)) {
      return EdgeLifeCells{.lasted_cuts = *cuts, .is_open = true};
    }
  }
  if (const auto rest = without_word(text, kAtMost)) {
    if (const auto cuts = cuts_in(*rest, mark)) return EdgeLifeCells{.failed_by_cuts = *cuts};
  }
  if (const auto interval = interval_in(text, mark)) return *interval;
  return base::failed(
      problem_with("lasted",
                   text,
                   "lasted must say how many cuts the edge lasted, not " + in_quotes(text) + "."));
}

trials::Counted counted_in_cells(std::string_view lasted, std::string_view failed_by) {
  const auto counted = trials::counted_in_words(lasted);
  return counted ? *counted : trials::counted_in_words(failed_by).value_or(trials::Counted{});
}

bool is_never(std::string_view text) {
  constexpr std::array<std::string_view, 11> kNever = {
      "", "–", "—", "never", "no", "not", "none", "didnotfail", "notfailed", "na", "n/a"};
  return std::ranges::find(kNever, folded(text)) != kNever.end();
}

}  // namespace

std::string life_as_said(std::string_view cell) {
  const std::string text = excerpt(cell);
  return trials::counted_in_words(cell) ? text : so_many(text, trials::Counted{});
}

base::Result<EdgeLifeCells> edge_life_in(std::string_view lasted,
                                         std::string_view failed_by,
                                         DecimalMark mark) {
  EdgeLifeCells life;
  if (!lasted.empty()) {
    auto read = lasted_in(lasted, mark);
    if (!read) return read;
    life = *read;
  }
  if (!failed_by.empty()) {
    if (is_never(failed_by)) {
      life.is_open = life.is_open || !life.failed_by_cuts;
    } else {
      std::string_view number = failed_by;
      if (const auto rest = without_word(failed_by, kAtMost)) number = *rest;
      const auto cuts = cuts_in(number, mark);
      if (!cuts) {
        return base::failed(
            problem_with("failed_by",
                         failed_by,
                         "failed_by must be the number of cuts by which the edge had failed, not " +
                             in_quotes(failed_by) + "."));
      }
      if (life.is_open || (life.failed_by_cuts && *life.failed_by_cuts != *cuts)) {
        base::Problem problem =
            problem_with("failed_by",
                         failed_by,
                         "lasted says " + in_quotes(lasted) + " and failed_by says " +
                             in_quotes(failed_by) + ": both cannot hold.");
        problem.kind = base::ProblemKind::conflicting;
        return base::failed(std::move(problem));
      }
      life.failed_by_cuts = *cuts;
    }
  }
  if (life.failed_by_cuts && *life.failed_by_cuts <= life.lasted_cuts) {
    const bool is_interval = failed_by.empty();
    return base::failed(problem_with(
        is_interval ? "lasted" : "failed_by",
        is_interval ? lasted : failed_by,
        "The edge cannot have failed by " +
            so_many(base::plain_number(*life.failed_by_cuts), counted_in_cells(lasted, failed_by)) +
            " and still have passed after " + base::plain_number(life.lasted_cuts) + "."));
  }
  if (life.is_open && lasted.empty()) {
    return base::failed(problem_with("failed_by",
                                     failed_by,
                                     "The edge was not seen to fail, but how many cuts it lasted "
                                     "is not said."));
  }
  return life;
}

}  // namespace keenfall::exchange
