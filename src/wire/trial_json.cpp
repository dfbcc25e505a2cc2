#include "wire/trial_json.h"

#include "notebook/trial_words.h"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>

namespace keenfall::wire {

namespace {

// Written where it is said, also where nothing stands in it.
void put_reason(Json& object, const char* key, const std::optional<std::string>& reason) {
  if (reason) object[key] = *reason;
}

Json blade_json(const trials::Blade& blade) {
  Json object = {{"name", blade.name}};
  put_text(object, "steel", blade.steel);
  if (blade.hardness) object["hardness_words"] = in_words(*blade.hardness);
  object["specimens"] = Json::array();
  for (const trials::Specimen& specimen : blade.specimens) {
    Json piece = {{"name", specimen.name}};
    if (specimen.hardness) piece["hardness_words"] = in_words(*specimen.hardness);
    object["specimens"].push_back(piece);
  }
  return object;
}

struct Telling {
  const trials::Trial& trial;
  const materials::ToldIn& told;
};

// All readings of one kind and thread in one, as they are judged: that of the first series.
std::string unit_told(const trials::ReadingSeries& series, const Telling& by) {
  const auto first = std::ranges::find_if(by.trial.series, [&](const auto& one) {
    return one.kind.name == series.kind.name && one.thread == series.thread;
  });
  return told_unit(first->unit, by.told);
}

Json series_json(const trials::ReadingSeries& series, const Telling& by) {
  Json object = {{"kind", series.kind.name},
                 {"kind_words", series.kind.words},
                 {"unit", unit_told(series, by)},
                 {"keener_when", keener_when_name(series.kind.keener_when)},
                 {"makes_curves", series.kind.use == trials::ReadingUse::curve}};
  put_text(object, "thread", series.thread);
  put_text(object, "thread_lot", series.thread_lot);
  return object;
}

Json reading_json(const trials::Reading& reading, const Telling& by) {
  const trials::ReadingSeries& series = by.trial.series.at(reading.series);
  const double number = materials::told_number(reading.reading, series.unit, unit_told(series, by));
  Json object = {{"series", reading.series},
                 {"cuts", finite_number(reading.cuts)},
                 {"reading", finite_number(number)}};
  put_text(object, "station", reading.station);
  if (reading.repeat) object["repeat"] = *reading.repeat;
  put_reason(object, "struck", reading.struck_reason);
  put_reason(object, "doubtful", reading.doubtful_reason);
  return object;
}

Json edge_life_json(const trials::EdgeLife& life) {
  Json object = Json::object();
  put_text(object, "test", life.test);
  object["lasted_cuts"] = finite_number(life.lasted_cuts);
  if (life.failed_by_cuts) object["failed_by_cuts"] = finite_number(*life.failed_by_cuts);
  if (life.level) object["level"] = finite_number(*life.level);
  put_reason(object, "struck", life.struck_reason);
  return object;
}

Json event_json(const trials::Event& event) {
  Json object = {{"kind", notebook::word_of(event.kind)}, {"cuts", finite_number(event.cuts)}};
  put_text(object, "words", event.as_written);
  return object;
}

template <class Values, class ToJson>
Json list_json(const Values& values, ToJson to_json) {
  Json list = Json::array();
  for (const auto& value : values) list.push_back(to_json(value));
  return list;
}

Json run_of_trial_json(const trials::Run& run, const Telling& by) {
  Json object = {{"name", run.name}, {"blade", run.arm.blade}, {"medium", run.arm.medium.name}};
  put_text(object, "condition", run.arm.medium.condition);
  put_text(object, "edge_words", in_words(run.arm.edge, by.told));
  put_text(object, "method_words", in_words(run.arm.method, by.told));
  put_text(object, "specimen", run.specimen);
  put_text(object, "block", run.block);
  if (run.order) object["order"] = *run.order;
  put_text(object, "medium_lot", run.medium_lot);
  put_text(object, "operator", run.operator_name);
  put_text(object, "date", run.date);
  if (run.sharpenings_since_new) object["sharpenings_since_new"] = *run.sharpenings_since_new;
  object["readings"] = list_json(
      run.readings, [&by](const trials::Reading& reading) { return reading_json(reading, by); });
  object["edge_lives"] = list_json(run.edge_lives, edge_life_json);
  object["events"] = list_json(run.events, event_json);
  object["deviations"] = sentences_json(run.deviations);
  object["notes"] = sentences_json(run.notes);
  put_reason(object, "voided", run.voided_reason);
  return object;
}

}  // namespace

Json trial_json(const trials::Trial& trial, const materials::ToldIn& told) {
  const Telling by{.trial = trial, .told = told};
  const auto series = [&by](const trials::ReadingSeries& one) { return series_json(one, by); };
  const auto run = [&by](const trials::Run& one) { return run_of_trial_json(one, by); };
  return {{"name", trial.name},
          {"counted", trial.counted.many},
          {"blades", list_json(trial.blades, blade_json)},
          {"series", list_json(trial.series, series)},
          {"runs", list_json(trial.runs, run)}};
}

}  // namespace keenfall::wire
