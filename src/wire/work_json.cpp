#include "wire/work_json.h"

#include "wire/problems_object.h"

#include <string_view>

namespace keenfall::wire {

namespace {

std::string_view work_state_name(WorkState state) {
  switch (state) {
    case WorkState::waiting:
      return "waiting";
    case WorkState::running:
      return "running";
    case WorkState::done:
      return "done";
    case WorkState::failed:
      return "failed";
    case WorkState::cancelled:
      return "cancelled";
  }
  return {};
}

Json work_object(const WorkTold& work) {
  Json object = Json::object();
  object["id"] = work.id;
  object["state"] = work_state_name(work.state);
  object["words"] = work.words;
  object["fraction"] = finite_number(work.fraction);
  put_number(object, "seconds_left", work.seconds_left);
  Json problems = problems_array(work.problems);
  if (!work.failure.empty()) {
    Json failure = Json::object();
    failure["sentence"] = work.failure;
    failure["kind"] = "failed";
    problems.push_back(failure);
  }
  if (!problems.empty()) object["problems"] = problems;
  put_text(object, "result", work.result);
  return object;
}

}  // namespace

std::string work_to_json(const WorkTold& work) { return document_of(work_object(work)); }

std::string begun_work_to_json(const WorkTold& work) {
  Json document = Json::object();
  document["work"] = work_object(work);
  return document_of(document);
}

}  // namespace keenfall::wire
