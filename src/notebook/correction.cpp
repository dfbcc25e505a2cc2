#include "notebook/correction.h"

#include "base/plain_number.h"
#include "materials/units.h"
#include "notebook/part_cells.h"
#include "notebook/row_writers.h"
#include "notebook/run_rows.h"
#include "notebook/trial_words.h"

#include <algorithm>
#include <iterator>
#include <vector>

namespace keenfall::notebook {

namespace {

base::Problem bad_value(const std::string& sentence, const std::string& accepted) {
  return {.kind = base::ProblemKind::bad_value, .sentence = sentence, .accepted = accepted};
}

// Under its usual name; a mass stands for the force that it weighs, as in tables.
std::string unit_of(const CorrectedReading& corrected, const trials::ReadingSeries& series) {
  if (corrected.unit.empty()) return series.unit;
  const materials::Unit* const unit = materials::find_unit(corrected.unit);
  const materials::Unit* const read_in = materials::find_unit(series.unit);
  if (unit == nullptr || read_in == nullptr) return corrected.unit;
  const bool is_weight = unit->dimension == materials::Dimension::mass &&
                         read_in->dimension == materials::Dimension::force;
  const materials::Unit* const weight =
      is_weight ? materials::find_unit(std::string(unit->name) + "f") : nullptr;
  return std::string(weight == nullptr ? unit->name : weight->name);
}

std::string with_unit(double reading, const std::string& unit) {
  return base::plain_number(reading) + " " + unit;
}

// As the rules of taking a table in have it.
std::optional<base::Problem> problem_with(const CorrectedReading& corrected,
                                          const trials::Reading& reading,
                                          const trials::ReadingSeries& series) {
  const trials::ReadingKind& kind = series.kind;
  const std::string unit = unit_of(corrected, series);
  if (unit != series.unit && !materials::convert(1, unit, series.unit)) {
    return bad_value("A " + kind.words + " cannot be in \"" + unit + "\".",
                     series.unit + ", or a unit that converts to it");
  }
  const double number = corrected.reading;
  if (auto problem = trials::problem_of_reading(kind, number, unit)) return problem;
  if (number == reading.reading && unit == series.unit) {
    return base::Problem{.kind = base::ProblemKind::conflicting,
                         .sentence = "It reads " + with_unit(number, unit) + " already.",
                         .accepted = "what was read instead"};
  }
  return std::nullopt;
}

// The place of the trial's series like that one in this unit; a new one where there is none.
std::size_t series_in(RowWriters& writers,
                      const TrialRows& rows,
                      trials::ReadingSeries series,
                      const std::string& unit) {
  series.unit = unit;
  const std::vector<trials::ReadingSeries>& kept = rows.trial.series;
  const auto found = std::ranges::find(kept, series);
  if (found == kept.end()) {
    Row row{rows.trial_id, as_whole(kept.size())};
    add_kind(row, series.kind);
    row.insert(row.end(), {series.unit, series.thread, series.thread_lot});
    writers["series"].insert(row);
  }
  return static_cast<std::size_t>(found - kept.begin());
}

}  // namespace

std::optional<base::Problem> correct(SQLite::Database& database,
                                     const TrialRows& rows,
                                     const ReadingPlace& place,
                                     const Correction& correction,
                                     Struck& struck,
                                     std::string& what) {
  const trials::Run& run = rows.trial.runs.at(place.run);
  const trials::Reading& reading = run.readings.at(place.reading);
  const trials::ReadingSeries& series = rows.trial.series.at(reading.series);
  const CorrectedReading& corrected = correction.corrected;
  const std::string unit = unit_of(corrected, series);
  struck.readings = 1;
  struck.instead = with_unit(corrected.reading, unit);
  what = "correct " + with_unit(reading.reading, series.unit) + " to " + *struck.instead + " at " +
         base::plain_number(reading.cuts) + " in " + words_of(run) + ", trial " + rows.trial.name;
  if (auto problem = problem_with(corrected, reading, series)) return problem;
  RowWriters writers(database);
  trials::Reading instead = reading;
  instead.series = series_in(writers, rows, series, unit);
  instead.reading = corrected.reading;
  instead.doubtful_reason.reset();
  instead.line = 0;
  std::vector<trials::Reading> now = run.readings;
  now[place.reading].struck_reason = correction.reason;
  now.insert(std::next(now.begin(), static_cast<std::ptrdiff_t>(place.reading) + 1), instead);
  write_grown_readings(writers, rows.runs.at(place.run).run_id, run.readings, now);
  return std::nullopt;
}

base::Problem no_reading_to_correct(const std::string& accepted) {
  return {.kind = base::ProblemKind::missing,
          .sentence = "A reading is corrected, and it is not said which.",
          .accepted = accepted};
}

}  // namespace keenfall::notebook
