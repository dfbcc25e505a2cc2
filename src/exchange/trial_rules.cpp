#include "exchange/trial_rules.h"

#include "base/plain_number.h"
#include "exchange/reading_unit.h"
#include "exchange/table_columns.h"

#include <cmath>
#include <optional>
#include <utility>

namespace keenfall::exchange {

namespace {

constexpr std::size_t kMostRules = 100;

class Rules {
 public:
  explicit Rules(const trials::Trial& trial) : trial_(trial) {}

  std::vector<BrokenRule> broken() {
    const std::string of_trial = "Trial " + trial_.name;
    if (trial_.counted.one.empty() || trial_.counted.many.empty()) {
      add("trial", "counted_one", of_trial + " does not say what is counted", "cut, cuts");
    }
    for (const trials::Blade& blade : trial_.blades) look_at(blade);
    for (const trials::ReadingSeries& series : trial_.series) look_at(series);
    for (const trials::Run& run : trial_.runs) {
      if (broken_.size() >= kMostRules) break;
      look_at(run);
    }
    return std::move(broken_);
  }

 private:
  void add(const std::string& table,
           const std::string& column,
           const std::string& sentence,
           const std::string& accepted) {
    if (broken_.size() >= kMostRules) return;
    broken_.push_back({.table = table,
                       .problem = {.kind = base::ProblemKind::bad_value,
                                   .sentence = sentence + ".",
                                   .place = {.column = column},
                                   .accepted = accepted}});
  }

  static bool is_in_range(const ColumnDefinition& definition, double number) {
    return std::isfinite(number) && number >= definition.lowest && number <= definition.highest &&
           (number != definition.lowest || definition.is_lowest_allowed);
  }

  // A number that stands in the table's column of that meaning.
  template <class Number>
  void look_at(const std::string& table,
               const std::string& column,
               const std::string& whose,
               Column meaning,
               const std::optional<Number>& number) {
    const ColumnDefinition& definition = definition_of(meaning);
    if (!number || is_in_range(definition, static_cast<double>(*number))) return;
    add(table,
        column,
        whose + " has " + base::plain_number(static_cast<double>(*number)) + " as its " + column,
        std::string(definition.accepted));
  }

  void look_at_hardness(const std::string& table,
                        const std::string& whose,
                        const std::optional<trials::Hardness>& hardness) {
    if (!hardness) return;
    if (hardness->scale == trials::HardnessScale::rockwell_c) {
      look_at(table, "hardness", whose, Column::hardness, std::optional(hardness->reading));
    } else if (!(hardness->reading > 0) || !std::isfinite(hardness->reading)) {
      add(table, "hardness", whose + " has a hardness that is not above zero", "such as 700 HV");
    }
    if (hardness->error && (!(*hardness->error >= 0) || !std::isfinite(*hardness->error))) {
      add(table, "hardness_error", whose + " has a hardness with a negative error", "0 or more");
    }
  }

  void look_at(const trials::Blade& blade) {
    const std::string whose = "Blade " + blade.name;
    look_at_hardness("blade", whose, blade.hardness);
    for (const trials::Specimen& specimen : blade.specimens) {
      look_at_hardness("specimen", whose + ", specimen " + specimen.name, specimen.hardness);
    }
  }

  void look_at(const trials::ReadingSeries& series) {
    const trials::ReadingKind& kind = series.kind;
    const std::string whose = "Trial " + trial_.name + ", kind of reading " + kind.name + ":";
    const auto refuse =
        [&](const std::string& column, const std::string& sentence, const std::string& accepted) {
          add("series", column, whose + " " + sentence, accepted);
        };
    if (kind.name.empty()) refuse("kind", "it has no name", "such as thread_push");
    if (!(kind.default_level > 1) || !std::isfinite(kind.default_level)) {
      refuse("default_level",
             "edges cannot be compared at " + base::plain_number(kind.default_level) +
                 " times the start reading",
             "a number above 1, such as 2");
    }
    if (kind.resolution && !(*kind.resolution > 0)) {
      refuse("resolution", "the smallest step must be above zero", "such as 0.01, or nothing");
    } else if (!kind.resolution && kind.zero == trials::ZeroReading::below_resolution) {
      refuse("resolution", "a zero means less than the smallest step, which is not said", "0.01");
    }
    if (kind.largest && !(*kind.largest > 0)) {
      refuse("largest", "the largest possible reading must be above zero", "100, or nothing");
    }
    if (unit_for_kind(series.unit, kind) != series.unit && series.unit != kind.unit) {
      refuse("unit", "it cannot be in \"" + series.unit + "\"", kind.unit);
    }
    const trials::ReadingKind* const known = trials::find_reading_kind(kind.name);
    if (known == nullptr) return;
    if (kind.keener_when != known->keener_when) {
      const bool is_lower = known->keener_when == trials::KeenerWhen::lower;
      refuse("keener_when",
             "the " + std::string(is_lower ? "lower" : "higher") + " reading is the keener one",
             is_lower ? "lower" : "higher");
    }
    if (!unit_for_kind(kind.unit, *known)) {
      refuse("kind_unit", "it is not read in \"" + kind.unit + "\"", known->unit);
    }
  }

  void look_at(const trials::Run& run) {
    const std::string whose = "Run " + run.name + " of " + run.arm.blade + " on " +
                              run.arm.medium.name + ", trial " + trial_.name + ",";
    const auto look = [&](const std::string& column, Column meaning, const auto& number) {
      look_at("run", column, whose, meaning, number);
    };
    const auto angle = [](const std::optional<trials::PerSideAngle>& per_side) {
      return per_side ? std::optional(per_side->deg) : std::nullopt;
    };
    if (run.arm.medium.name.empty()) {
      add("medium", "name", whose + " was cut in a medium without a name", "such as felt");
    }
    look("bevel_angle_deg", Column::bevel_angle, angle(run.arm.edge.bevel_angle));
    look("apex_angle_deg", Column::apex_angle, angle(run.arm.edge.apex_angle));
    look("thickness_behind_edge_mm",
         Column::thickness_behind_edge,
         run.arm.edge.thickness_behind_edge_mm);
    look("cut_length_mm", Column::cut_length, run.arm.method.cut_length_mm);
    look("edge_used_mm", Column::edge_used, run.arm.method.edge_used_mm);
    look("cutting_order", Column::order, run.order);
    look("sharpenings_since_new", Column::sharpenings_since_new, run.sharpenings_since_new);
    for (const trials::Reading& reading : run.readings) look_at(whose, reading);
    for (const trials::EdgeLife& life : run.edge_lives) look_at(whose, life);
    for (const trials::Event& event : run.events) {
      look_at("event", "cuts", whose, Column::cuts, std::optional(event.cuts));
    }
  }

  void look_at(const std::string& whose, const trials::Reading& reading) {
    look_at("reading", "cuts", whose, Column::cuts, std::optional(reading.cuts));
    look_at("reading", "repeat", whose, Column::repeat, reading.repeat);
    const trials::ReadingSeries& series = trial_.series.at(reading.series);
    const bool is_zero_refused = series.kind.zero == trials::ZeroReading::refused;
    const std::string reads = whose + " reads " + base::plain_number(reading.reading) + " at " +
                              base::plain_number(reading.cuts);
    if (!std::isfinite(reading.reading) || reading.reading < 0 ||
        (reading.reading == 0 && is_zero_refused)) {
      add("reading",
          "reading",
          reads + ", which cannot be",
          is_zero_refused ? "a number above zero, such as 104" : "a number of zero or more");
    } else if (series.kind.largest && unit_for_kind(series.unit, series.kind) == series.unit &&
               converted_reading(reading.reading, series.unit, series.kind.unit) >
                   *series.kind.largest) {
      const std::string largest = base::plain_number(*series.kind.largest) + " " + series.kind.unit;
      add("reading", "reading", reads + ", and the largest possible is " + largest, largest);
    }
  }

  void look_at(const std::string& whose, const trials::EdgeLife& life) {
    look_at("edge_life", "lasted_cuts", whose, Column::cuts, std::optional(life.lasted_cuts));
    look_at("edge_life", "failed_by_cuts", whose, Column::cuts, life.failed_by_cuts);
    look_at("edge_life", "level", whose, Column::test_level, life.level);
    if (life.failed_by_cuts && !(*life.failed_by_cuts > life.lasted_cuts)) {
      add("edge_life",
          "failed_by_cuts",
          whose + " failed by " + base::plain_number(*life.failed_by_cuts) +
              " and still passed after " + base::plain_number(life.lasted_cuts),
          "more than lasted_cuts, or nothing");
    }
  }

  const trials::Trial& trial_;
  std::vector<BrokenRule> broken_;
};

}  // namespace

std::vector<BrokenRule> broken_rules(const trials::Trial& trial) { return Rules(trial).broken(); }

}  // namespace keenfall::exchange
