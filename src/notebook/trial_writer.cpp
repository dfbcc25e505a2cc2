#include "notebook/trial_writer.h"

#include "notebook/rows.h"
#include "notebook/run_growth.h"
#include "notebook/trial_words.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <utility>

namespace keenfall::notebook {

namespace {

void add_hardness(Row& row, const std::optional<trials::Hardness>& hardness) {
  if (!hardness) {
    row.insert(row.end(), 4, Cell());
    return;
  }
  row.push_back(hardness->reading);
  row.push_back(word_of(hardness->scale));
  row.push_back(cell_or_null(hardness->error));
  row.push_back(word_of(hardness->how_known));
}

Cell angle_cell(const std::optional<trials::PerSideAngle>& angle) {
  return angle ? Cell(angle->deg) : Cell();
}

std::int64_t as_whole(std::size_t number) { return static_cast<std::int64_t>(number); }

// What a blade is known as in the kit, with what a table adds to it; a problem where they
// contradict.
struct JoinedBlade {
  trials::Blade blade;
  std::optional<base::Problem> problem;
};

JoinedBlade joined(const trials::Blade& kept, const trials::Blade& taken) {
  JoinedBlade both{.blade = kept};
  const auto contradict = [&](const std::string& what, const std::string& of_kept) {
    both.problem = base::Problem{
        .kind = base::ProblemKind::conflicting,
        .sentence = "The notebook has a blade " + kept.name + " already, of another " + what +
                    (of_kept.empty() ? "" : " (" + of_kept + ")") + ".",
        .place = {.found = taken.name},
        .accepted = "the same " + what + ", another name, or another notebook"};
  };
  if (kept.steel.empty()) {
    both.blade.steel = taken.steel;
  } else if (!taken.steel.empty() && taken.steel != kept.steel) {
    contradict("steel", kept.steel);
  }
  if (!kept.hardness) {
    both.blade.hardness = taken.hardness;
  } else if (taken.hardness && taken.hardness != kept.hardness) {
    contradict("hardness", "");
  }
  return both;
}

class Writer {
 public:
  Writer(SQLite::Database& database, const NewUid& new_uid, Taken& taken)
      : database_(database), new_uid_(new_uid), taken_(taken) {}

  std::vector<base::Problem> write(const trials::Trial& trial,
                                   const std::vector<TakenTable>& tables) {
    std::optional<TrialRows> kept = read_trial(database_, trial.name);
    if (kept && kept->trial.counted != trial.counted && !trial.runs.empty()) {
      problems_.push_back({.kind = base::ProblemKind::conflicting,
                           .sentence = "The trial counts " + kept->trial.counted.many +
                                       ", and this table " + trial.counted.many + ".",
                           .accepted = "a trial of its own: --trial NAME"});
      return problems_;
    }
    if (!kept) kept = new_trial(trial);
    kept_ = std::move(kept);
    write_blades(trial);
    write_series(trial);
    for (const trials::Run& run : trial.runs) write_run(run);
    if (!problems_.empty()) return problems_;
    write_remarks(trial);
    write_tables(tables);
    return {};
  }

 private:
  RowWriter& writer(const std::string& table) {
    const auto found = writers_.find(table);
    if (found != writers_.end()) return found->second;
    return writers_.try_emplace(table, database_, table).first->second;
  }

  TrialRows new_trial(const trials::Trial& trial) {
    TrialRows rows{.trial_id = writer("trial").next_key(),
                   .trial = {.name = trial.name, .counted = trial.counted}};
    writer("trial").insert({rows.trial_id,
                            new_uid_(),
                            trial.name,
                            trial.counted.one,
                            trial.counted.many,
                            std::int64_t{trial.counted.is_measured ? 1 : 0}});
    return rows;
  }

  std::int64_t count_in(const std::string& table) {
    SQLite::Statement count(database_, "SELECT count(*) FROM " + table + " WHERE trial_id = ?");
    count.bind(1, kept_->trial_id);
    count.executeStep();
    return count.getColumn(0).getInt64();
  }

  // The blade of the kit, joined with what the table says of it.
  std::int64_t blade_row(const trials::Blade& taken) {
    std::optional<BladeRow> kept;
    const Cell name = taken.name;
    std::string uid;
    each_row(database_, "blade", "WHERE name = ?", std::span(&name, 1), [&](const Row& row) {
      kept = blade_of(row);
      uid = std::get<std::string>(row.at(1));
    });
    JoinedBlade both = kept ? joined(kept->blade, taken) : JoinedBlade{.blade = taken};
    if (both.problem) problems_.push_back(*both.problem);
    const std::int64_t id = kept ? kept->blade_id : writer("blade").next_key();
    Row row{id, kept ? uid : new_uid_(), both.blade.name, both.blade.steel};
    add_hardness(row, both.blade.hardness);
    if (!kept) {
      writer("blade").insert(row);
    } else if (both.blade != kept->blade) {
      writer("blade").update(row);
    }
    return id;
  }

  void write_blades(const trials::Trial& trial) {
    std::int64_t place = as_whole(kept_->trial.blades.size());
    std::int64_t specimen_place = count_in("trial_specimen");
    for (const trials::Blade& blade : trial.blades) {
      const std::int64_t id = blade_row(blade);
      if (kept_->blade_ids.try_emplace(blade.name, id).second) {
        writer("trial_blade").insert({kept_->trial_id, place++, id});
      }
      const trials::Blade* in_trial = trials::find_blade(kept_->trial, blade.name);
      for (const trials::Specimen& specimen : blade.specimens) {
        if (in_trial != nullptr &&
            std::ranges::count(in_trial->specimens, specimen.name, &trials::Specimen::name) > 0) {
          continue;
        }
        writer("trial_specimen")
            .insert({kept_->trial_id, specimen_place++, specimen_row(id, specimen)});
      }
    }
  }

  std::int64_t specimen_row(std::int64_t blade_id, const trials::Specimen& specimen) {
    SQLite::Statement find(database_,
                           "SELECT specimen_id FROM specimen WHERE blade_id = ? AND name = ?");
    find.bind(1, blade_id);
    find.bind(2, specimen.name);
    if (find.executeStep()) return find.getColumn(0).getInt64();
    const std::int64_t id = writer("specimen").next_key();
    Row row{id, blade_id, specimen.name};
    add_hardness(row, specimen.hardness);
    writer("specimen").insert(row);
    return id;
  }

  void write_series(const trials::Trial& trial) {
    std::vector<trials::ReadingSeries>& kept = kept_->trial.series;
    for (const trials::ReadingSeries& series : trial.series) {
      const auto found = std::ranges::find(kept, series);
      places_of_series_.push_back(static_cast<std::size_t>(found - kept.begin()));
      if (found != kept.end()) continue;
      writer("series").insert({kept_->trial_id,
                               as_whole(kept.size()),
                               series.kind.name,
                               series.kind.words,
                               series.kind.unit,
                               word_of(series.kind.keener_when),
                               word_of(series.kind.use),
                               series.kind.default_level,
                               word_of(series.kind.zero),
                               cell_or_null(series.kind.resolution),
                               cell_or_null(series.kind.largest),
                               series.unit,
                               series.thread,
                               series.thread_lot});
      kept.push_back(series);
    }
  }

  std::int64_t medium_row(const trials::Medium& medium) {
    SQLite::Statement find(database_,
                           "SELECT medium_id FROM medium WHERE name = ? AND condition = ?");
    find.bind(1, medium.name);
    find.bind(2, medium.condition);
    if (find.executeStep()) return find.getColumn(0).getInt64();
    const std::int64_t id = writer("medium").next_key();
    writer("medium").insert({id, new_uid_(), medium.name, medium.condition});
    return id;
  }

  void write_run(trials::Run run) {
    for (trials::Reading& reading : run.readings) {
      reading.series = places_of_series_.at(reading.series);
    }
    std::vector<trials::Run>& kept = kept_->trial.runs;
    const auto same = std::ranges::find_if(kept, [&](const trials::Run& other) {
      return other.arm == run.arm && other.name == run.name && other.specimen == run.specimen;
    });
    if (same != kept.end()) {
      grow_run(kept_->run_ids.at(static_cast<std::size_t>(same - kept.begin())), *same, run);
      return;
    }
    const std::int64_t id = writer("run").next_key();
    writer("run").insert(run_cells(id, run));
    kept_->run_ids.push_back(id);
    ++taken_.runs_added;
    write_parts(id, run, {});
    kept.push_back(std::move(run));
  }

  Row run_cells(std::int64_t id, const trials::Run& run) {
    const trials::CutMethod& method = run.arm.method;
    return {id,
            new_uid_(),
            kept_->trial_id,
            as_whole(kept_->trial.runs.size()),
            run.name,
            kept_->blade_ids.at(run.arm.blade),
            angle_cell(run.arm.edge.bevel_angle),
            angle_cell(run.arm.edge.apex_angle),
            run.arm.edge.finish,
            cell_or_null(run.arm.edge.thickness_behind_edge_mm),
            medium_row(run.arm.medium),
            word_of(method.motion),
            method.as_written,
            cell_or_null(method.cut_length_mm),
            cell_or_null(method.edge_used_mm),
            method.board,
            run.specimen,
            run.block,
            cell_or_null(run.order),
            run.medium_lot,
            run.operator_name,
            run.date,
            cell_or_null(run.sharpenings_since_new),
            cell_or_null(run.voided_reason)};
  }

  // A run that is there: nothing, what it has more now, or a problem.
  void grow_run(std::int64_t id, const trials::Run& kept, const trials::Run& taken) {
    const Growth growth = growth_of(kept, taken);
    if (growth.contradiction) {
      problems_.push_back({.kind = base::ProblemKind::conflicting,
                           .sentence = "Run " + taken.name + " of " + taken.arm.blade + " on " +
                                       taken.arm.medium.name +
                                       " is in the trial already, and there " +
                                       *growth.contradiction + ".",
                           .accepted = "the run as it was taken, with more to it; another name for "
                                       "another run; or a trial of its own (--trial NAME)"});
      return;
    }
    if (!growth.is_more) {
      ++taken_.runs_known;
      return;
    }
    ++taken_.runs_grown;
    write_parts(id, taken, growth.kept);
  }

  // The parts of the run after those that are there.
  void write_parts(std::int64_t id, const trials::Run& run, const PartsKept& kept) {
    for (std::size_t i = kept.readings; i < run.readings.size(); ++i) {
      const trials::Reading& reading = run.readings[i];
      writer("reading").insert({id,
                                as_whole(i),
                                as_whole(reading.series),
                                reading.cuts,
                                reading.reading,
                                reading.station,
                                cell_or_null(reading.repeat),
                                cell_or_null(reading.struck_reason),
                                cell_or_null(reading.doubtful_reason),
                                as_whole(reading.line)});
      ++taken_.readings_added;
    }
    for (std::size_t i = kept.edge_lives; i < run.edge_lives.size(); ++i) {
      const trials::EdgeLife& life = run.edge_lives[i];
      writer("edge_life")
          .insert({id,
                   as_whole(i),
                   life.test,
                   life.lasted_cuts,
                   cell_or_null(life.failed_by_cuts),
                   cell_or_null(life.level),
                   cell_or_null(life.struck_reason),
                   as_whole(life.line)});
    }
    for (std::size_t i = kept.events; i < run.events.size(); ++i) {
      const trials::Event& event = run.events[i];
      writer("event").insert({id, as_whole(i), word_of(event.kind), event.cuts, event.as_written});
    }
    write_notes(id, run, kept);
  }

  void write_notes(std::int64_t id, const trials::Run& run, const PartsKept& kept) {
    std::int64_t place = as_whole(kept.deviations + kept.notes);
    for (std::size_t i = kept.deviations; i < run.deviations.size(); ++i) {
      writer("run_note").insert({id, place++, std::int64_t{1}, run.deviations[i]});
    }
    for (std::size_t i = kept.notes; i < run.notes.size(); ++i) {
      writer("run_note").insert({id, place++, std::int64_t{0}, run.notes[i]});
    }
  }

  void write_remarks(const trials::Trial& trial) {
    std::int64_t place = as_whole(kept_->trial.remarks.size());
    for (const std::string& remark : trial.remarks) {
      if (std::ranges::count(kept_->trial.remarks, remark) > 0) continue;
      writer("trial_remark").insert({kept_->trial_id, place++, remark});
    }
  }

  void write_tables(const std::vector<TakenTable>& tables) {
    for (const TakenTable& table : tables) {
      SQLite::Statement find(database_,
                             "SELECT 1 FROM taken_table WHERE trial_id = ? AND sha256 = ?");
      find.bind(1, kept_->trial_id);
      find.bind(2, table.sha256);
      if (find.executeStep()) continue;
      writer("taken_table").insert({kept_->trial_id, table.sha256, table.file_name});
    }
  }

  SQLite::Database& database_;
  const NewUid& new_uid_;
  Taken& taken_;
  std::map<std::string, RowWriter> writers_;
  std::optional<TrialRows> kept_;
  std::vector<std::size_t> places_of_series_;  // of the taken trial's, in the kept one
  std::vector<base::Problem> problems_;
};

}  // namespace

std::vector<base::Problem> write_trial(SQLite::Database& database,
                                       const trials::Trial& trial,
                                       const std::vector<TakenTable>& tables,
                                       const NewUid& new_uid,
                                       Taken& taken) {
  return Writer(database, new_uid, taken).write(trial, tables);
}

}  // namespace keenfall::notebook
