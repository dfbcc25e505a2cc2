#include "notebook/run_growth.h"

#include "base/plain_number.h"

#include <vector>

namespace keenfall::notebook {

namespace {

// What was struck in the notebook since is the same; what a table strikes anew is not.
bool strikes_nothing_new(const std::optional<std::string>& kept,
                         const std::optional<std::string>& taken) {
  return !taken || kept == taken;
}

bool is_same(trials::Reading kept, trials::Reading taken) {
  if (!strikes_nothing_new(kept.struck_reason, taken.struck_reason)) return false;
  kept.line = taken.line;
  kept.struck_reason = taken.struck_reason;
  return kept == taken;
}

bool is_same(trials::EdgeLife kept, trials::EdgeLife taken) {
  if (!strikes_nothing_new(kept.struck_reason, taken.struck_reason)) return false;
  kept.line = taken.line;
  kept.struck_reason = taken.struck_reason;
  return kept == taken;
}

bool is_same(const trials::Event& kept, const trials::Event& taken) { return kept == taken; }
bool is_same(const std::string& kept, const std::string& taken) { return kept == taken; }

template <class Part>
bool begins_with(const std::vector<Part>& taken, const std::vector<Part>& kept) {
  if (taken.size() < kept.size()) return false;
  for (std::size_t i = 0; i < kept.size(); ++i) {
    if (!is_same(kept[i], taken[i])) return false;
  }
  return true;
}

// The first reading of the kept run that the taken one has not at its place.
std::string first_other_reading(const trials::Run& kept, const trials::Run& taken) {
  for (std::size_t i = 0; i < kept.readings.size(); ++i) {
    const trials::Reading& reading = kept.readings[i];
    if (i < taken.readings.size() && is_same(reading, taken.readings[i])) continue;
    return "reads " + base::plain_number(reading.reading) + " at " +
           base::plain_number(reading.cuts);
  }
  return "has other readings";
}

}  // namespace

Growth growth_of(const trials::Run& kept, const trials::Run& taken) {
  Growth growth{.kept = {.readings = kept.readings.size(),
                         .edge_lives = kept.edge_lives.size(),
                         .events = kept.events.size(),
                         .deviations = kept.deviations.size(),
                         .notes = kept.notes.size()}};
  if (!begins_with(taken.readings, kept.readings)) {
    growth.contradiction = first_other_reading(kept, taken);
  } else if (!begins_with(taken.edge_lives, kept.edge_lives)) {
    growth.contradiction = "lasted otherwise";
  } else if (!begins_with(taken.events, kept.events) ||
             !begins_with(taken.deviations, kept.deviations) ||
             !begins_with(taken.notes, kept.notes)) {
    growth.contradiction = "has other events or notes";
  } else if (!strikes_nothing_new(kept.voided_reason, taken.voided_reason)) {
    growth.contradiction = "is not voided, or for another reason";
  } else if (kept.block != taken.block || kept.order != taken.order || kept.date != taken.date ||
             kept.operator_name != taken.operator_name || kept.medium_lot != taken.medium_lot ||
             kept.sharpenings_since_new != taken.sharpenings_since_new) {
    growth.contradiction = "has another block, order, date, lot or person";
  }
  growth.is_more = taken.readings.size() > kept.readings.size() ||
                   taken.edge_lives.size() > kept.edge_lives.size() ||
                   taken.events.size() > kept.events.size() ||
                   taken.deviations.size() > kept.deviations.size() ||
                   taken.notes.size() > kept.notes.size();
  return growth;
}

}  // namespace keenfall::notebook
