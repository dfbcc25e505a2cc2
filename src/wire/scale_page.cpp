#include "wire/scale_page.h"

#include "base/plain_number.h"
#include "wire/json_pieces.h"
#include "wire/request_reader.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace keenfall::wire {

namespace {

constexpr std::array<std::string_view, 2> kFormats{"8N1", "7E1"};
constexpr std::array<std::string_view, 2> kDecimals{"point", "comma"};
constexpr std::array<std::string_view, 2> kHolds{"peak", "stable"};

std::string_view name_of(scale::Connection connection) {
  constexpr std::array<std::string_view, 5> kNames{
      "cannot_open", "listening", "hearing", "silent", "unplugged"};
  return kNames.at(static_cast<std::size_t>(connection));
}

std::string_view name_of(scale::PressStage stage) {
  constexpr std::array<std::string_view, 3> kNames{"waiting", "pressing", "held"};
  return kNames.at(static_cast<std::size_t>(stage));
}

Json used_json(const UseScale& used) {
  return {{"device", used.port.path},
          {"baud", used.port.baud},
          {"format", kFormats.at(static_cast<std::size_t>(used.port.format))},
          {"decimal", used.lines.comma_is_decimal ? "comma" : "point"}};
}

// "104.2 g"; of an overload no number.
Json shown_json(const scale::Reading& reading) {
  Json object = {{"is_overload", reading.is_overload},
                 {"is_stable", reading.stability == scale::Stability::stable}};
  if (reading.number) {
    object["words"] = base::plain_number(*reading.number) + " " + reading.unit;
  }
  return object;
}

Json state_json(const ScaleTold& told) {
  const scale::ScaleState& state = told.state;
  Json object = {{"connection", name_of(state.connection)},
                 {"is_armed", state.is_armed},
                 {"stage", name_of(state.stage)},
                 {"hold", whole_number(told.hold)}};
  if (state.problem) object["why"] = state.problem->sentence;
  if (state.newest) object["shows"] = shown_json(state.newest->reading);
  if (state.newest_refusal) object["not_read"] = state.newest_refusal->sentence;
  put_number(object, "highest", state.highest);
  put_text(object, "trouble", state.hold_trouble);
  if (told.held && state.held) {
    object["held"] = {{"reading", finite_number(told.held->reading)},
                      {"unit", told.held->unit},
                      {"line", state.held->line}};
    put_text(object["held"], "note", state.held->note);
  }
  return object;
}

}  // namespace

std::string scale_to_json(const ScaleTold& told) {
  Json object = {{"devices", told.devices}};
  if (told.used) {
    object["used"] = used_json(*told.used);
    object["state"] = state_json(told);
  }
  return in_one_line(object);
}

base::ResultOrProblems<UseScale> use_scale_from(const std::string& body) {
  constexpr NumberRange kBaud{.highest = 1e6, .words = "bits a second, as the scale is set"};
  RequestReader reader(body);
  reader.require("device", "a serial line, such as /dev/ttyUSB0");
  UseScale use;
  use.port.path = reader.path("device").value_or("");
  if (const auto baud = reader.whole("baud", kBaud)) use.port.baud = static_cast<int>(*baud);
  const bool is_known = std::ranges::count(scale::known_speeds(), use.port.baud) > 0;
  if (!is_known) reader.refuse("baud", "300, 600, 1200, 2400, 4800, 9600 or 19200");
  if (const auto format = reader.choice("format", kFormats)) {
    use.port.format = static_cast<scale::DataFormat>(*format);
  }
  if (const auto decimal = reader.choice("decimal", kDecimals)) {
    use.lines.comma_is_decimal = *decimal == 1;
  }
  return unless_problems(reader, std::move(use));
}

base::ResultOrProblems<scale::HoldAsked> hold_next_from(const std::string& body) {
  RequestReader reader(body);
  reader.require("kind", "peak or stable");
  scale::HoldAsked asked;
  if (const auto kind = reader.choice("kind", kHolds)) {
    asked.kind = static_cast<scale::HoldKind>(*kind);
  }
  return unless_problems(reader, std::move(asked));
}

}  // namespace keenfall::wire
