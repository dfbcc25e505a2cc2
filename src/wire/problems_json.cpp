#include "wire/problems_json.h"

#include "wire/problems_object.h"

namespace keenfall::wire {

std::string_view problem_kind_name(base::ProblemKind kind) {
  switch (kind) {
    case base::ProblemKind::bad_value:
      return "bad_value";
    case base::ProblemKind::missing:
      return "missing";
    case base::ProblemKind::conflicting:
      return "conflicting";
    case base::ProblemKind::unknown_name:
      return "unknown_name";
    case base::ProblemKind::unreadable:
      return "unreadable";
    case base::ProblemKind::too_large:
      return "too_large";
    case base::ProblemKind::unsuitable_data:
      return "unsuitable_data";
    case base::ProblemKind::interrupted:
      return "interrupted";
  }
  return {};
}

Json problem_json(const base::Problem& problem) {
  Json object = Json::object();
  object["sentence"] = problem.sentence;
  object["kind"] = problem_kind_name(problem.kind);
  put_text(object, "accepted", problem.accepted);
  put_text(object, "file", problem.place.file);
  if (problem.place.line) object["line"] = whole_number(*problem.place.line);
  put_text(object, "column", problem.place.column);
  put_text(object, "found", problem.place.found);
  put_text(object, "cell", problem.place.cell);
  return object;
}

Json problems_array(std::span<const base::Problem> problems) {
  Json array = Json::array();
  for (const base::Problem& problem : problems) array.push_back(problem_json(problem));
  return array;
}

std::string document_of(const Json& json) {
  constexpr int kCompact = -1;
  return json.dump(kCompact, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string problems_to_json(std::span<const base::Problem> problems) {
  Json document = Json::object();
  document["problems"] = problems_array(problems);
  return document_of(document);
}

std::string refusal_to_json(std::string_view kind, std::string_view sentence) {
  Json problem = Json::object();
  problem["sentence"] = sentence;
  problem["kind"] = kind;
  Json document = Json::object();
  document["problems"] = Json::array();
  document["problems"].push_back(problem);
  return document_of(document);
}

}  // namespace keenfall::wire
