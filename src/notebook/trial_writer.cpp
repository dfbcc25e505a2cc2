#include "notebook/trial_writer.h"

#include "notebook/part_cells.h"
#include "notebook/row_writers.h"
#include "notebook/run_growth.h"
#include "notebook/run_rows.h"
#include "notebook/taken_back_trials.h"
#include "notebook/trial_words.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <optional>
#include <utility>

namespace keenfall::notebook {

namespace {

std::string beginning_with(const trials::Run& run) { return "R" + words_of(run).substr(1); }

bool are_called_alike(const trials::Run& one, const trials::Run& other) {
  return one.arm == other.arm && one.name == other.name && one.specimen == other.specimen;
}

template <class Map>
std::string uid_in(const Map& uids, const typename Map::key_type& name) {
  const auto found = uids.find(name);
  return found == uids.end() ? std::string() : found->second;
}

enum class KnownBy { uid, name };

class Writer {
 public:
  Writer(SQLite::Database& database, const TrialToWrite& from, const NewUid& new_uid)
      : database_(database), from_(from), new_uid_(new_uid), kit_(database, writers_, new_uid) {}

  WrittenTrial write() {
    const trials::Trial& trial = from_.rows.trial;
    std::optional<TrialRows> kept = read_trial(database_, trial.name);
    if (kept && kept->trial.counted != trial.counted && !trial.runs.empty()) {
      add_problem("The trial " + trial.name + " counts " + kept->trial.counted.many +
                      ", and what is to be taken counts " + trial.counted.many + ".",
                  "a trial of its own: --trial NAME");
      return std::move(written_);
    }
    kept_ = kept ? std::move(*kept) : new_trial(trial);
    for (std::size_t r = 0; r < kept_.runs.size(); ++r) {
      know(kept_.runs[r].uid, kept_.trial.runs[r]);
    }
    runs_before_ = kept_.runs.size();
    write_blades(trial);
    write_series(trial);
    find_contradicting_arms(trial);
    for (std::size_t r = 0; r < trial.runs.size() && !is_to_stop(r); ++r) write_run(r);
    remark_on_runs_known_again();
    if (written_.problems.empty()) {
      write_remarks(trial);
      if (is_taken_whole_) write_tables();
    }
    return std::move(written_);
  }

 private:
  void add_problem(const std::string& sentence, const std::string& accepted) {
    written_.problems.push_back(
        {.kind = base::ProblemKind::conflicting, .sentence = sentence, .accepted = accepted});
  }

  // What is here stands where that was asked for; else it is a problem.
  void report(base::Problem problem) {
    if (from_.keeps_what_is_here) {
      written_.remarks.push_back(kNotTaken + problem.sentence);
      is_taken_whole_ = false;
    } else {
      written_.problems.push_back(std::move(problem));
    }
  }

  bool is_to_stop(std::size_t run) {
    constexpr std::size_t kRunsBetweenReports = 100;
    if (run % kRunsBetweenReports != 0) return false;
    const double share =
        static_cast<double>(run) / static_cast<double>(from_.rows.trial.runs.size());
    if (from_.progress({.fraction_done = share, .stage = {}})) return false;
    written_.problems.push_back(taking_stopped());
    return true;
  }

  std::string uid_of_new(const std::string& name) {
    if (!from_.rows.uid.empty()) return from_.rows.uid;
    const auto before = uid_of_taken_back(database_, name, from_.tables);
    return before ? *before : new_uid_();
  }

  TrialRows new_trial(const trials::Trial& trial) {
    TrialRows rows{.trial_id = writers_["trial"].next_key(),
                   .uid = uid_of_new(trial.name),
                   .trial = {.name = trial.name, .counted = trial.counted}};
    writers_["trial"].insert({rows.trial_id,
                              rows.uid,
                              trial.name,
                              trial.counted.one,
                              trial.counted.many,
                              std::int64_t{trial.counted.is_measured ? 1 : 0}});
    return rows;
  }

  std::int64_t count_in(const std::string& table) {
    SQLite::Statement count(database_, "SELECT count(*) FROM " + table + " WHERE trial_id = ?");
    count.bind(1, kept_.trial_id);
    count.executeStep();
    return count.getColumn(0).getInt64();
  }

  void write_blades(const trials::Trial& trial) {
    std::int64_t place = as_whole(kept_.trial.blades.size());
    std::vector<trials::Blade> added;
    std::int64_t specimen_place = count_in("trial_specimen");
    for (const trials::Blade& blade : trial.blades) {
      const auto known = from_.rows.blades.find(blade.name);
      const std::string uid = known == from_.rows.blades.end() ? "" : known->second.uid;
      KitRow row = kit_.blade(blade, uid);
      if (row.problem) report(std::move(*row.problem));
      if (kept_.blades.try_emplace(blade.name, BladeKey{.blade_id = row.id}).second) {
        writers_["trial_blade"].insert({kept_.trial_id, place++, row.id});
        added.push_back({.name = blade.name});
      }
      const trials::Blade* in_trial = trials::find_blade(kept_.trial, blade.name);
      for (const trials::Specimen& specimen : blade.specimens) {
        KitRow piece = kit_.specimen(blade.name, row.id, specimen);
        if (piece.problem) report(std::move(*piece.problem));
        const bool is_in_trial =
            in_trial != nullptr &&
            std::ranges::count(in_trial->specimens, specimen.name, &trials::Specimen::name) > 0;
        if (!is_in_trial) {
          writers_["trial_specimen"].insert({kept_.trial_id, specimen_place++, piece.id});
        }
      }
    }
    std::ranges::move(added, std::back_inserter(kept_.trial.blades));
  }

  void write_series(const trials::Trial& trial) {
    std::vector<trials::ReadingSeries>& kept = kept_.trial.series;
    for (const trials::ReadingSeries& series : trial.series) {
      const auto found = std::ranges::find(kept, series);
      places_of_series_.push_back(static_cast<std::size_t>(found - kept.begin()));
      if (found != kept.end()) continue;
      Row row{kept_.trial_id, as_whole(kept.size())};
      add_kind(row, series.kind);
      row.insert(row.end(), {series.unit, series.thread, series.thread_lot});
      writers_["series"].insert(row);
      kept.push_back(series);
    }
  }

  // As it would be here.
  [[nodiscard]] trials::Run run_at(std::size_t place) const {
    trials::Run run = from_.rows.trial.runs[place];
    for (trials::Reading& reading : run.readings) {
      reading.series = places_of_series_.at(reading.series);
    }
    return run;
  }

  // Two runs may read the same by chance, of which one is short. So the runs of an edge are known
  // again by what they read only if none that is called like one here reads otherwise.
  void find_contradicting_arms(const trials::Trial& trial) {
    for (std::size_t r = 0; r < trial.runs.size(); ++r) {
      const trials::Run run = run_at(r);
      const bool is_known = from_.source == TrialSource::notebook &&
                            place_of_uid(from_.rows.runs.at(r).uid).has_value();
      if (is_known || place_of_alike(run) || place_of_less_recorded(run)) continue;
      const bool has_namesake = place_where(run, [&](const trials::Run& other) {
                                  return other.arm.medium.name == run.arm.medium.name;
                                }).has_value();
      if (has_namesake) contradicting_arms_.push_back(run.arm);
    }
  }

  void remark_on_runs_known_again() {
    for (const auto& [whose, runs] : known_again_) {
      written_.remarks.push_back(
          "Known again by what was read, though edge, medium or way of cutting are written "
          "otherwise now: run " +
          runs + " of " + whose + ".");
    }
  }

  void write_run(std::size_t place) {
    trials::Run run = run_at(place);
    const bool has_uid = from_.source == TrialSource::notebook;
    std::string uid = has_uid ? from_.rows.runs.at(place).uid : new_uid_();
    if (has_uid && is_in_another_trial(uid)) {
      return report({.kind = base::ProblemKind::conflicting,
                     .sentence = beginning_with(run) + " is here already, in another trial.",
                     .accepted = "--keep-here, to leave it there"});
    }
    const std::optional<std::size_t> same = place_of_uid(uid);
    if (same) return grow_run(*same, run, KnownBy::uid);
    std::optional<std::size_t> alike = place_of_alike(run);
    if (!alike && std::ranges::count(contradicting_arms_, run.arm) == 0) {
      alike = place_of_less_recorded(run);
      if (alike) {
        std::string& runs = known_again_[run.arm.blade + " on " + run.arm.medium.name];
        runs += (runs.empty() ? "" : ", ") + run.name;
      }
    }
    if (!alike) return add_run(std::move(uid), std::move(run));
    const bool is_one =
        !has_uid || from_.alike_runs_are_one || are_surely_one(kept_.trial.runs[*alike], run);
    if (is_one) return grow_run(*alike, run, KnownBy::name);
    if (from_.apart.empty()) {
      return report({.kind = base::ProblemKind::conflicting,
                     .sentence = beginning_with(run) +
                                 " is in both notebooks, and nothing says that it is the same one.",
                     .accepted = "--same, if it is; --apart=NAME, if it is not"});
    }
    add_apart(std::move(uid), std::move(run));
  }

  void add_apart(std::string uid, trials::Run run) {
    const std::string words = beginning_with(run);
    const std::string apart = run.name + " (" + from_.apart;
    run.name = apart + ")";
    for (int number = 2; is_called(run); ++number) {
      run.name = apart + " " + std::to_string(number) + ")";
    }
    written_.remarks.push_back(words + " is another one than the run of that name here, and is " +
                               "called " + run.name + " now.");
    add_run(std::move(uid), std::move(run));
  }

  // By blade and name.
  using Called = std::pair<std::string, std::string>;
  static Called called(const trials::Run& run) { return {run.arm.blade, run.name}; }

  [[nodiscard]] bool is_called(const trials::Run& run) const {
    const auto [first, last] = places_by_name_.equal_range(called(run));
    return std::any_of(first, last, [&](const auto& entry) {
      return are_called_alike(kept_.trial.runs[entry.second], run);
    });
  }

  [[nodiscard]] std::optional<std::size_t> place_of_uid(const std::string& uid) const {
    const auto found = places_by_uid_.find(uid);
    if (found == places_by_uid_.end()) return std::nullopt;
    return found->second;
  }

  // Of the runs that were here before, those of another notebook not being each other; of a table
  // also those it brought.
  template <class Fits>
  [[nodiscard]] std::optional<std::size_t> place_where(const trials::Run& run, Fits fits) const {
    const bool from_notebook = from_.source == TrialSource::notebook;
    const auto [first, last] = places_by_name_.equal_range(called(run));
    const auto found = std::find_if(first, last, [&](const auto& entry) {
      return (!from_notebook || entry.second < runs_before_) &&
             fits(kept_.trial.runs[entry.second]);
    });
    if (found == last) return std::nullopt;
    return found->second;
  }

  [[nodiscard]] std::optional<std::size_t> place_of_alike(const trials::Run& run) const {
    return place_where(run, [&](const trials::Run& kept) { return are_called_alike(kept, run); });
  }

  // A run of that name that reads the same, of which less is recorded, or other things: the angle
  // was written down later.
  [[nodiscard]] std::optional<std::size_t> place_of_less_recorded(const trials::Run& run) const {
    return place_where(run, [&](const trials::Run& other) {
      return other.arm.medium.name == run.arm.medium.name && are_surely_one(other, run);
    });
  }

  RunPlace run_place(const RunKey& key, std::size_t place, const trials::Run& run) {
    const trials::Medium& medium = run.arm.medium;
    return {.run_id = key.run_id,
            .uid = key.uid,
            .trial_id = kept_.trial_id,
            .place = place,
            .blade_id = kept_.blades.at(run.arm.blade).blade_id,
            .medium_id = kit_.medium(
                medium, uid_in(from_.rows.media_uids, {medium.name, medium.condition}))};
  }

  void add_run(std::string uid, trials::Run run) {
    const RunKey key{.run_id = writers_["run"].next_key(), .uid = std::move(uid)};
    write_new_run(writers_, run_place(key, kept_.runs.size(), run), run);
    ++written_.taken.runs_added;
    written_.taken.readings_added += run.readings.size();
    know(key.uid, run);
    kept_.runs.push_back(key);
    kept_.trial.runs.push_back(std::move(run));
  }

  // The next of the kept runs.
  void know(const std::string& uid, const trials::Run& run) {
    const std::size_t place = places_by_uid_.size();
    places_by_uid_.emplace(uid, place);
    places_by_name_.emplace(called(run), place);
  }

  [[nodiscard]] bool is_in_another_trial(const std::string& uid) {
    SQLite::Statement find(database_, "SELECT 1 FROM run WHERE uid = ? AND trial_id <> ?");
    find.bind(1, uid);
    find.bind(2, kept_.trial_id);
    return find.executeStep();
  }

  // A run that is there: nothing, what it has more now, or a problem.
  void grow_run(std::size_t place, const trials::Run& met, KnownBy known_by) {
    trials::Run& kept = kept_.trial.runs[place];
    const bool from_notebook = from_.source == TrialSource::notebook;
    Growth growth = growth_of(kept, met, from_notebook ? MayHaveLess::yes : MayHaveLess::no);
    if (growth.contradiction) {
      return report({.kind = base::ProblemKind::conflicting,
                     .sentence = beginning_with(met) + " is in the trial already, and there " +
                                 *growth.contradiction + ".",
                     .accepted = accepted_instead(known_by)});
    }
    if (from_notebook) remark_on_strikes(kept, met, growth.joined);
    if (growth.joined == kept) {
      ++written_.taken.runs_known;
      return;
    }
    ++written_.taken.runs_grown;
    written_.taken.readings_added += growth.joined.readings.size() - kept.readings.size();
    write_grown_run(
        writers_, run_place(kept_.runs[place], place, growth.joined), kept, growth.joined);
    kept = std::move(growth.joined);
  }

  [[nodiscard]] std::string accepted_instead(KnownBy known_by) const {
    if (from_.source == TrialSource::tables) {
      return "the run as it was taken, with more to it (a reading that was mistyped is struck out "
             "first: keenfall strike); another name for another run; or a trial of its own "
             "(--trial NAME)";
    }
    const std::string stand = "--keep-here, to let what is here stand";
    return known_by == KnownBy::uid ? stand : stand + "; if they are two runs, --apart=NAME";
  }

  // What counts no longer here because the other notebook says so.
  void remark_on_strikes(const trials::Run& kept, const trials::Run& met, const trials::Run& now) {
    const auto remark = [&](const std::string& sentence) {
      written_.remarks.push_back(beginning_with(kept) + sentence);
    };
    if (!kept.voided_reason && now.voided_reason) {
      remark(" is voided now, as in the other notebook: " + *now.voided_reason + ".");
    } else if (met.voided_reason && met.voided_reason != now.voided_reason) {
      remark(" is voided in the other notebook for another reason: " + *met.voided_reason + ".");
    }
    const auto struck_in = [](const trials::Run& run) {
      return std::ranges::count_if(run.readings, [](const trials::Reading& reading) {
        return reading.struck_reason.has_value();
      });
    };
    const bool strikes_otherwise = std::ranges::any_of(met.readings, [&](const auto& reading) {
      const auto here = std::ranges::find_if(now.readings, [&](const auto& one) {
        return one.cuts == reading.cuts && one.reading == reading.reading &&
               one.station == reading.station && one.repeat == reading.repeat;
      });
      return reading.struck_reason && here != now.readings.end() &&
             here->struck_reason != reading.struck_reason;
    });
    if (strikes_otherwise) {
      remark(
          " has readings that the other notebook strikes out for other reasons; those here "
          "stand.");
    }
    const auto more = struck_in(now) - struck_in(kept);
    if (more > 0) {
      remark(": struck out in the other notebook, and now here, " + std::to_string(more) +
             (more == 1 ? " reading." : " readings."));
    }
  }

  void write_remarks(const trials::Trial& trial) {
    std::int64_t place = as_whole(kept_.trial.remarks.size());
    for (const std::string& remark : trial.remarks) {
      if (std::ranges::count(kept_.trial.remarks, remark) > 0) continue;
      writers_["trial_remark"].insert({kept_.trial_id, place++, remark});
      kept_.trial.remarks.push_back(remark);
    }
    if (!from_.remarks_on) return;
    for (const std::string& remark : from_.remarks_on(kept_.trial)) {
      if (std::ranges::count(kept_.trial.remarks, remark) > 0) continue;
      writers_["trial_remark"].insert({kept_.trial_id, place++, remark});
      written_.remarks.push_back(remark);
    }
  }

  void write_tables() {
    for (const TakenTable& table : from_.tables) {
      SQLite::Statement find(database_,
                             "SELECT 1 FROM taken_table WHERE trial_id = ? AND sha256 = ?");
      find.bind(1, kept_.trial_id);
      find.bind(2, table.sha256);
      if (find.executeStep()) continue;
      writers_["taken_table"].insert({kept_.trial_id, table.sha256, table.file_name});
    }
  }

  SQLite::Database& database_;
  const TrialToWrite& from_;
  const NewUid& new_uid_;
  RowWriters writers_{database_};
  KitRows kit_;
  TrialRows kept_;
  std::size_t runs_before_ = 0;
  std::map<std::string, std::size_t> places_by_uid_;  // of kept runs
  std::multimap<Called, std::size_t> places_by_name_;
  std::vector<trials::Arm> contradicting_arms_;
  std::map<std::string, std::string> known_again_;  // names of runs, by blade and medium
  bool is_taken_whole_ = true;
  std::vector<std::size_t> places_of_series_;  // of the trial's, in the kept one
  WrittenTrial written_;
};

}  // namespace

base::Problem taking_stopped() {
  return {.kind = base::ProblemKind::interrupted,
          .sentence = "Taking the table in was stopped, and nothing of it was taken."};
}

WrittenTrial write_trial(SQLite::Database& database,
                         const TrialToWrite& trial,
                         const NewUid& new_uid) {
  return Writer(database, trial, new_uid).write();
}

}  // namespace keenfall::notebook
