#include "notebook/strike.h"

#include "base/plain_number.h"
#include "notebook/correction.h"
#include "notebook/notebook_file.h"
#include "notebook/trial_reader.h"
#include "notebook/trial_words.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace keenfall::notebook {

namespace {

constexpr std::size_t kVoidedReason = 23;  // places in the tables' columns (schema.cpp)
constexpr std::size_t kStruckReasonOfReading = 7;
constexpr std::size_t kStruckReasonOfEdgeLife = 6;

base::Problem refused(base::ProblemKind kind,
                      const std::string& sentence,
                      const std::string& accepted) {
  return {.kind = kind, .sentence = sentence, .accepted = accepted};
}

// "A (15° per side)".
std::string words_of_edge(const trials::Run& run) {
  const std::string edge = in_words(run.arm.edge);
  return run.arm.blade + (edge.empty() ? "" : " (" + edge + ")");
}

std::string all_words_of(const trials::Run& run) {
  const trials::Medium& medium = run.arm.medium;
  return "run " + run.name + " of " + words_of_edge(run) + " on " + medium.name +
         (medium.condition.empty() ? "" : ", " + medium.condition) +
         (run.specimen.empty() ? "" : ", specimen " + run.specimen);
}

bool fits(const trials::Run& run, const StrikeRequest& wanted) {
  const trials::Medium& medium = run.arm.medium;
  return run.name == wanted.run &&
         (wanted.blade.empty() || run.arm.blade == wanted.blade ||
          words_of_edge(run) == wanted.blade) &&
         (wanted.medium.empty() || medium.name == wanted.medium ||
          medium.name + ", " + medium.condition == wanted.medium) &&
         (wanted.specimen.empty() || run.specimen == wanted.specimen);
}

bool fits(const trials::Reading& reading, const StrikeRequest& wanted) {
  return reading.cuts == *wanted.cuts && (!wanted.reading || reading.reading == *wanted.reading) &&
         (wanted.station.empty() || reading.station == wanted.station);
}

// "0, 10, 20", each once and in their order.
std::string listed(const std::vector<std::string>& words, const std::string& between) {
  constexpr std::size_t kMostNamed = 20;
  std::string text;
  std::vector<std::string> named;
  std::size_t more = 0;
  for (const std::string& word : words) {
    if (std::ranges::count(named, word) > 0) continue;
    if (named.size() == kMostNamed) {
      ++more;
      continue;
    }
    named.push_back(word);
    text += (text.empty() ? "" : between) + word;
  }
  return text + (more > 0 ? between + "and " + std::to_string(more) + " more" : "");
}

// Where none fits: those of that name, or the names that there are.
base::Problem no_such_run(const trials::Trial& trial, const StrikeRequest& wanted) {
  std::vector<std::string> names;
  std::vector<std::string> of_that_name;
  for (const trials::Run& run : trial.runs) {
    names.push_back(run.name);
    if (run.name == wanted.run) of_that_name.push_back(all_words_of(run));
  }
  if (of_that_name.empty()) {
    return refused(base::ProblemKind::unknown_name,
                   "The trial " + trial.name + " has no run called \"" + wanted.run + "\".",
                   listed(names, ", "));
  }
  std::string asked;
  for (const auto& [option, word] : {std::pair("--blade", wanted.blade),
                                     std::pair("--medium", wanted.medium),
                                     std::pair("--specimen", wanted.specimen)}) {
    if (!word.empty()) asked += (asked.empty() ? "" : ", ") + std::string(option) + "=" + word;
  }
  return refused(base::ProblemKind::unknown_name,
                 "No run called \"" + wanted.run + "\" is of " + asked + ".",
                 listed(of_that_name, "; "));
}

base::Result<std::size_t> only_run(const trials::Trial& trial, const StrikeRequest& wanted) {
  std::vector<std::size_t> found;
  std::string names;
  for (std::size_t r = 0; r < trial.runs.size(); ++r) {
    if (!fits(trial.runs[r], wanted)) continue;
    found.push_back(r);
    names += (names.empty() ? "" : "; ") + all_words_of(trial.runs[r]);
  }
  if (found.size() == 1) return found.front();
  if (found.empty()) return base::failed(no_such_run(trial, wanted));
  return base::failed(refused(base::ProblemKind::conflicting,
                              "Several runs are called that: " + names + ".",
                              "--blade, --medium and --specimen as they are written here, with "
                              "what stands in brackets or behind the comma, to say which"));
}

void set_reason(SQLite::Database& database,
                const std::string& table,
                std::size_t column,
                const std::vector<Cell>& key,
                const std::string& reason) {
  Row row;
  each_row(database,
           table,
           key.size() == 1 ? "WHERE run_id = ?" : "WHERE run_id = ? AND place = ?",
           key,
           [&](const Row& found) { row = found; });
  row.at(column) = reason;
  RowWriter(database, table).update(row);
}

std::string with_station(const trials::Reading& reading) {
  return base::plain_number(reading.reading) +
         (reading.station.empty() ? "" : " at " + reading.station);
}

// Of the readings after so many cuts, or of the edge lives: why none is struck out.
base::Problem no_such_reading(const trials::Run& run, const StrikeRequest& wanted) {
  std::vector<std::string> cuts;
  std::vector<std::string> readings;
  bool any_fits = false;
  for (const trials::Reading& reading : run.readings) {
    cuts.push_back(base::plain_number(reading.cuts));
    any_fits = any_fits || fits(reading, wanted);
    if (reading.cuts != *wanted.cuts) continue;
    readings.push_back(with_station(reading));
  }
  const std::string after = base::plain_number(*wanted.cuts) + " cuts";
  if (any_fits) {
    return refused(base::ProblemKind::conflicting,
                   "What " + words_of(run) + " has after " + after + " is struck out already.",
                   "readings that count");
  }
  if (readings.empty()) {
    return refused(
        base::ProblemKind::unknown_name,
        "There is no reading after " + after + " in " + words_of(run) + ".",
        cuts.empty() ? "a run with readings" : "--cuts as the run has them: " + listed(cuts, ", "));
  }
  return refused(base::ProblemKind::unknown_name,
                 "There is no such reading after " + after + " in " + words_of(run) + ".",
                 "one that it has there: " + listed(readings, ", "));
}

base::Problem no_such_edge_life(const trials::Run& run, const StrikeRequest& wanted) {
  std::vector<std::string> lasted;
  bool any_fits = false;
  for (const trials::EdgeLife& life : run.edge_lives) {
    lasted.push_back(base::plain_number(life.lasted_cuts));
    any_fits = any_fits || life.lasted_cuts == *wanted.lasted_cuts;
  }
  const std::string cuts = base::plain_number(*wanted.lasted_cuts) + " cuts";
  if (any_fits) {
    return refused(base::ProblemKind::conflicting,
                   "That " + words_of(run) + " lasted " + cuts + " is struck out already.",
                   "what counts");
  }
  return refused(base::ProblemKind::unknown_name,
                 "Of " + words_of(run) + " it is not said that its edge lasted " + cuts + ".",
                 lasted.empty() ? "a run of which it is said how long its edge lasted"
                                : "--lasted as the run has it: " + listed(lasted, ", "));
}

// Counts what it strikes out or voids in `struck`; nothing fits: the problem.
std::optional<base::Problem> strike_in_run(SQLite::Database& database,
                                           const trials::Run& run,
                                           std::int64_t id,
                                           const StrikeRequest& request,
                                           Struck& struck) {
  if (request.lasted_cuts) {
    for (std::size_t i = 0; i < run.edge_lives.size(); ++i) {
      const trials::EdgeLife& life = run.edge_lives[i];
      if (life.struck_reason || life.lasted_cuts != *request.lasted_cuts) continue;
      set_reason(database,
                 "edge_life",
                 kStruckReasonOfEdgeLife,
                 {id, static_cast<std::int64_t>(i)},
                 request.reason);
      ++struck.edge_lives;
    }
    if (struck.edge_lives == 0) return no_such_edge_life(run, request);
    return std::nullopt;
  }
  if (!request.cuts) {
    if (run.voided_reason) {
      return refused(base::ProblemKind::conflicting,
                     "That run is voided already: " + *run.voided_reason + ".",
                     "a run that counts");
    }
    set_reason(database, "run", kVoidedReason, {id}, request.reason);
    struck.voided_runs = 1;
    return std::nullopt;
  }
  for (std::size_t i = 0; i < run.readings.size(); ++i) {
    if (run.readings[i].struck_reason || !fits(run.readings[i], request)) continue;
    set_reason(database,
               "reading",
               kStruckReasonOfReading,
               {id, static_cast<std::int64_t>(i)},
               request.reason);
    ++struck.readings;
  }
  if (struck.readings == 0) return no_such_reading(run, request);
  return std::nullopt;
}

// Says in `what` what is corrected; nothing fits, or more than one: the problem.
std::optional<base::Problem> correct_in_run(SQLite::Database& database,
                                            const TrialRows& rows,
                                            std::size_t place,
                                            const StrikeRequest& request,
                                            Struck& struck,
                                            std::string& what) {
  const trials::Run& run = rows.trial.runs[place];
  if (!request.cuts) {
    return no_reading_to_correct("--cuts=15, after how many cuts it was read");
  }
  std::vector<std::size_t> found;
  std::vector<std::string> readings;
  for (std::size_t i = 0; i < run.readings.size(); ++i) {
    if (run.readings[i].struck_reason || !fits(run.readings[i], request)) continue;
    found.push_back(i);
    readings.push_back(with_station(run.readings[i]));
  }
  if (found.empty()) return no_such_reading(run, request);
  if (found.size() > 1) {
    return refused(base::ProblemKind::conflicting,
                   "Several readings of " + words_of(run) + " are after " +
                       base::plain_number(*request.cuts) + " cuts: " + listed(readings, ", ") +
                       ". One is corrected at a time.",
                   "--reading and --station, to say which");
  }
  return correct(database,
                 rows,
                 {.run = place, .reading = found.front()},
                 {.corrected = *request.instead, .reason = request.reason},
                 struck,
                 what);
}

// "strike at 15 in ", "strike that it lasted 40 in ", "void ".
std::string what_is_done(const StrikeRequest& request) {
  if (request.cuts) return "strike at " + base::plain_number(*request.cuts) + " in ";
  if (!request.lasted_cuts) return "void ";
  return "strike that it lasted " + base::plain_number(*request.lasted_cuts) + " in ";
}

// Says in `what` which run it was.
std::optional<base::Problem> strike_in(SQLite::Database& database,
                                       const StrikeRequest& request,
                                       Struck& struck,
                                       std::string& what) {
  const auto rows =
      read_runs(database, request.trial, {.called = request.run, .blade = request.blade});
  if (!rows) {
    return refused(base::ProblemKind::unknown_name,
                   "The notebook has no trial called \"" + request.trial + "\".",
                   "a trial that keenfall show lists");
  }
  const auto place = only_run(rows->trial, request);
  if (!place) {
    const bool is_unknown = place.error().kind == base::ProblemKind::unknown_name;
    return is_unknown ? no_such_run(read_trial(database, request.trial)->trial, request)
                      : place.error();
  }
  const trials::Run& run = rows->trial.runs[*place];
  struck.run_words = words_of(run);
  if (request.instead) return correct_in_run(database, *rows, *place, request, struck, what);
  what = what_is_done(request) + struck.run_words + ", trial " + request.trial;
  return strike_in_run(database, run, rows->runs[*place].run_id, request, struck);
}

std::optional<base::Problem> strike_one_reading(SQLite::Database& database,
                                                const TrialRows& rows,
                                                const StrikeAt& request,
                                                Struck& struck,
                                                std::string& what) {
  const trials::Run& run = rows.trial.runs[request.run];
  if (*request.reading >= run.readings.size()) {
    return refused(
        base::ProblemKind::unknown_name,
        "There is no reading " + std::to_string(*request.reading) + " in " + words_of(run) + ".",
        "a reading that the run has");
  }
  if (run.readings[*request.reading].struck_reason) {
    return refused(base::ProblemKind::conflicting,
                   "That reading of " + words_of(run) + " is struck out already.",
                   "a reading that counts");
  }
  if (request.instead) {
    return correct(database,
                   rows,
                   {.run = request.run, .reading = *request.reading},
                   {.corrected = *request.instead, .reason = request.reason},
                   struck,
                   what);
  }
  struck.readings = 1;
  set_reason(database,
             "reading",
             kStruckReasonOfReading,
             {rows.runs[request.run].run_id, static_cast<std::int64_t>(*request.reading)},
             request.reason);
  return std::nullopt;
}

std::optional<base::Problem> strike_at_place(SQLite::Database& database,
                                             const StrikeAt& request,
                                             Struck& struck,
                                             std::string& what) {
  const auto rows = read_trial(database, request.trial);
  if (!rows || request.run >= rows->trial.runs.size()) {
    return refused(base::ProblemKind::unknown_name,
                   "The trial " + request.trial + " has no such run.",
                   "a run that the trial has");
  }
  const trials::Run& run = rows->trial.runs[request.run];
  StrikeRequest as_asked{.trial = request.trial, .run = run.name, .cuts = request.cuts};
  as_asked.reason = request.reason;
  if (request.reading && *request.reading < run.readings.size()) {
    as_asked.cuts = run.readings[*request.reading].cuts;
  }
  struck.run_words = words_of(run);
  what = (request.reading
              ? "strike one reading at " + base::plain_number(as_asked.cuts.value_or(0)) + " in "
              : what_is_done(as_asked)) +
         struck.run_words + ", trial " + request.trial;
  if (request.reading) return strike_one_reading(database, *rows, request, struck, what);
  if (request.instead) {
    return no_reading_to_correct("one of the run's readings");
  }
  return strike_in_run(database, run, rows->runs[request.run].run_id, as_asked, struck);
}

// writes: what is struck, said in words; nothing, or why not.
template <class Writes>
base::Result<Struck> struck_with_reason(Notebook& notebook,
                                        const std::string& trial,
                                        const std::string& reason,
                                        const Authorship& by,
                                        Writes writes) {
  if (reason.find_first_not_of(" \t\r\n") == std::string::npos) {
    return base::failed(refused(base::ProblemKind::missing,
                                "A reading is struck out with a reason.",
                                "--reason \"the thread slipped\""));
  }
  Struck struck;
  ChangeWords words{.what = "strike in " + trial};
  Authorship with_reason = by;
  if (with_reason.why.empty()) with_reason.why = reason;
  auto entry = change(notebook.file(), words, with_reason, [&](SQLite::Database& database) {
    return writes(database, struck, words.what);
  });
  if (!entry) return base::failed(entry.error());
  struck.entry = *entry;
  return struck;
}

}  // namespace

base::Result<Struck> strike(Notebook& notebook,
                            const StrikeRequest& request,
                            const Authorship& by) {
  return struck_with_reason(notebook,
                            request.trial,
                            request.reason,
                            by,
                            [&](SQLite::Database& database, Struck& struck, std::string& what) {
                              return strike_in(database, request, struck, what);
                            });
}

base::Result<Struck> strike_at(Notebook& notebook, const StrikeAt& request, const Authorship& by) {
  return struck_with_reason(notebook,
                            request.trial,
                            request.reason,
                            by,
                            [&](SQLite::Database& database, Struck& struck, std::string& what) {
                              return strike_at_place(database, request, struck, what);
                            });
}

}  // namespace keenfall::notebook
