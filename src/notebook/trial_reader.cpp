#include "notebook/trial_reader.h"

#include "notebook/notebook_failure.h"
#include "notebook/part_cells.h"
#include "notebook/places.h"
#include "notebook/row_reader.h"
#include "notebook/trial_words.h"

#include <utility>

namespace keenfall::notebook {

namespace {

trials::ReadingSeries read_series(const Row& cells) {
  RowReader row(cells);
  row.skip(2);
  trials::ReadingSeries series;
  series.kind = read_kind(row);
  series.unit = row.text();
  series.thread = row.text();
  series.thread_lot = row.text();
  return series;
}

trials::Reading read_reading(const Row& cells) {
  RowReader row(cells);
  row.skip(2);
  trials::Reading reading;
  reading.series = static_cast<std::size_t>(row.whole());
  reading.cuts = row.real();
  reading.reading = row.real();
  reading.station = row.text();
  reading.repeat = row.whole_if_any();
  reading.struck_reason = row.text_if_any();
  reading.doubtful_reason = row.text_if_any();
  reading.line = static_cast<std::size_t>(row.whole());
  return reading;
}

trials::EdgeLife read_edge_life(const Row& cells) {
  RowReader row(cells);
  row.skip(2);
  trials::EdgeLife life;
  life.test = row.text();
  life.lasted_cuts = row.real();
  life.failed_by_cuts = row.real_if_any();
  life.level = row.real_if_any();
  life.struck_reason = row.text_if_any();
  life.line = static_cast<std::size_t>(row.whole());
  return life;
}

trials::Event read_event(const Row& cells) {
  RowReader row(cells);
  row.skip(2);
  trials::Event event;
  event.kind = event_kind_of(row.text());
  event.cuts = row.real();
  event.as_written = row.text();
  return event;
}

class Reader {
 public:
  Reader(SQLite::Database& database, const std::string& name) : database_(database) {
    each("trial", "WHERE name = ?", Cell(name), [&](const Row& cells) {
      RowReader row(cells);
      rows_.emplace();
      rows_->trial_id = row.whole();
      rows_->uid = row.text();
      rows_->trial.name = row.text();
      rows_->trial.counted.one = row.text();
      rows_->trial.counted.many = row.text();
      rows_->trial.counted.is_measured = row.yes();
    });
  }

  std::optional<TrialRows> read(const std::optional<RunsWanted>& wanted) {
    if (!rows_) return std::nullopt;
    read_blades();
    each_of_trial("series",
                  [&](const Row& row) { rows_->trial.series.push_back(read_series(row)); });
    read_runs_of(wanted);
    each_of_trial("trial_remark", [&](const Row& cells) {
      RowReader row(cells);
      row.skip(2);
      rows_->trial.remarks.push_back(row.text());
    });
    return std::move(rows_);
  }

 private:
  using Use = std::function<void(const Row&)>;

  void each(const std::string& table, const std::string& order, const Cell& value, const Use& use) {
    each_row(database_, table, order, std::span(&value, 1), use);
  }
  void each_of_trial(const std::string& table, const Use& use) {
    Places places(table);
    each(table, "WHERE trial_id = ? ORDER BY place", Cell(rows_->trial_id), [&](const Row& cells) {
      RowReader row(cells);
      const std::int64_t trial = row.whole();
      places.next(trial, row.whole());
      use(cells);
    });
  }

  void read_blades() {
    each_of_trial("trial_blade", [&](const Row& cells) {
      RowReader row(cells);
      row.skip(2);
      each("blade", "WHERE blade_id = ?", Cell(row.whole()), [&](const Row& blade_cells) {
        BladeRow blade = blade_of(blade_cells);
        names_[blade.blade_id] = rows_->trial.blades.size();
        rows_->blades[blade.blade.name] = {.blade_id = blade.blade_id, .uid = blade.uid};
        rows_->trial.blades.push_back(std::move(blade.blade));
      });
    });
    each_of_trial("trial_specimen", [&](const Row& cells) {
      RowReader row(cells);
      row.skip(2);
      each("specimen", "WHERE specimen_id = ?", Cell(row.whole()), [&](const Row& specimen_cells) {
        const SpecimenRow specimen = specimen_of(specimen_cells);
        blade_with(specimen.blade_id).specimens.push_back(specimen.specimen);
      });
    });
  }

  trials::Blade& blade_with(std::int64_t blade_id) {
    const auto found = names_.find(blade_id);
    if (found == names_.end()) throw NotebookDamaged("a run's blade is not one of its trial's");
    return rows_->trial.blades[found->second];
  }

  // One pass over each table: a query a run would take far longer than its rows.
  void read_runs_of(const std::optional<RunsWanted>& wanted) {
    std::string which = "trial_id = ?";
    std::vector<Cell> values{rows_->trial_id};
    if (wanted) {
      which += " AND name = ?";
      values.emplace_back(wanted->called);
    }
    if (wanted && rows_->blades.contains(wanted->blade)) {
      which += " AND blade_id = ?";
      values.emplace_back(rows_->blades.at(wanted->blade).blade_id);
    }
    Places runs("run");
    each_row(database_, "run", "WHERE " + which + " ORDER BY place", values, [&](const Row& row) {
      const std::int64_t place = read_run(row);
      if (!wanted) runs.next(rows_->trial_id, place);
    });
    const auto each_part = [&](const std::string& table, const auto& use) {
      Places places(table);
      each_row(
          database_,
          table,
          "WHERE run_id IN (SELECT run_id FROM run WHERE " + which + ") ORDER BY run_id, place",
          values,
          [&](const Row& cells) {
            RowReader row(cells);
            const std::int64_t run = row.whole();
            places.next(run, row.whole());
            use(rows_->trial.runs[places_.at(run)], cells);
          });
    };
    each_part("reading", [&](trials::Run& run, const Row& row) {
      run.readings.push_back(read_reading(row));
      if (run.readings.back().series >= rows_->trial.series.size()) {
        throw NotebookDamaged("a reading is of a series that its trial has not");
      }
    });
    each_part("edge_life", [](trials::Run& run, const Row& row) {
      run.edge_lives.push_back(read_edge_life(row));
    });
    each_part("event",
              [](trials::Run& run, const Row& row) { run.events.push_back(read_event(row)); });
    each_part("run_note", [](trials::Run& run, const Row& cells) {
      RowReader row(cells);
      row.skip(2);
      auto& words = row.yes() ? run.deviations : run.notes;
      words.push_back(row.text());
    });
  }

  // Out: the run's place.
  std::int64_t read_run(const Row& cells) {
    RowReader row(cells);
    rows_->runs.push_back({.run_id = row.whole(), .uid = row.text()});
    places_[rows_->runs.back().run_id] = rows_->trial.runs.size();
    row.skip();
    const std::int64_t place = row.whole();
    trials::Run run;
    run.name = row.text();
    run.arm.blade = blade_with(row.whole()).name;
    run.arm.edge = read_edge(row);
    run.arm.medium = medium_with(row.whole());
    run.arm.method = read_method(row);
    run.specimen = row.text();
    run.block = row.text();
    run.order = row.whole_if_any();
    run.medium_lot = row.text();
    run.operator_name = row.text();
    run.date = row.text();
    run.sharpenings_since_new = row.whole_if_any();
    run.voided_reason = row.text_if_any();
    rows_->trial.runs.push_back(std::move(run));
    return place;
  }

  trials::Medium medium_with(std::int64_t medium_id) {
    const auto [found, is_new] = media_.try_emplace(medium_id);
    trials::Medium& medium = found->second;
    if (is_new) {
      bool is_there = false;
      each("medium", "WHERE medium_id = ?", Cell(medium_id), [&](const Row& cells) {
        RowReader row(cells);
        row.skip();
        const std::string uid = row.text();
        medium.name = row.text();
        medium.condition = row.text();
        rows_->media_uids[{medium.name, medium.condition}] = uid;
        is_there = true;
      });
      if (!is_there) throw NotebookDamaged("a run's medium is missing");
    }
    return medium;
  }

  SQLite::Database& database_;
  std::optional<TrialRows> rows_;
  std::map<std::int64_t, std::size_t> names_;   // of a blade, its place in the trial
  std::map<std::int64_t, std::size_t> places_;  // of a run, likewise
  std::map<std::int64_t, trials::Medium> media_;
};

}  // namespace

BladeRow blade_of(const Row& cells) {
  RowReader row(cells);
  BladeRow found{.blade_id = row.whole(), .uid = row.text()};
  found.blade.name = row.text();
  found.blade.steel = row.text();
  found.blade.hardness = read_hardness(row);
  return found;
}

SpecimenRow specimen_of(const Row& cells) {
  RowReader row(cells);
  SpecimenRow found{.specimen_id = row.whole(), .blade_id = row.whole()};
  found.specimen.name = row.text();
  found.specimen.hardness = read_hardness(row);
  return found;
}

std::optional<TrialRows> read_trial(SQLite::Database& database, const std::string& name) {
  return Reader(database, name).read(std::nullopt);
}

std::optional<TrialRows> read_runs(SQLite::Database& database,
                                   const std::string& trial,
                                   const RunsWanted& wanted) {
  return Reader(database, trial).read(wanted);
}

}  // namespace keenfall::notebook
