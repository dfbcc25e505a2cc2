#include "notebook/plan_rows.h"

#include "notebook/digest.h"
#include "notebook/notebook_failure.h"
#include "notebook/part_cells.h"
#include "notebook/places.h"
#include "notebook/plan_text.h"
#include "notebook/trial_reader.h"

#include <algorithm>
#include <charconv>
#include <functional>
#include <utility>
#include <vector>

namespace keenfall::notebook {

namespace {

base::Seed seed_in(const std::string& text) {
  base::Seed seed;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), seed.number);
  if (fault != std::errc() || end != text.data() + text.size()) {
    throw NotebookDamaged("the seed of a plan's order is no number");
  }
  return seed;
}

class PlanReader {
 public:
  PlanReader(SQLite::Database& database, std::int64_t trial_id)
      : database_(database), trial_id_(trial_id) {}

  std::optional<KeptPlan> read() {
    bool is_there = false;
    each("plan", "WHERE trial_id = ?", trial_id_, [&](const Row& row) {
      is_there = true;
      read_head(row);
    });
    if (!is_there) return std::nullopt;
    each("trial", "WHERE trial_id = ?", trial_id_, [&](const Row& cells) {
      RowReader row(cells);
      row.skip(3);
      plan().counted.one = row.text();
      plan().counted.many = row.text();
      plan().counted.is_measured = row.yes();
    });
    read_lists();
    look_whether_it_fits_together();
    kept_.sha256 = in_hex(sha256_of(plan_text({kept_.claims, kept_.plan})));
    return std::move(kept_);
  }

 private:
  trials::Plan& plan() { return kept_.plan; }

  void each(const std::string& table,
            const std::string& order,
            const Cell& value,
            const std::function<void(const Row&)>& use) {
    each_row(database_, table, order, std::span(&value, 1), use);
  }

  template <class Use>
  void each_of_list(const std::string& table, Use use) {
    Places places(table);
    each(table, "WHERE trial_id = ? ORDER BY place", trial_id_, [&](const Row& cells) {
      RowReader row(cells);
      const std::int64_t trial = row.whole();
      places.next(trial, row.whole());
      use(row);
    });
  }

  void read_head(const Row& cells) {
    RowReader row(cells);
    row.skip();
    trials::PlannedReading& reading = plan().reading;
    reading.kind = row.text();
    reading.unit = row.text();
    reading.thread = row.text();
    reading.thread_lot = row.text();
    reading.repeats = row.small_whole();
    const auto target_reading = row.real_if_any();
    const auto tolerance_fraction = row.real_if_any();
    if (target_reading && tolerance_fraction) {
      plan().start_gate = {.target_reading = *target_reading,
                           .tolerance_fraction = *tolerance_fraction};
    }
    plan().stop.level = row.real_if_any();
    plan().stop.reading = row.real_if_any();
    plan().stop.force_cap_newton = row.real_if_any();
    plan().runs_each = row.small_whole();
    if (const auto house_blade = row.whole_if_any()) plan().house_blade = blade_with(*house_blade);
    plan().order_seed = seed_in(row.text());
    kept_.sealed_at_utc = row.text_if_any();
    kept_.runs_read_before = row.small_whole();
  }

  void read_lists() {
    each_of_list("claim", [&](RowReader& row) {
      trials::Claim claim{.words = row.text()};
      claim.worth_it_margin = row.real();
      kept_.claims.push_back(std::move(claim));
    });
    each_of_list("plan_station",
                 [&](RowReader& row) { plan().reading.stations.push_back(row.text()); });
    each_of_list("plan_look", [&](RowReader& row) { plan().looks.push_back(row.small_whole()); });
    each_of_list("plan_cutting", [&](RowReader& row) {
      trials::PlannedCutting cutting{.medium = medium_with(row.whole())};
      cutting.lot = row.text();
      cutting.method = read_method(row);
      plan().cuttings.push_back(std::move(cutting));
    });
    read_checkpoints();
    each_of_list("plan_arm", [&](RowReader& row) {
      trials::PlannedArm arm{.blade = blade_with(row.whole())};
      arm.edge = read_edge(row);
      arm.cutting = static_cast<std::size_t>(row.whole());
      plan().arms.push_back(std::move(arm));
    });
    each_of_list("plan_cell", [&](RowReader& row) {
      trials::PlannedRun run{.arm = static_cast<std::size_t>(row.whole())};
      run.specimen = row.text();
      run.block = row.small_whole();
      run.order = row.small_whole();
      plan().runs.push_back(std::move(run));
    });
  }

  void read_checkpoints() {
    Places places("plan_checkpoint");
    each("plan_checkpoint",
         "WHERE trial_id = ? ORDER BY cutting, place",
         trial_id_,
         [&](const Row& cells) {
           RowReader row(cells);
           row.skip();
           const std::int64_t cutting = row.whole();
           places.next(cutting, row.whole());
           const auto index = static_cast<std::size_t>(cutting);
           if (index >= plan().cuttings.size())
             throw_unfitting("checkpoint is of a way of cutting");
           plan().cuttings[index].checkpoint_cuts.push_back(row.real());
         });
  }

  void look_whether_it_fits_together() {
    for (const trials::PlannedArm& arm : plan().arms) {
      if (arm.cutting >= plan().cuttings.size()) throw_unfitting("arm is of a way of cutting");
    }
    for (const trials::PlannedRun& run : plan().runs) {
      if (run.arm >= plan().arms.size()) throw_unfitting("run is of an arm");
    }
  }

  [[noreturn]] static void throw_unfitting(const std::string& what) {
    throw NotebookDamaged("a planned " + what + " that its plan has not");
  }

  std::string blade_with(std::int64_t blade_id) {
    std::optional<std::string> name;
    each("blade", "WHERE blade_id = ?", blade_id, [&](const Row& row) {
      name = blade_of(row).blade.name;
    });
    if (!name) throw NotebookDamaged("a plan's blade is missing");
    return *name;
  }

  trials::Medium medium_with(std::int64_t medium_id) {
    std::optional<trials::Medium> medium;
    each("medium", "WHERE medium_id = ?", medium_id, [&](const Row& cells) {
      RowReader row(cells);
      row.skip(2);
      medium.emplace();
      medium->name = row.text();
      medium->condition = row.text();
    });
    if (!medium) throw NotebookDamaged("a plan's medium is missing");
    return *medium;
  }

  SQLite::Database& database_;
  std::int64_t trial_id_;
  KeptPlan kept_;
};

class PlanWriter {
 public:
  PlanWriter(SQLite::Database& database, const PlanToWrite& from, const NewUid& new_uid)
      : database_(database),
        trial_id_(from.trial_id),
        plan_(from.asked.plan),
        from_(from),
        kit_(database, writers_, new_uid) {}

  void write() {
    put("plan", {head()});
    put("claim", list_of(from_.asked.claims, [](Row& row, const trials::Claim& claim) {
          row.insert(row.end(), {claim.words, claim.worth_it_margin});
        }));
    put("plan_station", list_of(plan_.reading.stations, [](Row& row, const std::string& station) {
          row.emplace_back(station);
        }));
    put("plan_look",
        list_of(plan_.looks, [](Row& row, int runs) { row.emplace_back(std::int64_t{runs}); }));
    put("plan_cutting",
        list_of(plan_.cuttings, [&](Row& row, const trials::PlannedCutting& cutting) {
          row.insert(row.end(), {kit_.medium(cutting.medium, ""), cutting.lot});
          add_method(row, cutting.method);
        }));
    put("plan_checkpoint", checkpoints());
    put("plan_arm", list_of(plan_.arms, [&](Row& row, const trials::PlannedArm& arm) {
          row.emplace_back(blade_called(arm.blade));
          add_edge(row, arm.edge);
          row.emplace_back(as_whole(arm.cutting));
        }));
    put("plan_cell", list_of(plan_.runs, [](Row& row, const trials::PlannedRun& run) {
          row.insert(
              row.end(),
              {as_whole(run.arm), run.specimen, std::int64_t{run.block}, std::int64_t{run.order}});
        }));
  }

 private:
  Row head() {
    const trials::PlannedReading& reading = plan_.reading;
    const auto& gate = plan_.start_gate;
    Row row{trial_id_, reading.kind, reading.unit, reading.thread, reading.thread_lot};
    row.insert(row.end(),
               {std::int64_t{reading.repeats},
                gate ? Cell(gate->target_reading) : Cell(),
                gate ? Cell(gate->tolerance_fraction) : Cell(),
                cell_or_null(plan_.stop.level),
                cell_or_null(plan_.stop.reading),
                cell_or_null(plan_.stop.force_cap_newton),
                std::int64_t{plan_.runs_each},
                plan_.house_blade.empty() ? Cell() : Cell(blade_called(plan_.house_blade)),
                std::to_string(plan_.order_seed.number),
                cell_or_null(from_.sealed_at_utc),
                std::int64_t{from_.runs_read_before}});
    return row;
  }

  std::vector<Row> checkpoints() const {
    std::vector<Row> rows;
    for (std::size_t c = 0; c < plan_.cuttings.size(); ++c) {
      const std::vector<double>& cuts = plan_.cuttings[c].checkpoint_cuts;
      for (std::size_t i = 0; i < cuts.size(); ++i) {
        rows.push_back({trial_id_, as_whole(c), as_whole(i), cuts[i]});
      }
    }
    return rows;
  }

  template <class Part, class Add>
  std::vector<Row> list_of(const std::vector<Part>& parts, Add add) const {
    std::vector<Row> rows;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      rows.push_back({trial_id_, as_whole(i)});
      add(rows.back(), parts[i]);
    }
    return rows;
  }

  void put(const std::string& table, const std::vector<Row>& wanted) {
    RowWriter& writer = writers_[table];
    std::vector<Row> there;
    const Cell trial = trial_id_;
    each_row(database_, table, "WHERE trial_id = ?", std::span(&trial, 1), [&](const Row& row) {
      there.push_back(row);
    });
    const auto with_key_of = [&](const std::vector<Row>& rows, const Row& row) {
      return std::ranges::find_if(
          rows, [&](const Row& other) { return writer.have_one_key(row, other); });
    };
    for (const Row& row : there) {
      if (with_key_of(wanted, row) == wanted.end()) writer.remove(row);
    }
    for (const Row& row : wanted) {
      const auto before = with_key_of(there, row);
      if (before == there.end()) {
        writer.insert(row);
      } else if (*before != row) {
        writer.update(row);
      }
    }
  }

  // Nothing is told of it but its name, so nothing contradicts what the kit says.
  std::int64_t blade_called(const std::string& name) { return kit_.blade({.name = name}, "").id; }

  SQLite::Database& database_;
  std::int64_t trial_id_;
  const trials::Plan& plan_;
  const PlanToWrite& from_;
  RowWriters writers_{database_};
  KitRows kit_;
};

}  // namespace

bool is_of_plans(std::string_view table) {
  return table == "claim" || table == "plan" || table.starts_with("plan_");
}

std::optional<KeptPlan> read_plan(SQLite::Database& database, std::int64_t trial_id) {
  return PlanReader(database, trial_id).read();
}

void write_plan(SQLite::Database& database, const PlanToWrite& plan, const NewUid& new_uid) {
  PlanWriter(database, plan, new_uid).write();
}

}  // namespace keenfall::notebook
