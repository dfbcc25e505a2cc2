#include "exchange/trial_builder.h"

#include "exchange/blade_statements.h"
#include "exchange/cell_words.h"
#include "exchange/likely_slips.h"
#include "exchange/odd_statements.h"
#include "exchange/odd_units.h"
#include "exchange/reading_order.h"
#include "exchange/reading_remarks.h"
#include "exchange/run_remarks.h"
#include "exchange/series_settlement.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <iterator>
#include <string_view>
#include <unordered_set>
#include <utility>
#include <vector>

namespace keenfall::exchange {

namespace {

std::optional<trials::PerSideAngle> angle_in(const ToldCell& cell) {
  if (!cell.number) return std::nullopt;
  return trials::PerSideAngle{*cell.number};
}

std::optional<int> whole_number_in(const ToldCell& cell) {
  if (!cell.number) return std::nullopt;
  return static_cast<int>(*cell.number);
}

std::vector<std::string> without_repeats(const std::vector<std::string>& texts) {
  std::vector<std::string> kept;
  std::unordered_set<std::string> seen;
  std::ranges::copy_if(texts, std::back_inserter(kept), [&seen](const std::string& text) {
    return seen.insert(text).second;
  });
  return kept;
}

// The same words at the same cut are one event, filled down over several rows.
std::vector<trials::Event> without_repeats(const std::vector<trials::Event>& events) {
  std::vector<trials::Event> kept;
  std::unordered_set<std::string> words_at_cut;
  double cut = -1;
  for (const trials::Event& event : events) {
    if (event.cuts != cut) words_at_cut.clear();
    cut = event.cuts;
    if (words_at_cut.insert(event.as_written).second) kept.push_back(event);
  }
  return kept;
}

trials::Arm arm_of(const RunDraft& draft) {
  const std::string& method = draft[Column::method].text;
  const trials::Motion motion = motion_of(method);
  return {.blade = draft[Column::blade].text,
          .edge = {.bevel_angle = angle_in(draft[Column::bevel_angle]),
                   .apex_angle = angle_in(draft[Column::apex_angle]),
                   .finish = draft[Column::finish].text,
                   .thickness_behind_edge_mm = draft[Column::thickness_behind_edge].number},
          .medium = {.name = draft[Column::medium].text,
                     .condition = draft[Column::medium_condition].text},
          .method = {.motion = motion,
                     .as_written = motion == trials::Motion::not_recorded ? method : "",
                     .cut_length_mm = draft[Column::cut_length].number,
                     .edge_used_mm = draft[Column::edge_used].number,
                     .board = draft[Column::board].text}};
}

trials::Run run_of(RunDraft& draft) {
  trials::Run run{.name = draft[Column::run].text,
                  .arm = arm_of(draft),
                  .specimen = draft[Column::specimen].text,
                  .block = draft[Column::block].text,
                  .order = whole_number_in(draft[Column::order]),
                  .medium_lot = draft[Column::medium_lot].text,
                  .operator_name = draft[Column::operator_name].text,
                  .date = draft[Column::date].text,
                  .sharpenings_since_new = whole_number_in(draft[Column::sharpenings_since_new]),
                  .edge_lives = draft.edge_lives,
                  .events = without_repeats(draft.events),
                  .deviations = without_repeats(draft.deviations),
                  .notes = without_repeats(draft.notes),
                  .voided_reason = draft.voided_reason};
  run.readings.reserve(draft.readings.size());
  for (ReadingDraft& reading : draft.readings) run.readings.push_back(std::move(reading.reading));
  draft.readings = {};
  return run;
}

// "1000", "#1000": nothing beside the number says what it counts.
bool is_bare_grit_number(std::string_view text) {
  if (text.starts_with('#')) text = trimmed(text.substr(1));
  return !text.empty() && text.find_first_not_of("0123456789.,") == text.npos &&
         text.find_first_of("0123456789") != text.npos;
}

void append_remarks(trials::Trial& trial, const std::vector<std::string>& remarks) {
  trial.remarks.insert(trial.remarks.end(), remarks.begin(), remarks.end());
}

}  // namespace

void TrialBuilder::add(const TableRow& row, const MatchedColumns& file_columns) {
  counting_.take(row, file_columns);
  std::optional<trials::Reading> reading;
  if (row[Column::reading].number) {
    reading = register_.take(row, file_columns);
  } else if (const RowCell& struck = row[Column::struck];
             reason_in(struck.text) && !row.edge_life) {
    problems_.add(row.origin_of(Column::struck),
                  {.sentence = "A reading is struck here, but the row has none.",
                   .place = {.column = file_columns.header_of(Column::struck),
                             .found = excerpt(struck.text)}});
  } else if (const RowCell& doubtful = row[Column::doubtful]; reason_in(doubtful.text)) {
    problems_.add(row.origin_of(Column::doubtful),
                  {.sentence = "A reading is doubted here, but the row has none.",
                   .place = {.column = file_columns.header_of(Column::doubtful),
                             .found = excerpt(doubtful.text)}});
  }
  drafts_.add(row, reading);
  if (reading_headers_.size() <= row.at.file) {
    reading_headers_.resize(row.at.file + 1);
    reading_headers_.back() = file_columns.header_of(Column::reading);
    finish_headers_.resize(row.at.file + 1);
    finish_headers_.back() = file_columns.header_of(Column::finish);
  }
}

// A unit that stands below readings without one does not hold for them (odd_units.h).
void TrialBuilder::note_left_out(const TableRow& row) {
  const RunDraft* const draft = drafts_.begun_by(row);
  const bool is_begun_without_unit =
      draft != nullptr && !draft->readings.empty() &&
      register_.told()[draft->readings.front().reading.series].unit.empty();
  left_out_.note(row, is_begun_without_unit);
}

// Each number once.
void TrialBuilder::notice_bare_finishes(std::span<const RunDraft> drafts) {
  std::unordered_set<std::string> told;
  for (const RunDraft& draft : drafts) {
    const ToldCell& finish = draft[Column::finish];
    if (!is_bare_grit_number(finish.text) || !told.insert(finish.text).second) continue;
    problems_.notice(finish.at,
                     finish_headers_[finish.at.file],
                     in_quotes(finish.text) +
                         " does not say of which grit system it is, so it cannot be compared: "
                         "FEPA-F, FEPA-P, JIS or CAMI, or a size in µm? Write it with that, as in "
                         "JIS 1000 or 9 µm. As it stands it is kept as it was written.");
  }
}

trials::Trial TrialBuilder::finish(std::string name) && {
  trials::Trial trial{.name = std::move(name), .counted = counting_.found()};
  SeriesSettlement settlement(register_, problems_);
  std::vector<RunDraft> drafts = std::move(drafts_).runs();
  trial.blades = blades_told(drafts, problems_);
  if (problems_.keeps_blames()) {
    if (!problems_.empty()) blame_odd_statements(drafts, problems_);
    left_out_.blame_runs(drafts, register_.told(), problems_);
    if (problems_.empty()) left_out_.check_units(drafts, register_, problems_);
  }
  if (problems_.empty()) notice_bare_finishes(drafts);
  report_odd_units(drafts, reading_headers_, register_, problems_);
  const std::vector<std::string> split_runs = remarks_on_split_runs(drafts);
  for (RunDraft& draft : drafts) {
    problems_.stand_in(draft.parts.all);
    settlement.fill_blanks(draft.readings);
    check_reading_order(draft, trial.counted, problems_);
    problems_.stand_nowhere();
    sort_by_cuts(draft);
    if (problems_.empty()) {
      notice_likely_slips(draft, register_.told(), trial.counted, reading_headers_, problems_);
    }
    trial.runs.push_back(run_of(draft));
  }
  settlement.settle(trial);
  append_remarks(trial, split_runs);
  append_remarks(trial, remarks_on_names(trial));
  append_remarks(trial, remarks_on_angles(trial));
  append_remarks(trial, remarks_on_threads(trial));
  append_remarks(trial, remarks_on_units(trial));
  append_remarks(trial, remarks_on_gaps(trial));
  append_remarks(trial, remarks_on_far_readings(trial));
  append_remarks(trial, problems_.noticed_in_words());
  return trial;
}

}  // namespace keenfall::exchange
