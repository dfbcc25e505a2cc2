// What rows that are left out say of their runs, and which runs miss it then.
//
// In some tables only one row of a run tells its edge, that it is void, or the unit. When that row
// is left out, the others would be taken for a run with another edge, one that counts, or readings
// in another unit: so the run is left out with it. A row whose blade, medium or run is empty is
// taken to speak of every run it fits.
#pragma once

#include "exchange/problem_list.h"
#include "exchange/reading_series_register.h"
#include "exchange/run_drafts.h"
#include "exchange/table_row.h"

#include <array>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>

namespace keenfall::exchange {

class LeftOutRows {
 public:
  // `is_unit_its_own`: the unit behind its reading holds for no other.
  void note(const TableRow& row, bool is_unit_its_own);

  [[nodiscard]] bool empty() const { return notes_.empty(); }
  // Blames runs that miss what only left-out rows say. `told`: what the series of their readings
  // index into.
  void blame_runs(std::span<const RunDraft> drafts,
                  std::span<const SeriesAsTold> told,
                  ProblemList& problems) const;
  // Reports where readings without a unit are left, and only left-out rows name one.
  void check_units(std::span<const RunDraft> drafts,
                   ReadingSeriesRegister& told,
                   ProblemList& problems) const;

 private:
  struct Note {
    RunDraft names;  // and what makes the arm, as far as it can be read
    std::array<bool, kColumnCount> says{};
    std::set<std::string> behind_readings;  // units, or what was typed for one: "O0" of "1O0"
    bool has_all_names = true;

    [[nodiscard]] bool tells_unit_of(const trials::ReadingKind& kind) const;
  };

  static std::optional<Column> first_missing(const RunDraft& draft,
                                             const Note& note,
                                             std::span<const SeriesAsTold> told);
  static void blame(const RunDraft& draft, Column column, const Note& note, ProblemList& problems);

  std::map<std::string, Note> notes_;
};

}  // namespace keenfall::exchange
