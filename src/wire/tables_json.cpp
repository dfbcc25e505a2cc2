#include "wire/tables_json.h"

#include "wire/problems_object.h"

#include <utility>

namespace keenfall::wire {

namespace {

void put_index(Json& json, const char* key, const std::optional<std::size_t>& index) {
  if (index) json[key] = *index;
}

struct ShapeWords {
  std::string_view name;
  std::string_view words;
};

std::optional<ShapeWords> words_of(const std::optional<exchange::TableShape>& shape) {
  if (!shape) return std::nullopt;
  switch (*shape) {
    case exchange::TableShape::decide:
      return std::nullopt;
    case exchange::TableShape::long_rows:
      return ShapeWords{"long", "a row a reading"};
    case exchange::TableShape::wide:
      return ShapeWords{"wide", "cuts down, runs across"};
    case exchange::TableShape::runs:
      return ShapeWords{"runs", "a line a run"};
  }
  return std::nullopt;
}

void put_shape(Json& json, const std::optional<exchange::TableShape>& shape) {
  if (const auto words = words_of(shape)) {
    json["shape"] = words->name;
    json["shape_words"] = words->words;
  }
}

Json header_object(const exchange::SurveyedHeader& header) {
  Json json = {{"theirs", header.theirs}};
  put_text(json, "ours", header.ours);
  put_text(json, "ours_words", header.words);
  if (!header.is_own_name) json["guessed"] = true;
  if (header.is_proposed) json["to_be_chosen"] = true;
  put_index(json, "row", header.row);
  return json;
}

Json header_objects(const std::vector<exchange::SurveyedHeader>& headers) {
  Json json = Json::array();
  for (const exchange::SurveyedHeader& header : headers) json.push_back(header_object(header));
  return json;
}

Json grid_object(const exchange::SurveyedGrid& grid) {
  Json json = {{"source", grid.source}};
  put_text(json, "sheet", grid.sheet);
  put_shape(json, grid.shape);
  json["rows"] = grid.rows;
  json["row_numbers"] = grid.row_numbers;
  json["row_count"] = grid.row_count;
  put_index(json, "header_row", grid.header_row);
  json["columns"] = header_objects(grid.headers);
  return json;
}

Json placed_object(const exchange::PlacedProblem& placed) {
  Json json = Json::object();
  put_index(json, "source", placed.source);
  put_index(json, "grid", placed.grid);
  put_index(json, "row", placed.row);
  put_index(json, "column", placed.column);
  json["problem"] = problem_json(placed.problem);
  return json;
}

Json known_columns_json() {
  Json json = Json::array();
  for (const exchange::KnownColumn& column : exchange::known_columns()) {
    json.push_back({{"ours", column.ours},
                    {"label", column.label},
                    {"words", column.words},
                    {"required", column.is_required}});
  }
  return json;
}

std::size_t readings_in(const trials::Trial& trial) {
  std::size_t count = 0;
  for (const trials::Run& run : trial.runs) count += run.readings.size();
  return count;
}

Json would_take_object(const exchange::GoodRows& good, const std::vector<std::string>& arms) {
  return {{"runs", good.trial.runs.size()},
          {"readings", readings_in(good.trial)},
          {"arms", sentences_json(arms)},
          {"without_bad_rows", !good.left_out.empty()}};
}

void put_counts(Json& json, const notebook::Taken& taken) {
  json["runs_added"] = taken.runs_added;
  json["runs_grown"] = taken.runs_grown;
  json["runs_known"] = taken.runs_known;
  json["readings_added"] = taken.readings_added;
}

Json into_object(const IntoTrial& into) {
  Json json = {{"trial_name", into.trial}};
  put_counts(json, into.taken);
  json["remarks"] = into.taken.remarks;
  json["contradictions"] = problems_array(into.contradictions);
  return json;
}

}  // namespace

std::string tables_read_to_json(const TablesRead& read) {
  const exchange::TableSurvey& survey = read.survey;
  Json json = Json::object();
  if (!survey.grids.empty()) put_shape(json, survey.grids.front().shape);
  json["grids"] = Json::array();
  for (const exchange::SurveyedGrid& grid : survey.grids) {
    json["grids"].push_back(grid_object(grid));
  }
  json["columns"] =
      survey.grids.empty() ? Json::array() : header_objects(survey.grids.front().headers);
  json["known_columns"] = known_columns_json();
  json["sheets"] = sentences_json(survey.sheets);
  json["problems"] = Json::array();
  for (const exchange::PlacedProblem& placed : survey.problems) {
    json["problems"].push_back(placed_object(placed));
  }
  json["problem_count"] = survey.problem_count;
  json["noticed"] = Json::array();
  for (const exchange::PlacedProblem& placed : survey.noticed) {
    json["noticed"].push_back(placed_object(placed));
  }
  const bool is_contradicted = read.into && !read.into->contradictions.empty();
  if (survey.good && !is_contradicted) {
    json["taken"] = would_take_object(*survey.good, read.arms);
  }
  json["trial_name"] = read.trial_name;
  if (read.namesake) {
    json["namesake"] = {{"trial", read.namesake->trial}, {"trial_name", read.namesake->trial_name}};
  }
  if (read.into) json["into"] = into_object(*read.into);
  json["remarks"] =
      sentences_json(survey.good ? survey.good->trial.remarks : std::vector<std::string>{});
  return document_of(json);
}

std::string tables_taken_to_json(const TablesTaken& taken) {
  Json json = {{"trial", taken.trial}, {"trial_name", taken.trial_name}};
  if (taken.taken.entry) {
    Json changed = {{"entry", taken.taken.entry->entry},
                    {"last_entry", taken.last_entry},
                    {"what", taken.taken.entry->what}};
    json["changed"] = std::move(changed);
  }
  json["last_entry"] = taken.last_entry;
  put_counts(json, taken.taken);
  json["remarks"] = sentences_json(taken.remarks);
  json["left_out"] = sentences_json(taken.left_out);
  json["problems"] = problems_array(taken.problems);
  return document_of(json);
}

}  // namespace keenfall::wire
