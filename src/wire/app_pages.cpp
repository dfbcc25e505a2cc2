#include "wire/app_pages.h"

#include "notebook/looks.h"
#include "notebook/taken_entries.h"
#include "wire/asked_object.h"
#include "wire/home_object.h"
#include "wire/json_pieces.h"
#include "wire/trial_json.h"

namespace keenfall::wire {

namespace {

Json entry_json(const notebook::JournalEntry& entry) {
  Json object = {{"entry", entry.entry},
                 {"at_utc", entry.at_utc},
                 {"who", entry.who},
                 {"what", entry.what},
                 {"why", entry.why}};
  if (entry.undoes) object["undoes"] = *entry.undoes;
  if (entry.undone_by) object["undone_by"] = *entry.undone_by;
  object["holds"] = !entry.undone_by;
  if (notebook::is_look(entry)) object["is_look"] = true;
  if (notebook::took_a_table(entry)) object["took_a_table"] = true;
  return object;
}

Json changed_json(const Changed& changed) {
  Json object = {
      {"entry", changed.entry}, {"last_entry", changed.last_entry}, {"what", changed.what}};
  if (!changed.remarks.empty()) object["remarks"] = sentences_json(changed.remarks);
  return object;
}

// {"name": [each]}
template <class Values, class ToJson>
Json list_named(const char* name, const Values& values, ToJson to_json) {
  Json object = {{name, Json::array()}};
  for (const auto& value : values) object[name].push_back(to_json(value));
  return object;
}

}  // namespace

std::string notebooks_to_json(const Notebooks& notebooks) {
  Json object = list_named("notebooks", notebooks.notebooks, [](const FoundNotebook& found) {
    Json one = {{"name", found.name}, {"path", found.path}};
    put_text(one, "changed_at_utc", found.changed_at_utc);
    return one;
  });
  object["folder"] = notebooks.folder;
  return in_one_line(object);
}

std::string trial_page_to_json(const TrialPage& page) {
  Json object = {{"uid", page.uid}, {"name", page.trial.name}, {"last_entry", page.last_entry}};
  put_path(object, page.path);
  if (page.asked) object["asked"] = asked_json(*page.asked, page.told_in);
  object["recorded"] = trial_json(page.trial, page.told_in);
  object["looks"] = Json::array();
  for (const SeenLook& look : page.looks) {
    object["looks"].push_back({{"at_utc", look.at_utc}, {"who", look.who}, {"words", look.words}});
  }
  object["deviations"] = sentences_json(page.deviations);
  object["to_cut"] = Json::array();
  for (const planning::RunToCut& run : page.to_cut) {
    object["to_cut"].push_back({{"planned", run.planned}, {"name", run.name}});
  }
  return in_one_line(object);
}

std::string journal_to_json(const JournalPage& page) {
  Json object = list_named("entries", page.entries, entry_json);
  if (page.next_before) object["next_before"] = *page.next_before;
  return in_one_line(object);
}

std::string changed_to_json(const Changed& changed) { return in_one_line(changed_json(changed)); }

std::string taken_back_to_json(const TakenBack& back) {
  Json object = {{"changed", changed_json(back.changed)}, {"trial_name", back.trial_name}};
  put_text(object, "trial", back.trial);
  return in_one_line(object);
}

std::string found_to_json(const std::vector<FoundPlace>& found) {
  return in_one_line(list_named("found", found, [](const FoundPlace& place) -> Json {
    Json object = {{"kind", place.kind}, {"words", place.words}, {"path", place.path}};
    put_text(object, "trial", place.trial);
    return object;
  }));
}

std::string steels_to_json(const std::vector<SteelRow>& steels) {
  return in_one_line(list_named("steels", steels, [](const SteelRow& steel) -> Json {
    return {{"name", steel.name}, {"also", sentences_json(steel.also)}, {"words", steel.words}};
  }));
}

std::string grits_to_json(const std::vector<GritWords>& grits) {
  return in_one_line(list_named("grits", grits, [](const GritWords& grit) -> Json {
    return {{"name", grit.name}, {"size_um", finite_number(grit.size_um)}, {"words", grit.words}};
  }));
}

}  // namespace keenfall::wire
