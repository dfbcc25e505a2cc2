#include "exchange/run_drafts.h"

#include "base/plain_number.h"
#include "exchange/cell_words.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <cstring>
#include <functional>
#include <iterator>
#include <utility>

namespace keenfall::exchange {

namespace {

constexpr std::array kNameColumns = {Column::blade, Column::medium, Column::run};

constexpr std::array kArmColumns = {Column::specimen,
                                    Column::bevel_angle,
                                    Column::apex_angle,
                                    Column::finish,
                                    Column::thickness_behind_edge,
                                    Column::method,
                                    Column::cut_length,
                                    Column::edge_used,
                                    Column::board,
                                    Column::medium_condition};

constexpr std::array kRunColumns = {Column::steel,
                                    Column::hardness,
                                    Column::medium_lot,
                                    Column::block,
                                    Column::order,
                                    Column::operator_name,
                                    Column::date,
                                    Column::sharpenings_since_new};

// Beyond so many runs of one name, rows with empty cells are no longer matched to them.
constexpr std::size_t kMostNamesakes = 1000;

// Cells hold no control characters, so these cannot be confused with what they say.
constexpr char kCellEnd = '\x1F';
constexpr char kNumberFollows = '\x1E';

void append_cell(std::string& key, const RowCell& cell) {
  if (cell.number) {
    std::array<char, sizeof(double)> bytes{};
    std::memcpy(bytes.data(), &*cell.number, bytes.size());
    key += kNumberFollows;
    key.append(bytes.data(), bytes.size());
  } else {
    key += cell.text;
  }
  key += kCellEnd;
}

std::string key_of(const TableRow& row) {
  std::string key;
  for (const Column column : kNameColumns) append_cell(key, row[column]);
  for (const Column column : kArmColumns) append_cell(key, row[column]);
  return key;
}

std::string name_key_of(const RunDraft& part) {
  std::string key;
  for (const Column column : kNameColumns) key += part[column].text + kCellEnd;
  return key;
}

ToldCell told_cell(const TableRow& row, Column column) {
  const RowCell& cell = row[column];
  const Origin at = cell.is_blank() ? row.at : row.origin_of(column);
  if (cell.number) return {.text = "", .number = cell.number, .at = at};
  return {.text = std::string(cell.text), .number = std::nullopt, .at = at};
}

bool says_otherwise(const ToldCell& one, const ToldCell& other) {
  return !one.is_blank() && !other.is_blank() &&
         (one.text != other.text || one.number != other.number);
}

bool says_the_same(const ToldCell& told, const RowCell& cell) {
  return cell.number ? told.number == cell.number : !told.number && told.text == cell.text;
}

bool may_be_one_run(const RunDraft& one, const RunDraft& other) {
  return std::ranges::none_of(kArmColumns, [&one, &other](Column column) {
    return says_otherwise(one[column], other[column]);
  });
}

std::ptrdiff_t filled_arm_cells(const RunDraft& part) {
  return std::ranges::count_if(kArmColumns,
                               [&part](Column column) { return !part[column].is_blank(); });
}

std::string words_of(const ToldCell& cell) {
  return cell.number ? base::plain_number(*cell.number) : cell.text;
}

std::string run_in_words(const RunDraft& draft) {
  return "Run " + in_quotes(draft[Column::run].text) + " of blade " +
         in_quotes(draft[Column::blade].text) + " in " + in_quotes(draft[Column::medium].text);
}

void add_reason(std::optional<std::string>& kept, const std::string& reason) {
  if (!kept) {
    kept = reason;
  } else if (kept->find(reason) == kept->npos) {
    *kept += "; " + reason;
  }
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
      report_two(draft, column, cell);
    }
  }
}

void RunDrafts::report_two(const RunDraft& draft, Column column, const ToldCell& cell) {
  const ToldCell& kept = draft[column];
  const bool is_kept_first = kept.at < cell.at;
  const ToldCell& first = is_kept_first ? kept : cell;
  const ToldCell& second = is_kept_first ? cell : kept;
  const std::string name(definition_of(column).name);
  problems_.add_once(
      name_key_of(draft) + name,
      second.at,
      {.kind = base::ProblemKind::conflicting,
       .sentence = run_in_words(draft) + " has " + name + " " + in_quotes(words_of(first)) +
                   " in " + problems_.place_in_words(first.at) + " and " +
                   in_quotes(words_of(second)) + " here. A run has one; are these two runs?",
       .place = {.column = name, .found = excerpt(words_of(second))}});
}

RunDraft* RunDrafts::draft_for(const TableRow& row) {
  std::string key = key_of(row);
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
  for (const Column column : kNameColumns) part.told[index_of(column)] = told_cell(row, column);
  for (const Column column : kArmColumns) part.told[index_of(column)] = told_cell(row, column);
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
  for (const Column column : kRunColumns) {
    const RowCell& cell = row[column];
    if (cell.is_blank() || says_the_same((*draft)[column], cell)) continue;
    tell(*draft, column, told_cell(row, column));
  }
  if (reading) {
    draft->readings.push_back({.reading = *reading, .file = row.at.file, .column = row.at.column});
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
  for (const Column column : kArmColumns) tell(draft, column, part[column]);
  for (const Column column : kRunColumns) tell(draft, column, part[column]);
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
  draft.first = std::min(draft.first, part.first);
}

std::vector<RunDraft> RunDrafts::runs() && {
  // The most complete rows found the runs; rows with empty cells then join the one they fit.
  std::ranges::stable_sort(parts_, std::ranges::greater{}, filled_arm_cells);
  std::vector<RunDraft> runs;
  std::unordered_map<std::string, std::vector<std::size_t>> runs_of_name;
  for (RunDraft& part : parts_) {
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
      problems_.add(
          part.first,
          {.kind = base::ProblemKind::conflicting,
           .sentence = run_in_words(part) +
                       ": rows with empty cells fit several runs of this name, which differ "
                       "in their edge, method, medium condition or specimen. Fill in what "
                       "tells them apart, or give each run its own name.",
           .place = {.column = "run", .found = excerpt(part[Column::run].text)}});
    }
  }
  std::ranges::stable_sort(runs, {}, &RunDraft::first);
  return runs;
}

}  // namespace keenfall::exchange
