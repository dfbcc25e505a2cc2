#include "wire/app_json.h"

#include "base/require.h"
#include "materials/told_in.h"
#include "materials/units.h"
#include "wire/problems_object.h"

namespace keenfall::wire {

namespace {

double in_base_units(std::string_view unit) {
  const materials::Unit* const known = materials::find_unit(unit);
  base::require(known != nullptr, "a unit to choose is one of the table");
  return known->in_base_units;
}

// What numbers are told and typed in; a page turns what is typed into what is kept by these.
Json units_to_choose() {
  Json units = {{"force", Json::array()}, {"length", Json::array()}};
  for (const materials::ToldChoice& force : materials::forces_to_choose()) {
    units["force"].push_back(
        {{"unit", force.unit}, {"words", force.words}, {"newton", in_base_units(force.unit)}});
  }
  constexpr double kMmPerMetre = 1000;
  for (const materials::ToldChoice& length : materials::lengths_to_choose()) {
    const std::string longer = materials::long_length_unit({.length = std::string(length.unit)});
    units["length"].push_back({{"unit", length.unit},
                               {"words", length.words},
                               {"mm", in_base_units(length.unit)},
                               {"long_unit", longer},
                               {"long_m", in_base_units(longer) / kMmPerMetre}});
  }
  return units;
}

}  // namespace

std::string app_to_json(const AppTold& app) {
  Json document = Json::object();
  document["program_version"] = app.program_version;
  if (app.notebook) {
    Json notebook = Json::object();
    notebook["name"] = app.notebook->name;
    notebook["path"] = app.notebook->path;
    notebook["uid"] = app.notebook->uid;
    put_text(notebook, "id", app.notebook->id);
    notebook["may_write"] = app.notebook->may_write;
    put_text(notebook, "why_not", app.notebook->why_not);
    document["notebook"] = notebook;
  }
  document["cautions"] = sentences_json(app.cautions);
  document["folder"] = app.folder;
  document["units"] = units_to_choose();
  return document_of(document);
}

std::string stopped_to_json(const std::string& sentence) {
  Json document = Json::object();
  document["sentence"] = sentence;
  return document_of(document);
}

}  // namespace keenfall::wire
