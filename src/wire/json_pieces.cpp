#include "wire/json_pieces.h"

#include "base/require.h"

#include <cmath>
#include <optional>

namespace keenfall::wire {

namespace {

void put_angle(Json& object, const char* key, const std::optional<trials::PerSideAngle>& angle) {
  if (angle) object[key] = finite_number(angle->deg);
}

std::string motion_name(trials::Motion motion) {
  switch (motion) {
    case trials::Motion::push:
      return "push";
    case trials::Motion::draw:
      return "draw";
    case trials::Motion::slice:
      return "slice";
    case trials::Motion::not_recorded:
      break;
  }
  return {};
}

Json method_json(const trials::CutMethod& method, const materials::ToldIn& told) {
  Json object = cut_method_json(method);
  put_text(object, "words", in_words(method, told));
  return object;
}

std::string_view compared_at_name(verdicts::ComparedAt what) {
  switch (what) {
    case verdicts::ComparedAt::half_keenness:
      return "half_keenness";
    case verdicts::ComparedAt::level:
      return "level";
    case verdicts::ComparedAt::common_reading:
      return "common_reading";
    case verdicts::ComparedAt::test:
      return "test";
  }
  return {};
}

}  // namespace

Json finite_number(double number) {
  base::require(std::isfinite(number), "a judgement written as JSON holds only finite numbers");
  return number;
}

Json whole_number(std::uint64_t number) {
  constexpr std::uint64_t kFirstInexact = std::uint64_t{1} << 53;  // IEEE 754 binary64
  if (number < kFirstInexact) return number;
  return std::to_string(number);
}

void put_text(Json& object, const char* key, const std::string& text) {
  if (!text.empty()) object[key] = text;
}

std::string_view keener_when_name(trials::KeenerWhen keener_when) {
  switch (keener_when) {
    case trials::KeenerWhen::lower:
      return "lower";
    case trials::KeenerWhen::higher:
      return "higher";
  }
  return {};
}

Json interval_json(const numerics::Interval& interval) {
  return {{"median", finite_number(interval.median)},
          {"lo90", finite_number(interval.lo90)},
          {"hi90", finite_number(interval.hi90)},
          {"lo95", finite_number(interval.lo95)},
          {"hi95", finite_number(interval.hi95)}};
}

Json bounds_json(const verdicts::RatioBounds& bounds) {
  return {{"lo90", finite_number(bounds.lo90)},
          {"hi90", finite_number(bounds.hi90)},
          {"lo95", finite_number(bounds.lo95)},
          {"hi95", finite_number(bounds.hi95)}};
}

Json cuts_to_level_json(const verdicts::CutsToLevel& reached) {
  Json object = interval_json(reached.cuts);
  object["beyond_what_was_cut"] = reached.beyond_what_was_cut;
  object["runs_that_reached"] = reached.runs_that_reached;
  if (const auto least = reached.at_least()) object["at_least"] = finite_number(*least);
  return object;
}

Json sentences_json(const std::vector<std::string>& sentences) {
  Json list = Json::array();
  for (const std::string& sentence : sentences) list.push_back(sentence);
  return list;
}

Json edge_json(const trials::EdgePreparation& edge, const materials::ToldIn& told) {
  Json object = Json::object();
  put_angle(object, "bevel_angle_per_side_deg", edge.bevel_angle);
  put_angle(object, "apex_angle_per_side_deg", edge.apex_angle);
  put_text(object, "finish", edge.finish);
  put_number(object, "thickness_behind_edge_mm", edge.thickness_behind_edge_mm);
  put_text(object, "words", in_words(edge, told));
  return object;
}

Json cut_method_json(const trials::CutMethod& method) {
  Json object = Json::object();
  put_text(object, "motion", motion_name(method.motion));
  put_text(object, "as_written", method.as_written);
  put_number(object, "cut_length_mm", method.cut_length_mm);
  put_number(object, "edge_used_mm", method.edge_used_mm);
  put_text(object, "board", method.board);
  return object;
}

Json arm_json(const trials::Arm& arm, const materials::ToldIn& told) {
  Json object = {
      {"blade", arm.blade}, {"edge", edge_json(arm.edge, told)}, {"medium", arm.medium.name}};
  put_text(object, "medium_condition", arm.medium.condition);
  object["method"] = method_json(arm.method, told);
  return object;
}

Json at_json(const verdicts::At& at, const std::string& unit) {
  Json object = {{"what", compared_at_name(at.what)}};
  if (at.what == verdicts::ComparedAt::common_reading) {
    object["reading"] = finite_number(at.reading);
    object["unit"] = unit;
  } else if (at.what != verdicts::ComparedAt::test) {
    object["level"] = finite_number(at.level);
  }
  return object;
}

void put_number(Json& object, const char* key, const std::optional<double>& number) {
  if (number) object[key] = finite_number(*number);
}

std::string in_one_line(const Json& object) {
  constexpr int kOneLine = -1;
  return object.dump(kOneLine, ' ', false, Json::error_handler_t::replace);
}

}  // namespace keenfall::wire
