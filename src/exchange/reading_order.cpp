#include "exchange/reading_order.h"

#include "base/plain_number.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <numeric>
#include <tuple>
#include <vector>

namespace keenfall::exchange {

namespace {

auto place_of(const trials::Reading& reading) {
  return std::tie(reading.series, reading.station, reading.repeat);
}

base::Problem backwards(const RunDraft& draft,
                        const trials::Counted& counted,
                        const trials::Reading& before,
                        const trials::Reading& after) {
  const std::string run = excerpt(draft[Column::run].text);
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "Run " + run + " of blade " + excerpt(draft[Column::blade].text) +
                      " goes back from " + base::plain_number(before.cuts) + " to " +
                      so_many(base::plain_number(after.cuts), counted) +
                      ". Is this a second run? Give it its own name; or sort the rows by " +
                      counted.many + ".",
          .place = {.column = "cuts", .found = base::plain_number(after.cuts)},
          .accepted = counted.many + " that stay equal or rise within a run"};
}

base::Problem recorded_twice(const ProblemList& problems,
                             const RunDraft& draft,
                             const trials::Counted& counted,
                             const ReadingDraft& before,
                             const trials::Reading& after) {
  const std::string repeat = std::to_string(after.repeat.value_or(0));
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "Repeat " + repeat + " at " +
                      so_many(base::plain_number(after.cuts), counted) + " of run " +
                      excerpt(draft[Column::run].text) + " of blade " +
                      excerpt(draft[Column::blade].text) + " stands already in " +
                      problems.place_in_words({before.file, before.reading.line, before.column}) +
                      ". Number it anew, or strike one of the two with a reason.",
          .place = {.column = "repeat", .found = repeat}};
}

}  // namespace

void check_reading_order(const RunDraft& draft,
                         const trials::Counted& counted,
                         ProblemList& problems) {
  const std::vector<ReadingDraft>& readings = draft.readings;
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    if (!readings[i].reading.struck_reason) order.push_back(i);
  }
  std::ranges::stable_sort(order, [&readings](std::size_t one, std::size_t other) {
    return place_of(readings[one].reading) < place_of(readings[other].reading);
  });
  const ReadingDraft* first_back = nullptr;
  const ReadingDraft* before_back = nullptr;
  for (std::size_t i = 1; i < order.size(); ++i) {
    const ReadingDraft& before = readings[order[i - 1]];
    const ReadingDraft& after = readings[order[i]];
    if (place_of(before.reading) != place_of(after.reading)) continue;
    const bool is_back = after.reading.cuts < before.reading.cuts;
    if (is_back && (first_back == nullptr || &after < first_back)) {
      first_back = &after;
      before_back = &before;
    }
    if (after.reading.repeat && after.reading.cuts == before.reading.cuts) {
      problems.add({after.file, after.reading.line, after.column},
                   recorded_twice(problems, draft, counted, before, after.reading));
    }
  }
  if (first_back != nullptr) {
    problems.add({first_back->file, first_back->reading.line, first_back->column},
                 backwards(draft, counted, before_back->reading, first_back->reading));
  }
}

void sort_by_cuts(RunDraft& draft) {
  std::ranges::stable_sort(
      draft.readings, {}, [](const ReadingDraft& reading) { return reading.reading.cuts; });
  std::ranges::stable_sort(draft.events, {}, &trials::Event::cuts);
}

}  // namespace keenfall::exchange
