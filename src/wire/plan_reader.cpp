#include "wire/plan_reader.h"

#include <array>
#include <string_view>
#include <utility>

namespace keenfall::wire {

namespace {

constexpr NumberRange kAngle{
    .highest = 89.99, .above_lowest = true, .words = "degrees per side, between 0 and 90"};
constexpr NumberRange kLength{.above_lowest = true, .words = "a length in mm, above 0"};
constexpr NumberRange kCheckpoint{.highest = 1e9, .words = "a number of cuts, 0 or more"};
constexpr NumberRange kCount{.highest = 1e9, .words = "a whole number, 0 or more"};
constexpr NumberRange kReadAmount{.words = "a number, 0 or more"};
constexpr std::array<std::string_view, 3> kMotions{"push", "draw", "slice"};

int count_from(RequestReader& reader, const std::string& field, std::string_view accepted) {
  reader.require(field, accepted);
  return static_cast<int>(reader.whole(field, kCount).value_or(0));
}

std::optional<trials::PerSideAngle> angle_from(RequestReader& reader, const std::string& field) {
  const auto angle_deg = reader.number(field, kAngle);
  if (!angle_deg) return std::nullopt;
  return trials::PerSideAngle{*angle_deg};
}

trials::CutMethod method_from(RequestReader& reader) {
  trials::CutMethod method;
  if (const auto motion = reader.choice("motion", kMotions)) {
    constexpr std::array kInOrder{
        trials::Motion::push, trials::Motion::draw, trials::Motion::slice};
    method.motion = kInOrder.at(*motion);
  }
  method.as_written = reader.text("as_written").value_or("");
  method.cut_length_mm = reader.number("cut_length_mm", kLength);
  method.edge_used_mm = reader.number("edge_used_mm", kLength);
  method.board = reader.text("board").value_or("");
  return method;
}

trials::PlannedCutting cutting_from(RequestReader& reader) {
  trials::PlannedCutting cutting;
  reader.require("medium", "what is cut, by name");
  reader.require("checkpoint_cuts", "numbers that rise from 0, such as 0 1 3 7 15 31 63 127");
  cutting.medium = {.name = reader.text("medium").value_or(""),
                    .condition = reader.text("condition").value_or("")};
  cutting.lot = reader.text("lot").value_or("");
  if (auto method = reader.object("method")) cutting.method = method_from(*method);
  cutting.checkpoint_cuts = reader.numbers("checkpoint_cuts", kCheckpoint);
  return cutting;
}

trials::PlannedArm arm_from(RequestReader& reader) {
  trials::PlannedArm arm;
  reader.require("blade", "a blade's name");
  reader.require("edge", "an object, which may be empty");
  arm.blade = reader.text("blade").value_or("");
  if (auto edge = reader.object("edge")) arm.edge = edge_from(*edge);
  arm.cutting = static_cast<std::size_t>(
      count_from(reader, "cutting", "one of the plan's cuttings, counted from 0"));
  reader.pass_over("words");
  return arm;
}

trials::PlannedReading reading_from(RequestReader& reader) {
  trials::PlannedReading reading;
  reader.require("kind", "a kind of reading: thread_push");
  reading.kind = reader.text("kind").value_or("");
  reading.unit = reader.text("unit").value_or("");
  reader.pass_over("told_unit");
  reading.thread = reader.text("thread").value_or("");
  reading.thread_lot = reader.text("thread_lot").value_or("");
  reading.repeats = count_from(reader, "repeats", "readings at a checkpoint: 5 to 7 is usual");
  reading.stations = reader.texts("stations");
  return reading;
}

trials::StartGate gate_from(RequestReader& reader) {
  reader.require("target_reading", "what an edge must read before its run");
  reader.require("tolerance_fraction", "0.12 for 12 %");
  return {.target_reading = reader.number("target_reading", kReadAmount).value_or(0),
          .tolerance_fraction = reader.number("tolerance_fraction", kReadAmount).value_or(0)};
}

trials::StopRule stop_from(RequestReader& reader) {
  return {.level = reader.number("level", kReadAmount),
          .reading = reader.number("reading", kReadAmount),
          .force_cap_newton = reader.number("force_cap_newton", kReadAmount)};
}

trials::PlannedRun run_from(RequestReader& reader) {
  trials::PlannedRun run;
  run.arm =
      static_cast<std::size_t>(count_from(reader, "arm", "one of the plan's arms, counted from 0"));
  run.specimen = reader.text("specimen").value_or("");
  run.block = count_from(reader, "block", "a number from 1 on");
  run.order = count_from(reader, "order", "a number from 1 on");
  return run;
}

trials::Counted counted_from(RequestReader& reader) {
  const auto words = reader.text("counted");
  if (!words || words->empty()) return {};
  const auto counted = trials::counted_in_words(*words);
  if (!counted) reader.refuse("counted", "cuts, strokes, sheets, metres or the like");
  return counted.value_or(trials::Counted{});
}

std::vector<trials::PerSideAngle> angles_from(RequestReader& reader, const std::string& field) {
  std::vector<trials::PerSideAngle> angles;
  for (const double deg : reader.numbers(field, kAngle)) angles.push_back({deg});
  return angles;
}

template <class Part, class ReadPart>
std::vector<Part> parts_from(RequestReader& reader, const std::string& field, ReadPart read) {
  std::vector<Part> parts;
  for (RequestReader& part : reader.objects(field)) parts.push_back(read(part));
  return parts;
}

}  // namespace

trials::EdgePreparation edge_from(RequestReader& reader) {
  trials::EdgePreparation edge;
  edge.bevel_angle = angle_from(reader, "bevel_angle_per_side_deg");
  edge.apex_angle = angle_from(reader, "apex_angle_per_side_deg");
  edge.finish = reader.text("finish").value_or("");
  edge.thickness_behind_edge_mm = reader.number("thickness_behind_edge_mm", kLength);
  reader.pass_over("words");
  return edge;
}

planning::EdgeChoices edge_choices_from(RequestReader& reader) {
  return {.bevel_angles = angles_from(reader, "bevel_angles_per_side_deg"),
          .apex_angles = angles_from(reader, "apex_angles_per_side_deg"),
          .finishes = reader.texts("finishes"),
          .thickness_behind_edge_mm = reader.number("thickness_behind_edge_mm", kLength)};
}

std::vector<trials::Claim> claims_from(RequestReader& whole) {
  return parts_from<trials::Claim>(whole, "claims", [](RequestReader& reader) {
    reader.require("words", "a sentence that could turn out false");
    reader.require("worth_it_margin", kMarginRange.words);
    return trials::Claim{
        .words = reader.lines("words").value_or(""),
        .worth_it_margin = reader.number("worth_it_margin", kMarginRange).value_or(0)};
  });
}

trials::Plan plan_from(RequestReader& reader) {
  trials::Plan plan;
  for (const char* list : {"cuttings", "arms", "runs"}) reader.require(list, "a list");
  for (const char* object : {"reading", "stop"}) reader.require(object, "an object");
  plan.counted = counted_from(reader);
  plan.cuttings = parts_from<trials::PlannedCutting>(reader, "cuttings", cutting_from);
  plan.arms = parts_from<trials::PlannedArm>(reader, "arms", arm_from);
  if (auto reading = reader.object("reading")) plan.reading = reading_from(*reading);
  if (auto gate = reader.object("start_gate")) plan.start_gate = gate_from(*gate);
  if (auto stop = reader.object("stop")) plan.stop = stop_from(*stop);
  plan.runs_each = count_from(reader, "runs_each", "runs of each arm: 2 or more");
  for (const std::uint64_t look : reader.wholes("looks", kCount)) {
    plan.looks.push_back(static_cast<int>(look));
  }
  plan.house_blade = reader.text("house_blade").value_or("");
  reader.require("order_seed", kSeedRange.words);
  plan.order_seed = {reader.whole("order_seed", kSeedRange).value_or(0)};
  plan.runs = parts_from<trials::PlannedRun>(reader, "runs", run_from);
  return plan;
}

}  // namespace keenfall::wire
