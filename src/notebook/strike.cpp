#include "notebook/strike.h"

#include "base/plain_number.h"
#include "notebook/notebook_file.h"
#include "notebook/trial_reader.h"
#include "notebook/trial_words.h"

#include <utility>
#include <vector>

namespace keenfall::notebook {

namespace {

constexpr std::size_t kVoidedReason = 23;  // places in the tables' columns (schema.cpp)
constexpr std::size_t kStruckReason = 7;

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

base::Result<std::size_t> only_run(const trials::Trial& trial, const StrikeRequest& wanted) {
  std::vector<std::size_t> found;
  std::string names;
  for (std::size_t r = 0; r < trial.runs.size(); ++r) {
    if (!fits(trial.runs[r], wanted)) continue;
    found.push_back(r);
    names += (names.empty() ? "" : "; ") + all_words_of(trial.runs[r]);
  }
  if (found.size() == 1) return found.front();
  if (found.empty()) {
    return base::failed(refused(base::ProblemKind::unknown_name,
                                "The trial has no such run.",
                                "the run's name, with its blade and medium, as keenfall show has "
                                "them"));
  }
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

// Strikes out what fits, or voids the run where no cuts are named; counts it in `struck` and says
// in `what` which run it was.
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
  if (!place) return place.error();
  const trials::Run& run = rows->trial.runs[*place];
  const std::int64_t id = rows->runs[*place].run_id;
  what = (request.cuts ? "strike at " + base::plain_number(*request.cuts) + " in "
                       : std::string("void ")) +
         words_of(run) + ", trial " + request.trial;
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
    set_reason(
        database, "reading", kStruckReason, {id, static_cast<std::int64_t>(i)}, request.reason);
    ++struck.readings;
  }
  if (struck.readings == 0) {
    return refused(base::ProblemKind::unknown_name,
                   "No reading of " + words_of(run) + " fits that is not struck out already.",
                   "cuts and readings that the run has");
  }
  return std::nullopt;
}

}  // namespace

base::Result<Struck> strike(Notebook& notebook,
                            const StrikeRequest& request,
                            const Authorship& by) {
  if (request.reason.find_first_not_of(" \t\r\n") == std::string::npos) {
    return base::failed(refused(base::ProblemKind::missing,
                                "A reading is struck out with a reason.",
                                "--reason \"the thread slipped\""));
  }
  Struck struck;
  ChangeWords words{.what = "strike in " + request.trial};
  Authorship with_reason = by;
  if (with_reason.why.empty()) with_reason.why = request.reason;
  auto entry = change(notebook.file(), words, with_reason, [&](SQLite::Database& database) {
    return strike_in(database, request, struck, words.what);
  });
  if (!entry) return base::failed(entry.error());
  struck.entry = *entry;
  return struck;
}

}  // namespace keenfall::notebook
