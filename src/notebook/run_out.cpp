#include "notebook/run_out.h"

#include "notebook/changeset.h"
#include "notebook/notebook_file.h"
#include "notebook/resting_entries.h"
#include "notebook/rows.h"

#include <algorithm>
#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::notebook {

namespace {

constexpr std::size_t kTrial = 2;  // places in the columns of run (schema.cpp)
constexpr std::size_t kPlace = 3;
constexpr std::array<std::string_view, 4> kOfRuns{"reading", "edge_life", "event", "run_note"};

base::Problem not_taken_out(const std::string& sentence, const std::string& accepted) {
  return {.kind = base::ProblemKind::conflicting, .sentence = sentence, .accepted = accepted};
}

std::vector<Cell> runs_brought_by(SQLite::Database& database, std::int64_t entry) {
  std::vector<Cell> runs;
  (void)any_row_change_of(database, entry, [&runs](const RowChange& change) {
    if (change.table == "run" && change.kind == RowChangeKind::inserted) {
      runs.push_back(change.key.front());
    }
    return false;
  });
  return runs;
}

std::vector<Row> rows_where(SQLite::Database& database,
                            const std::string& table,
                            const std::string& which,
                            std::span<const Cell> values) {
  std::vector<Row> rows;
  each_row(database, table, which, values, [&rows](const Row& row) { rows.push_back(row); });
  return rows;
}

// A run that only moved up says the same as before.
bool changes_run(const RowChange& change, const Cell& run, std::size_t columns_of_run) {
  const bool is_of_run =
      change.table == "run" || std::ranges::count(kOfRuns, std::string_view(change.table)) > 0;
  if (!is_of_run || change.key.front() != run) return false;
  if (change.table != "run" || change.kind != RowChangeKind::updated) return true;
  return std::ranges::any_of(change.new_cells, [columns_of_run](const auto& cell) {
    return cell.first != kPlace && cell.first != columns_of_run;
  });
}

// "7 (struck out ...), 8 (...)"; empty: none.
std::string later_changes(SQLite::Database& database,
                          const std::vector<JournalEntry>& journal,
                          std::int64_t entry,
                          const Cell& run) {
  const std::size_t columns = layout_of(database, "run").columns.size();
  std::string listed;
  for (const std::int64_t later : entries_standing_after(journal, entry)) {
    const bool is_one = any_row_change_of(database, later, [&](const RowChange& change) {
      return changes_run(change, run, columns);
    });
    if (!is_one) continue;
    const auto named = std::ranges::find(journal, later, &JournalEntry::entry);
    listed += (listed.empty() ? "" : ", ") + std::to_string(later) + " (" + named->what + ")";
  }
  return listed;
}

void remove_run(SQLite::Database& database, const Row& run) {
  const std::span<const Cell> key(run.data(), 1);
  for (const std::string_view table : kOfRuns) {
    const std::string name(table);
    RowWriter writer(database, name);
    for (const Row& row : rows_where(database, name, "WHERE run_id = ?", key)) writer.remove(row);
  }
  RowWriter writer(database, "run");
  writer.remove(run);
  const std::array<Cell, 2> behind{run.at(kTrial), run.at(kPlace)};
  auto later =
      rows_where(database, "run", "WHERE trial_id = ? AND place > ? ORDER BY place", behind);
  for (Row& row : later) {
    row.at(kPlace) = std::get<std::int64_t>(row.at(kPlace)) - 1;
    writer.update(row);
  }
}

}  // namespace

base::Result<JournalEntry> take_run_out(Notebook& notebook,
                                        std::int64_t entry,
                                        const Authorship& by) {
  const std::vector<JournalEntry> journal = notebook.journal();
  const auto brought = std::ranges::find(journal, entry, &JournalEntry::entry);
  if (brought == journal.end()) {
    return base::failed(
        not_taken_out("There is no entry " + std::to_string(entry) + " in the journal.",
                      "an entry that keenfall log lists"));
  }
  const std::string run_words = "What entry " + std::to_string(entry) + " (" + brought->what +
                                ") brought in cannot be taken out: ";
  return change(notebook.file(),
                {.what = "take out: " + brought->what, .undoes = std::nullopt},
                by,
                [&](SQLite::Database& database) -> std::optional<base::Problem> {
                  const std::vector<Cell> runs = runs_brought_by(database, entry);
                  const auto rows = runs.size() == 1
                                        ? rows_where(database, "run", "WHERE run_id = ?", runs)
                                        : std::vector<Row>{};
                  if (rows.size() != 1) {
                    return not_taken_out(run_words + "it is not one run that is in its trial.",
                                         "an entry that brought one run in");
                  }
                  const std::string later = later_changes(database, journal, entry, runs.front());
                  if (!later.empty()) {
                    return not_taken_out(run_words + "later entries changed it: " + later + ".",
                                         "undoing those first, in the journal");
                  }
                  remove_run(database, rows.front());
                  return std::nullopt;
                });
}

}  // namespace keenfall::notebook
