#include "exchange/run_drafts.h"

#include "base/plain_number.h"
#include "exchange/cell_words.h"
#include "exchange/run_identity.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <functional>
#include <iterator>
#include <numeric>
#include <utility>

namespace keenfall::exchange {

namespace {

// Beyond so many runs of one name, rows with empty cells are no longer matched to them.
constexpr std::size_t kMostNamesakes = 1000;

bool says_the_same(const ToldCell& told, const RowCell& cell) {
  return cell.number ? told.number == cell.number : !told.number && told.text == cell.text;
}

std::ptrdiff_t filled_arm_cells(const RunDraft& part) {
  return std::ranges::count_if(arm_columns(),
                               [&part](Column column) { return !part[column].is_blank(); });
}

std::string words_of(const ToldCell& cell) {
  return cell.number ? base::plain_number(*cell.number) : cell.text;
}

void add_reason(std::optional<std::string>& kept, const std::string& reason) {
  if (!kept) {
    kept = reason;
  } else if (kept->find(reason) == kept->npos) {
    *kept += "; " + reason;
  }
}

// Drafts are large: sorting them would move each of them again and again.
template <class Before, class Key>
std::vector<std::size_t> sorted_places(const std::vector<RunDraft>& drafts,
                                       Before before,
                                       Key key) {
  std::vector<decltype(key(drafts.front()))> keys;
  keys.reserve(drafts.size());
  for (const RunDraft& draft : drafts) keys.push_back(key(draft));
  std::vector<std::size_t> places(drafts.size());
  std::iota(places.begin(), places.end(), std::size_t{0});
  std::ranges::stable_sort(places,
                           [&](std::size_t a, std::size_t b) { return before(keys[a], keys[b]); });
  return places;
}

template <class T>
void append_all(std::vector<T>& kept, std::vector<T>&& more) {
  kept.insert(
      kept.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

}  // namespace

void RunDrafts::tell(RunDraft& draft, Column column, const ToldCell& cell) {
  ToldCell& kept = draft.told[index_of(column)];
  if (cell.is_blank()) return;
  if (kept.is_blank()) {
    kept = cell;
  } else if (says_otherwise(kept, cell)) {
    if (column == Column::steel) {
      if (!draft.other_steel) draft.other_steel = cell;
    } else if (column == Column::hardness) {
      if (!draft.other_hardness) draft.other_hardness = cell;
    } else {
      remember_two(draft, column, cell);
    }
  }
}

void RunDrafts::remember_two(RunDraft& draft, Column column, const ToldCell& cell) const {
  if (std::ranges::find(draft.contradictions, column, &Contradiction::column) !=
      draft.contradictions.end()) {
    return;
  }
  const ToldCell& kept = draft[column];
  const bool is_kept_first = kept.at < cell.at;
  const ToldCell& first = is_kept_first ? kept : cell;
  const ToldCell& second = is_kept_first ? cell : kept;
  const std::string name(definition_of(column).name);
  draft.contradictions.push_back(
      {.column = column,
       .at = second.at,
       .problem = {
           .kind = base::ProblemKind::conflicting,
           .sentence = run_in_words(draft) + " has " + name + " " + in_quotes(words_of(first)) +
                       " in " + problems_.place_in_words(first.at) + " and " +
                       in_quotes(words_of(second)) + " here. A run has one; are these two runs?",
           .place = {.column = name, .found = excerpt(words_of(second))}}});
}

void RunDrafts::report_contradictions(const RunDraft& draft) {
  for (const Contradiction& one : draft.contradictions) {
    problems_.add_once(name_key_of(draft) + std::string(definition_of(one.column).name),
                       one.at,
                       one.problem,
                       Concerns::others);
    problems_.blame(draft.parts.all, one.problem.sentence);
  }
}

const RunDraft* RunDrafts::begun_by(const TableRow& row) const {
  const auto known = part_of_key_.find(run_key_of(row));
  return known == part_of_key_.end() ? nullptr : &parts_[known->second];
}

RunDraft* RunDrafts::draft_for(const TableRow& row) {
  std::string key = run_key_of(row);
  const auto known = part_of_key_.find(key);
  if (known != part_of_key_.end()) return &parts_[known->second];
  if (parts_.size() >= kMostRuns) {
    problems_.add_once(
        "too many runs",
        row.at,
        {.kind = base::ProblemKind::too_large,
         .sentence = "More than 100,000 runs: does the column run, or one that tells "
                     "edges apart, hold something that changes from row to row?",
         .place = {.column = "run"}});
    return nullptr;
  }
  RunDraft part{.first = row.at};
  for (const Column column : name_columns()) part.told[index_of(column)] = told_cell(row, column);
  for (const Column column : arm_columns()) part.told[index_of(column)] = told_cell(row, column);
  part_of_key_.emplace(std::move(key), parts_.size());
  parts_.push_back(std::move(part));
  return &parts_.back();
}

// The same words on several rows are one edge life, filled down. A strike is of the row's reading
// where it has one.
void RunDrafts::add_edge_life(RunDraft& draft, const TableRow& row) {
  trials::EdgeLife life = *row.edge_life;
  if (!row[Column::reading].number) life.struck_reason = reason_in(row[Column::struck].text);
  const bool is_told = std::ranges::any_of(draft.edge_lives, [&life](trials::EdgeLife told) {
    told.line = life.line;
    return told == life;
  });
  if (!is_told) draft.edge_lives.push_back(std::move(life));
}

void RunDrafts::add(const TableRow& row, const std::optional<trials::Reading>& reading) {
  RunDraft* const draft = draft_for(row);
  if (draft == nullptr) return;
  if (problems_.keeps_blames()) draft->parts.add(row, problems_.current_row());
  for (const Column column : run_columns()) {
    const RowCell& cell = row[column];
    if (cell.is_blank() || says_the_same((*draft)[column], cell)) continue;
    tell(*draft, column, told_cell(row, column));
  }
  if (reading) {
    const bool names_unit = row[Column::unit].is_blank() && !row[Column::reading].text.empty();
    draft->readings.push_back({.reading = *reading,
                               .file = row.at.file,
                               .column = row.at.column,
                               .names_unit = names_unit});
  }
  if (row.edge_life) add_edge_life(*draft, row);
  const RowCell& event = row[Column::event];
  if (!event.is_blank()) {
    draft->events.push_back({.kind = event_kind_of(event.text),
                             .cuts = row[Column::cuts].number.value_or(0),
                             .as_written = std::string(event.text)});
  }
  if (const auto& cell = row[Column::deviation]; !cell.is_blank()) {
    draft->deviations.push_back(std::string(cell.text));
  }
  if (const auto& cell = row[Column::note]; !cell.is_blank()) {
    draft->notes.push_back(std::string(cell.text));
  }
  if (const auto reason = reason_in(row[Column::voided].text)) {
    add_reason(draft->voided_reason, *reason);
  }
}

void RunDrafts::merge_into(RunDraft& draft, RunDraft&& part) {
  for (const Column column : arm_columns()) tell(draft, column, part[column]);
  for (const Column column : run_columns()) tell(draft, column, part[column]);
  if (part.other_steel) tell(draft, Column::steel, *part.other_steel);
  if (part.other_hardness) tell(draft, Column::hardness, *part.other_hardness);
  append_all(draft.readings, std::move(part.readings));
  std::ranges::stable_sort(draft.readings, {}, [](const ReadingDraft& reading) {
    return Origin{reading.file, reading.reading.line, reading.column};
  });
  for (trials::EdgeLife& life : part.edge_lives) {
    const auto is_same = [&life](trials::EdgeLife told) {
      told.line = life.line;
      return told == life;
    };
    if (std::ranges::none_of(draft.edge_lives, is_same)) {
      draft.edge_lives.push_back(std::move(life));
    }
  }
  append_all(draft.events, std::move(part.events));
  append_all(draft.deviations, std::move(part.deviations));
  append_all(draft.notes, std::move(part.notes));
  if (part.voided_reason) add_reason(draft.voided_reason, *part.voided_reason);
  append_all(draft.contradictions, std::move(part.contradictions));
  draft.parts.add_all_of(std::move(part.parts));
  draft.first = std::min(draft.first, part.first);
}

std::vector<RunDraft> RunDrafts::runs() && {
  // The most complete rows found the runs; rows with empty cells then join the one they fit.
  std::vector<RunDraft> runs;
  std::unordered_map<std::string, std::vector<std::size_t>> runs_of_name;
  for (const std::size_t place : sorted_places(parts_, std::greater{}, filled_arm_cells)) {
    RunDraft& part = parts_[place];
    std::vector<std::size_t>& namesakes = runs_of_name[name_key_of(part)];
    std::vector<std::size_t> fitting;
    if (namesakes.size() < kMostNamesakes) {
      std::ranges::copy_if(namesakes, std::back_inserter(fitting), [&runs, &part](std::size_t i) {
        return may_be_one_run(runs[i], part);
      });
    }
    if (fitting.size() == 1) {
      merge_into(runs[fitting.front()], std::move(part));
    } else if (fitting.empty()) {
      namesakes.push_back(runs.size());
      runs.push_back(std::move(part));
    } else {
      report_contradictions(part);
      problems_.stand_in(part.parts.all);
      problems_.add(
          part.first,
          {.kind = base::ProblemKind::conflicting,
           .sentence = run_in_words(part) +
                       ": rows with empty cells fit several runs of this name, which differ "
                       "in their edge, method, medium condition or specimen. Fill in what "
                       "tells them apart, or give each run its own name.",
           .place = {.column = "run", .found = excerpt(part[Column::run].text)}});
      problems_.stand_nowhere();
    }
  }
  for (const RunDraft& run : runs) report_contradictions(run);
  std::vector<RunDraft> in_order;
  in_order.reserve(runs.size());
  for (const std::size_t place :
       sorted_places(runs, std::less{}, [](const RunDraft& run) { return run.first; })) {
    in_order.push_back(std::move(runs[place]));
  }
  return in_order;
}

}  // namespace keenfall::exchange
