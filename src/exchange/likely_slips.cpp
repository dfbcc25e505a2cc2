#include "exchange/likely_slips.h"

#include "base/plain_number.h"
#include "exchange/reading_unit.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <map>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

namespace keenfall::exchange {

namespace {

constexpr double kFarAside = 5;
constexpr double kFarAtAnEnd = 8;
// "ten times", for what is so much more or less than that.
constexpr double kAboutTen = 1.3;
// A checkpoint with more readings is one by a wrongly mapped column.
constexpr std::size_t kMostAtACheckpoint = 50;

struct Seen {
  const ReadingDraft* draft = nullptr;
  double reading = 0;  // in the kind's own unit
};

// The readings at one checkpoint, of one kind, thread and station.
using Checkpoint = std::vector<Seen>;
using Series = std::tuple<const trials::ReadingKind*, std::string, std::string>;

std::map<Series, std::vector<Checkpoint>> checkpoints_of(const RunDraft& draft,
                                                         std::span<const SeriesAsTold> told) {
  std::map<Series, std::vector<Checkpoint>> all;
  for (const ReadingDraft& one : draft.readings) {
    const SeriesAsTold& series = told[one.reading.series];
    if (one.reading.struck_reason || series.kind->use != trials::ReadingUse::curve) continue;
    const double reading = converted_reading(one.reading.reading, series.unit, series.kind->unit);
    if (!(reading > 0)) continue;
    auto& checkpoints = all[{series.kind, series.thread, one.reading.station}];
    const bool is_next =
        checkpoints.empty() || checkpoints.back().front().draft->reading.cuts != one.reading.cuts;
    if (is_next) checkpoints.emplace_back();
    checkpoints.back().push_back({.draft = &one, .reading = reading});
  }
  return all;
}

class Neighbours {
 public:
  void add(double reading) {
    ++count_;
    lowest_ = count_ == 1 ? reading : std::min(lowest_, reading);
    highest_ = std::max(highest_, reading);
  }
  void add_all_of(const Checkpoint& checkpoint, const Seen* besides = nullptr) {
    for (const Seen& one : checkpoint) {
      if (&one != besides) add(one.reading);
    }
  }

  [[nodiscard]] bool is_none() const { return count_ == 0; }
  // How many times as large as the nearest; 1 where it lies among them.
  [[nodiscard]] double times(double reading) const {
    if (reading > highest_) return reading / highest_;
    return reading < lowest_ ? reading / lowest_ : 1;
  }

 private:
  std::size_t count_ = 0;
  double lowest_ = 0;
  double highest_ = 0;
};

std::string times_in_words(double times) {
  constexpr std::array<std::pair<double, std::string_view>, 3> kPowers = {
      {{10, "ten times"}, {100, "a hundred times"}, {1000, "a thousand times"}}};
  constexpr std::array<std::string_view, 3> kParts = {
      "a tenth of", "a hundredth of", "a thousandth of"};
  const double ratio = times > 1 ? times : 1 / times;
  for (std::size_t i = 0; i < kPowers.size(); ++i) {
    const double off =
        ratio > kPowers[i].first ? ratio / kPowers[i].first : kPowers[i].first / ratio;
    if (off > kAboutTen) continue;
    return std::string(times > 1 ? kPowers[i].second : kParts[i]);
  }
  const std::string number = base::with_figures(ratio, 2);
  return times > 1 ? number + " times" : "one part in " + number + " of";
}

class LikelySlips {
 public:
  LikelySlips(const trials::Counted& counted,
              std::span<const std::string> headers,
              ProblemList& problems)
      : counted_(counted), headers_(headers), problems_(problems) {}

  void look_at(const trials::ReadingKind& kind, const std::vector<Checkpoint>& checkpoints) {
    const auto is_too_large = [](const Checkpoint& one) { return one.size() > kMostAtACheckpoint; };
    if (std::ranges::any_of(checkpoints, is_too_large)) return;
    for (std::size_t i = 0; i < checkpoints.size(); ++i) {
      for (const Seen& seen : checkpoints[i]) look_at(kind, checkpoints, i, seen);
    }
    look_for_copies(checkpoints);
  }

 private:
  void look_at(const trials::ReadingKind& kind,
               const std::vector<Checkpoint>& checkpoints,
               std::size_t at,
               const Seen& seen) {
    const std::size_t last = checkpoints.size() - 1;
    const bool is_at_an_end = at == 0 || at == last;
    Neighbours neighbours;
    neighbours.add_all_of(checkpoints[at], &seen);
    if (neighbours.is_none() && at == 0 && last == 1 && checkpoints[1].size() == 1) return;
    for (std::size_t i = at < 2 ? 0 : at - 2; i <= std::min(last, at + 2); ++i) {
      const std::size_t away = i > at ? i - at : at - i;
      if (away == 1 || (away == 2 && is_at_an_end)) neighbours.add_all_of(checkpoints[i]);
    }
    if (neighbours.is_none()) return;
    const double times = neighbours.times(seen.reading);
    const bool is_more_blunt = (times > 1) == (kind.keener_when == trials::KeenerWhen::lower);
    const bool is_as_edges_go = (at == 0 && !is_more_blunt) || (at == last && is_more_blunt);
    const double limit = is_at_an_end && is_as_edges_go ? kFarAtAnEnd : kFarAside;
    if (std::max(times, 1 / times) < limit) return;
    notice(*seen.draft,
           base::plain_number(seen.draft->reading.reading) + " is about " + times_in_words(times) +
               " its neighbours in the run: a slip of the decimal point? It is taken as it "
               "stands.");
  }

  void look_for_copies(const std::vector<Checkpoint>& checkpoints) {
    std::vector<std::size_t> sizes;
    std::vector<std::pair<const ReadingDraft*, const ReadingDraft*>> copies;
    std::size_t readings = 0;
    for (const Checkpoint& checkpoint : checkpoints) {
      sizes.push_back(checkpoint.size());
      readings += checkpoint.size();
    }
    if (readings == checkpoints.size()) return;
    std::ranges::sort(sizes);
    const std::size_t usual = sizes[(sizes.size() - 1) / 2];
    std::vector<std::pair<const ReadingDraft*, const ReadingDraft*>> beyond_usual;
    for (const Checkpoint& checkpoint : checkpoints) {
      for (const auto& copy : copies_in(checkpoint)) {
        copies.push_back(copy);
        if (checkpoint.size() > usual) beyond_usual.push_back(copy);
      }
    }
    const bool is_all_twice = checkpoints.size() > 1 && copies.size() * 2 == readings;
    for (const auto& [copy, first] : is_all_twice ? copies : beyond_usual) {
      notice(*copy,
             "The same reading at " + so_many(base::plain_number(copy->reading.cuts), counted_) +
                 " of this run stands in " +
                 problems_.place_in_words({first->file, first->reading.line, first->column}) +
                 " already. Both are taken, as two readings; if the row was copied by mistake, "
                 "remove one.");
    }
  }

  // Of those that are not numbered, each with the first like it.
  static std::vector<std::pair<const ReadingDraft*, const ReadingDraft*>> copies_in(
      const Checkpoint& checkpoint) {
    std::vector<std::pair<const ReadingDraft*, const ReadingDraft*>> copies;
    std::map<double, const ReadingDraft*> firsts;
    for (const Seen& seen : checkpoint) {
      if (seen.draft->reading.repeat) continue;
      const auto [first, is_new] = firsts.emplace(seen.reading, seen.draft);
      if (!is_new) copies.emplace_back(seen.draft, first->second);
    }
    return copies;
  }

  void notice(const ReadingDraft& draft, std::string sentence) {
    problems_.notice(
        {draft.file, draft.reading.line, draft.column}, headers_[draft.file], std::move(sentence));
  }

  const trials::Counted& counted_;
  std::span<const std::string> headers_;
  ProblemList& problems_;
};

}  // namespace

void notice_likely_slips(const RunDraft& draft,
                         std::span<const SeriesAsTold> told,
                         const trials::Counted& counted,
                         std::span<const std::string> headers,
                         ProblemList& problems) {
  if (draft.voided_reason || draft.readings.size() < 2) return;
  LikelySlips slips(counted, headers, problems);
  for (const auto& [series, checkpoints] : checkpoints_of(draft, told)) {
    slips.look_at(*std::get<0>(series), checkpoints);
  }
}

}  // namespace keenfall::exchange
