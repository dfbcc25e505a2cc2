#include "notebook/kit_use.h"

#include "notebook/plan_rows.h"

#include <algorithm>
#include <variant>

namespace keenfall::notebook {

namespace {

// Queries for numbers of trials, and what stands for their question marks.
struct WhereUsed {
  std::string cut;
  std::string planned;
  std::vector<Cell> values;
};

struct FindUse {
  std::int64_t id;

  WhereUsed operator()(const trials::Blade&) const {
    return {.cut = "SELECT trial_id FROM trial_blade WHERE blade_id = ?1",
            .planned =
                "SELECT trial_id FROM plan_arm WHERE blade_id = ?1 UNION SELECT trial_id "
                "FROM plan WHERE house_blade_id = ?1",
            .values = {id}};
  }
  WhereUsed operator()(const trials::Medium&) const {
    return {.cut = "SELECT trial_id FROM run WHERE medium_id = ?1",
            .planned = "SELECT trial_id FROM plan_cutting WHERE medium_id = ?1",
            .values = {id}};
  }
  WhereUsed operator()(const trials::MediumLot& lot) const {
    const std::string is_of_lot =
        " JOIN medium USING (medium_id) WHERE name = ?1 AND condition = ?2 AND medium_lot = ?3";
    return {
        .cut = "SELECT trial_id FROM (SELECT trial_id, medium_id, medium_lot FROM run)" + is_of_lot,
        .planned = "SELECT trial_id FROM plan_cutting" + is_of_lot,
        .values = {lot.medium.name, lot.medium.condition, lot.name}};
  }
  WhereUsed operator()(const trials::Thread& thread) const {
    return {.cut =
                "SELECT trial_id FROM series WHERE kind = ?1 AND thread = ?2 AND thread_lot = "
                "?3",
            .planned =
                "SELECT trial_id FROM plan WHERE reading_kind = ?1 AND thread = ?2 AND "
                "thread_lot = ?3",
            .values = {thread.kind, thread.name, thread.lot}};
  }
  WhereUsed operator()(const trials::ReadingKind& kind) const {
    return {.cut = "SELECT trial_id FROM series WHERE kind = ?1",
            .planned = "SELECT trial_id FROM plan WHERE reading_kind = ?1",
            .values = {kind.name}};
  }
  WhereUsed operator()(const trials::NamedEdge&) const { return {}; }
  WhereUsed operator()(const trials::KitStone&) const { return {}; }
};

std::vector<std::string> names_of_trials(SQLite::Database& database,
                                         const std::string& numbers,
                                         const std::vector<Cell>& values) {
  SQLite::Statement find(
      database, "SELECT name FROM trial WHERE trial_id IN (" + numbers + ") ORDER BY trial_id");
  for (std::size_t i = 0; i < values.size(); ++i) {
    const int place = static_cast<int>(i) + 1;
    if (const auto* id = std::get_if<std::int64_t>(&values[i])) find.bind(place, *id);
    if (const auto* text = std::get_if<std::string>(&values[i])) find.bind(place, *text);
  }
  std::vector<std::string> names;
  while (find.executeStep()) names.push_back(find.getColumn(0).getString());
  return names;
}

}  // namespace

std::vector<std::string> trials_using(SQLite::Database& database,
                                      const ShelvedThing& thing,
                                      std::int64_t version) {
  const WhereUsed used = std::visit(FindUse{thing.id}, thing.thing);
  if (used.cut.empty()) return {};
  const bool has_plans = version >= kFirstVersionWithPlans;
  return names_of_trials(
      database, used.cut + (has_plans ? " UNION " + used.planned : ""), used.values);
}

std::vector<std::string> trials_naming(SQLite::Database& database, const ShelvedThing& thing) {
  const bool is_named_by_its_row = std::holds_alternative<trials::Blade>(thing.thing) ||
                                   std::holds_alternative<trials::Medium>(thing.thing);
  if (!is_named_by_its_row) return {};  // trials keep what the others are called themselves
  const WhereUsed used = std::visit(FindUse{thing.id}, thing.thing);
  return names_of_trials(database,
                         used.cut +
                             " UNION SELECT trial_id FROM plan WHERE sealed_at_utc IS NOT NULL "
                             "AND trial_id IN (" +
                             used.planned + ")",
                         used.values);
}

std::vector<std::string> trials_using_specimen(SQLite::Database& database,
                                               std::int64_t blade_id,
                                               const std::string& specimen) {
  return names_of_trials(
      database,
      "SELECT trial_id FROM trial_specimen JOIN specimen USING (specimen_id) WHERE blade_id = ?1 "
      "AND name = ?2 UNION SELECT trial_id FROM run WHERE blade_id = ?1 AND specimen = ?2 UNION "
      "SELECT plan_cell.trial_id FROM plan_cell JOIN plan_arm ON plan_arm.trial_id = "
      "plan_cell.trial_id AND plan_arm.place = plan_cell.arm WHERE blade_id = ?1 AND specimen = "
      "?2",
      {blade_id, specimen});
}

}  // namespace keenfall::notebook
