#include "telling/arms_table.h"

#include "base/plain_number.h"
#include "telling/arm_groups.h"
#include "telling/lasting.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::telling {

namespace {

using verdicts::ArmResult;
using verdicts::Judgement;

bool has_a_common_reading(const Judgement& judgement) {
  return std::ranges::any_of(judgement.arms,
                             [](const ArmResult& arm) { return arm.common_reading.has_value(); });
}

constexpr const char* kBeyond = "*";

// "108 (95–125)"; marked where it lies beyond what was cut; where no run got there, its lower end.
std::string cuts_cell(const verdicts::CutsToLevel& reached) {
  if (const auto least = reached.at_least()) return "at least " + cuts_text(*least);
  return fmt::format("{}{} ({}–{})",
                     cuts_text(reached.cuts.median),
                     reached.beyond_what_was_cut ? kBeyond : "",
                     cuts_text(reached.cuts.lo95),
                     cuts_text(reached.cuts.hi95));
}

std::vector<const verdicts::CutsToLevel*> all_cuts_of(const ArmResult& arm) {
  std::vector<const verdicts::CutsToLevel*> present;
  for (const auto* cuts : {&arm.half_keenness, &arm.stop_level, &arm.common_reading, &arm.test}) {
    if (*cuts) present.push_back(&**cuts);
  }
  return present;
}

template <class Is>
bool any_cuts(const Judgement& judgement, Is is) {
  return std::ranges::any_of(judgement.arms, [&is](const ArmResult& arm) {
    return std::ranges::any_of(all_cuts_of(arm), [&is](const auto* cuts) { return is(*cuts); });
  });
}

// Each medium whose edges are compared at one reading may have another.
std::vector<double> common_readings(const Judgement& judgement) {
  std::vector<double> readings;
  for (const ArmGroup& group : groups_of(judgement)) {
    const verdicts::At at = compared_at(judgement, group);
    if (at.what != verdicts::ComparedAt::common_reading) continue;
    if (std::ranges::count(readings, at.reading) == 0) readings.push_back(at.reading);
  }
  if (readings.empty() && judgement.stop_reading) readings.push_back(*judgement.stop_reading);
  return readings;
}

std::string second_level_head(const Judgement& judgement) {
  const bool rises = judgement.kind.keener_when == trials::KeenerWhen::lower;
  if (has_a_common_reading(judgement)) {
    const std::vector<double> readings = common_readings(judgement);
    return readings.size() == 1
               ? "to " + verdicts::asked_reading_text(readings.front()) + " " + judgement.unit
               : std::string("to one reading");
  }
  return rises ? "to " + base::plain_number(judgement.stop_level) + "× start"
               : "to " + to_figures(1 / judgement.stop_level, 2) + " of start";
}

bool holds_read_arms(const Judgement& judgement) {
  return std::ranges::any_of(judgement.arms, [](const ArmResult& arm) { return !arm.test; });
}

std::vector<Column> tested_columns_for(const Judgement& judgement) {
  return {{.head = "blade", .side = Side::left},
          {.head = "runs"},
          {.head = "seen to fail", .drop_order = 2},
          {.head = holds_read_arms(judgement) ? second_level_head(judgement) : "until it fails"},
          {.head = "scatter", .drop_order = 1}};
}

std::vector<std::string> tested_cells_for(const ArmResult& arm, const std::string& name) {
  const verdicts::CutsToLevel& until = arm.test ? *arm.test : *arm.stop_level;
  return {name + (arm.test ? "" : ", read"),
          std::to_string(arm.runs),
          arm.test ? std::to_string(until.runs_that_reached) : std::string(),
          cuts_cell(until),
          scatter_text(arm.run_scatter_log_sd.median)};
}

std::vector<Column> columns_for(const Judgement& judgement) {
  if (judgement.test) return tested_columns_for(judgement);
  return {{.head = "blade", .side = Side::left},
          {.head = "runs"},
          {.head = "start, " + judgement.unit, .drop_order = 3},
          {.head = "half keenness"},
          {.head = second_level_head(judgement), .drop_order = 4},
          {.head = "scatter", .drop_order = 2},
          {.head = "shape", .drop_order = 1}};
}

std::vector<std::string> cells_for(const Judgement& judgement,
                                   const ArmResult& arm,
                                   const std::string& name) {
  if (judgement.test) return tested_cells_for(arm, name);
  std::string second = cuts_cell(*arm.stop_level);
  if (has_a_common_reading(judgement)) {
    second = arm.common_reading ? cuts_cell(*arm.common_reading) : std::string("not given");
  }
  return {name,
          std::to_string(arm.runs),
          reading_text(arm.start_reading->median),
          cuts_cell(*arm.half_keenness),
          second,
          scatter_text(arm.run_scatter_log_sd.median),
          to_figures(arm.shape->median, 2)};
}

Row row_for(const Judgement& judgement, const ArmResult& arm, const ArmName& name) {
  return {.key = name.label == name.name ? "" : name.label,
          .cells = cells_for(judgement, arm, name.name)};
}

// " (one reading: 270 gf)" where the head of its column cannot say it for all media.
std::string one_reading_of(const Judgement& judgement, const ArmGroup& group) {
  const verdicts::At at = compared_at(judgement, group);
  if (at.what != verdicts::ComparedAt::common_reading) return {};
  if (common_readings(judgement).size() < 2) return {};
  return " (one reading: " + verdicts::asked_reading_text(at.reading) + " " + judgement.unit + ")";
}

void add_footnotes(const Judgement& judgement, std::vector<std::string>& footnotes) {
  const auto is_carried_on = [](const verdicts::CutsToLevel& cuts) {
    return cuts.beyond_what_was_cut && !cuts.at_least();
  };
  if (any_cuts(judgement, is_carried_on)) {
    footnotes.push_back(std::string(kBeyond) + " beyond what was cut" +
                        (judgement.test ? "." : ": the curve carried on."));
  }
  if (any_cuts(judgement, [](const auto& cuts) { return cuts.at_least().has_value(); })) {
    footnotes.push_back("At least: no run got there, so the lower end of the 95 % interval alone.");
  }
}

}  // namespace

Table arms_table(const Judgement& judgement) {
  if (judgement.arms.empty()) return {};
  const std::vector<ArmName> names = names_of(judgement);
  Table table{
      .caption = "In " + judgement.counted.many + ", with 95 % intervals.",
      .columns = columns_for(judgement),
      .columns_explained = "Scatter: how much longer or shorter one run lasts than the next."};
  if (!judgement.test) {
    table.columns_explained += " Shape: below 1 an edge fades fast at first, then slower.";
  }
  add_footnotes(judgement, table.footnotes);
  for (const ArmGroup& group : groups_of(judgement)) {
    table.rows.push_back(
        {.cells = {"On " + group.medium_words + one_reading_of(judgement, group)}});
    for (const std::size_t arm : group.arms) {
      table.rows.push_back(row_for(judgement, judgement.arms[arm], names[arm]));
    }
  }
  return table;
}

}  // namespace keenfall::telling
