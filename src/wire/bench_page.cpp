#include "wire/bench_page.h"

#include "base/plain_number.h"
#include "bench/entry_fields.h"
#include "materials/told_in.h"
#include "trials/cutting.h"
#include "wire/json_pieces.h"
#include "wire/request_reader.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string_view>
#include <utility>
#include <variant>

namespace keenfall::wire {

namespace {

constexpr std::size_t kMostEntries = 1'000;
constexpr NumberRange kSomeCuts{
    .highest = 1e6, .above_lowest = true, .words = "how many, above 0 and at most 1000000"};
constexpr NumberRange kAtCuts{.highest = 1e9, .words = "a count, 0 or more"};
constexpr NumberRange kReading{.highest = 1e9, .words = "a reading, 0 or more"};
constexpr NumberRange kAngle{
    .highest = 89.99, .above_lowest = true, .words = "degrees per side, above 0 and below 90"};
constexpr NumberRange kPasses{.highest = 1e6, .words = "passes on one side, a whole number"};
constexpr NumberRange kMinutes{.highest = 1e5, .above_lowest = true, .words = "minutes, above 0"};
constexpr NumberRange kTime{.highest = 9007199254740991.0,
                            .words = "milliseconds since 1970, a whole number"};
constexpr NumberRange kLine{.highest = 1e9, .words = "a whole number, 0 or more"};

std::string_view name_of(BenchRunState state) {
  constexpr std::array<std::string_view, 6> kNames{
      "to_cut", "under_way", "cut", "voided", "taken_out", "nothing_read"};
  return kNames.at(static_cast<std::size_t>(state));
}

std::string_view name_of(bench::Phase phase) {
  constexpr std::array<std::string_view, 6> kNames{
      "preparing", "cutting", "reading", "at_the_stop", "closed", "voided"};
  return kNames.at(static_cast<std::size_t>(phase));
}

std::string_view name_of(bench::StopReached stop) {
  constexpr std::array<std::string_view, 3> kNames{"level", "reading", "cap"};
  return kNames.at(static_cast<std::size_t>(stop));
}

void put_counted(Json& object, const trials::Counted& counted) {
  object["counted"] = {{"one", counted.one}, {"many", counted.many}};
}

std::string medium_words(const trials::Medium& medium) {
  return medium.name + (medium.condition.empty() ? "" : ", " + medium.condition);
}

Json line_json(const BenchLine& line) {
  Json object = {{"name", line.to_cut.name},
                 {"blade", line.blade},
                 {"medium", line.medium},
                 {"block", line.to_cut.block},
                 {"state", name_of(line.state)},
                 {"cuts", finite_number(line.cuts)}};
  if (line.to_cut.order) object["order"] = *line.to_cut.order;
  put_text(object, "specimen", line.to_cut.specimen);
  put_text(object, "edge", line.edge_words);
  put_text(object, "run", line.run);
  return object;
}

// Readings as they are told.
struct InUnit {
  std::string from;
  std::string to;

  [[nodiscard]] double operator()(double reading) const {
    return from == to ? reading : materials::told_number(reading, from, to);
  }
  [[nodiscard]] std::optional<double> operator()(const std::optional<double>& reading) const {
    return reading ? std::optional(operator()(*reading)) : std::nullopt;
  }
};

Json sheet_json(const bench::RunSheet& sheet, const InUnit& told) {
  Json object = {{"name", sheet.run.name},
                 {"blade", sheet.run.arm.blade},
                 {"medium", medium_words(sheet.run.arm.medium)},
                 {"block", sheet.run.block},
                 {"kind", sheet.kind.words},
                 {"unit", told.to},
                 {"repeats", sheet.repeats},
                 {"stations", sheet.stations},
                 {"checkpoints", sheet.checkpoint_cuts}};
  put_counted(object, sheet.counted);
  if (sheet.run.order) object["order"] = *sheet.run.order;
  put_text(object, "specimen", sheet.run.specimen);
  put_text(object, "edge", trials::in_words(sheet.run.arm.edge));
  put_text(object, "method", trials::in_words(sheet.run.arm.method));
  put_text(object, "lot", sheet.run.medium_lot);
  put_text(object, "thread", sheet.thread);
  put_number(object, "largest_reading", told(sheet.kind.largest));
  object["takes_zero"] = sheet.kind.zero != trials::ZeroReading::refused;
  put_number(object, "stop_level", sheet.stop.level);
  put_number(object, "stop_reading", told(sheet.stop.reading));
  put_number(object, "force_cap_newton", sheet.stop.force_cap_newton);
  put_number(object, "cut_length_mm", sheet.run.arm.method.cut_length_mm);
  return object;
}

Json start_json(const bench::Start& start, const InUnit& told) {
  Json object = {{"readings", start.readings},
                 {"within_gate", start.within_gate},
                 {"burr_suspected", start.burr_suspected}};
  put_number(object, "combined", told(start.combined));
  if (start.limits) {
    object["lowest"] = finite_number(told(start.limits->lowest));
    object["highest"] = finite_number(told(start.limits->highest));
  }
  object["stations"] = Json::array();
  for (const bench::StationStart& station : start.stations) {
    object["stations"].push_back({{"station", station.station},
                                  {"readings", station.readings},
                                  {"median", finite_number(told(station.median))},
                                  {"outside_gate", station.outside_gate},
                                  {"grows_blunter", station.grows_blunter}});
  }
  return object;
}

Json readings_json(const bench::Standing& standing, const InUnit& told) {
  Json readings = Json::array();
  for (const bench::TakenReading& taken : standing.readings) {
    Json one = {{"at_cuts", finite_number(taken.at_cuts)},
                {"reading", finite_number(told(taken.reading))}};
    put_text(one, "station", taken.station);
    if (taken.before_sharpening) one["before_sharpening"] = true;
    readings.push_back(std::move(one));
  }
  return readings;
}

Json standing_json(const BenchRunTold& run, const InUnit& told) {
  const bench::Standing& standing = run.standing;
  Json object = {{"phase", name_of(standing.phase)},
                 {"cuts", finite_number(standing.cuts)},
                 {"readings_here", standing.readings_here},
                 {"readings_taken", standing.readings.size()},
                 {"sharpenings", standing.sharpenings},
                 {"start", start_json(standing.start, told)},
                 {"is_paused", standing.is_paused},
                 {"pieces", standing.pieces},
                 {"minutes_at_work", finite_number(standing.minutes_at_work)}};
  put_number(object, "next_checkpoint_cuts", standing.next_checkpoint_cuts);
  put_text(object, "next_station", standing.next_station);
  if (standing.decided) {
    object["decided"] =
        bench::decision_words()[static_cast<std::size_t>(standing.decided->decision)];
  }
  if (standing.stop) object["stop"] = name_of(*standing.stop);
  object["set_aside"] = Json::array();
  for (const bench::SetAside& aside : standing.set_aside) {
    object["set_aside"].push_back(
        {{"words", words_of(run.entries.at(aside.entry), run.sheet)}, {"why", aside.why}});
  }
  if (standing.to_take_back) {
    const bench::Entry& entry = run.entries.at(*standing.to_take_back);
    const bench::EntryFields fields = bench::fields_of(entry.what);
    Json last = {{"id", entry.id}, {"words", words_of(entry, run.sheet)}, {"what", fields.what}};
    put_number(last, "cuts", fields.cuts);
    object["to_take_back"] = std::move(last);
  }
  const bool is_over =
      standing.phase == bench::Phase::closed || standing.phase == bench::Phase::voided;
  if (is_over) object["readings"] = readings_json(standing, told);
  return object;
}

struct InWords {
  const bench::RunSheet& sheet;

  [[nodiscard]] std::string at(double cuts) const {
    return " at " + trials::so_many(base::plain_number(cuts), sheet.counted);
  }

  std::string operator()(const bench::CutsMade& made) const {
    return trials::so_many(base::plain_number(made.cuts), sheet.counted);
  }
  std::string operator()(const bench::Happened& happened) const {
    const std::string word(bench::event_words()[static_cast<std::size_t>(happened.kind)]);
    return (happened.words.empty() ? word : happened.words) + at(happened.at_cuts);
  }
  std::string operator()(const bench::ReadingTaken& taken) const {
    return "the reading" + at(taken.at_cuts) +
           (taken.station.empty() ? "" : " (" + taken.station + ")");
  }
  std::string operator()(const bench::AngleMeasured& measured) const {
    return base::plain_number(measured.angle.deg) + "° per side" +
           (measured.where.empty() ? "" : " (" + measured.where + ")");
  }
  std::string operator()(const bench::Sharpened& done) const {
    return "sharpening on " + done.stone;
  }
  std::string operator()(const bench::StartDecided& decided) const {
    return "the start: " +
           std::string(bench::decision_words()[static_cast<std::size_t>(decided.decision)]);
  }
  std::string operator()(const bench::Paused&) const { return "the pause"; }
  std::string operator()(const bench::Resumed&) const { return "going on after the pause"; }
  std::string operator()(const bench::PieceTaken&) const { return "the new piece"; }
  std::string operator()(const bench::Noted&) const { return "the note"; }
  std::string operator()(const bench::Closed&) const { return "closing the run"; }
  std::string operator()(const bench::Voided&) const { return "voiding the run"; }
  std::string operator()(const bench::TakenBack&) const { return "taking back"; }
};

// Which fields of an entry belong to what was done, in the order of bench::entry_words().
using FieldNames = std::array<std::string_view, 6>;
constexpr std::array<FieldNames, std::variant_size_v<bench::WhatWasDone>> kFieldsOf{{
    {"cuts"},
    {"cuts", "subject", "words"},
    {"cuts", "reading", "unit", "place_on_edge", "scale_line", "words"},
    {"angle_per_side_deg", "place_on_edge"},
    {"subject", "passes_per_side", "minutes", "words"},
    {"subject", "words"},
    {},
    {"blade_wiped", "piece_changed"},
    {},
    {"words"},
    {"words"},
    {"words"},
    {"subject"},
}};
constexpr std::array<std::string_view, 12> kAllFields{"cuts",
                                                      "reading",
                                                      "unit",
                                                      "angle_per_side_deg",
                                                      "place_on_edge",
                                                      "subject",
                                                      "words",
                                                      "scale_line",
                                                      "passes_per_side",
                                                      "minutes",
                                                      "blade_wiped",
                                                      "piece_changed"};

// Kept it would be lost without a word.
void refuse_what_does_not_belong(RequestReader& reader, std::size_t what) {
  for (const std::string_view field : kAllFields) {
    const bool belongs = std::ranges::count(kFieldsOf.at(what), field) > 0;
    if (belongs || !reader.has(std::string(field))) continue;
    reader.refuse(std::string(field),
                  "nothing: it does not belong to an entry of “" +
                      std::string(bench::entry_words()[what]) + "”");
  }
}

bench::Entry entry_from(RequestReader& reader) {
  bench::Entry entry;
  reader.require("id", "an id that is never used again");
  reader.require("what", "what was done");
  reader.require("at_ms", kTime.words);
  entry.id = reader.text("id").value_or("");
  entry.at_ms = static_cast<std::int64_t>(reader.whole("at_ms", kTime).value_or(0));
  bench::EntryFields fields;
  if (const auto word = reader.choice("what", bench::entry_words())) {
    fields.what = bench::entry_words()[*word];
    refuse_what_does_not_belong(reader, *word);
  }
  const bool is_a_count = fields.what == "cuts";
  fields.cuts = reader.number("cuts", is_a_count ? kSomeCuts : kAtCuts);
  fields.reading = reader.number("reading", kReading);
  fields.angle_deg = reader.number("angle_per_side_deg", kAngle);
  fields.place_on_edge = reader.text("place_on_edge").value_or("");
  fields.subject = reader.text("subject").value_or("");
  // Nothing else has both.
  if (const auto unit = reader.text("unit"); unit && fields.what == "reading") {
    fields.subject = *unit;
  }
  fields.words = reader.lines("words").value_or("");
  fields.scale_line = reader.text("scale_line").value_or("");
  if (const auto passes = reader.whole("passes_per_side", kPasses)) {
    fields.passes_per_side = static_cast<int>(*passes);
  }
  fields.minutes = reader.number("minutes", kMinutes);
  fields.blade_wiped = reader.flag("blade_wiped").value_or(false);
  fields.piece_changed = reader.flag("piece_changed").value_or(false);
  const bool needs_words =
      fields.what == "voided" || fields.what == "noted" ||
      (fields.what == "start" && fields.subject == bench::decision_words().back());
  if (needs_words) reader.require("words", "why, in words");
  const bool needs_subject = fields.what == "sharpened" || fields.what == "taken back";
  if (needs_subject) reader.require("subject", "the stone; or the id of what is taken back");
  if (auto what = bench::what_is_in(fields)) {
    entry.what = *std::move(what);
  } else if (!fields.what.empty()) {
    reader.refuse("what", "with the fields that belong to it: cuts, reading, subject");
  }
  return entry;
}

}  // namespace

std::string words_of(const bench::Entry& entry, const bench::RunSheet& sheet) {
  return std::visit(InWords{.sheet = sheet}, entry.what);
}

std::string bench_to_json(const BenchTold& bench) {
  Json document = {{"trial", bench.trial}, {"name", bench.name}};
  put_text(document, "why_not", bench.why_not);
  put_counted(document, bench.counted);
  document["lines"] = Json::array();
  for (const BenchLine& line : bench.lines) document["lines"].push_back(line_json(line));
  if (bench.next) document["next"] = *bench.next;
  document["left_in_block"] = bench.left_in_block;
  document["cautions"] = sentences_json(bench.cautions);
  return in_one_line(document);
}

std::string bench_run_to_json(const BenchRunTold& run, const materials::ToldIn& told_in) {
  const InUnit told{.from = run.sheet.unit, .to = materials::told_unit(run.sheet.unit, told_in)};
  Json document = {{"uid", run.uid},
                   {"trial", run.trial},
                   {"trial_name", run.trial_name},
                   {"sheet", sheet_json(run.sheet, told)},
                   {"standing", standing_json(run, told)},
                   {"entries", run.entries.size()},
                   {"is_in_trial", run.is_in_trial}};
  put_text(document, "why_not_in_trial", run.why_not_in_trial);
  put_number(document, "metres", run.metres);
  document["left_in_block"] = run.left_in_block;
  document["cautions"] = sentences_json(run.cautions);
  return in_one_line(document);
}

base::ResultOrProblems<std::vector<bench::Entry>> bench_entries_from(const std::string& body) {
  RequestReader reader(body);
  reader.require("entries", "a list of entries");
  std::vector<RequestReader> objects = reader.objects("entries");
  if (objects.size() > kMostEntries) {
    reader.refuse("entries", "at most 1000 at once");
    objects.clear();
  }
  std::vector<bench::Entry> entries;
  entries.reserve(objects.size());
  for (RequestReader& object : objects) entries.push_back(entry_from(object));
  return unless_problems(reader, std::move(entries));
}

base::ResultOrProblems<TypedReading> typed_reading_from(const std::string& body) {
  RequestReader reader(body);
  reader.require("cuts", kAtCuts.words);
  reader.require("reading", kReading.words);
  const TypedReading typed{.at_cuts = reader.number("cuts", kAtCuts).value_or(0),
                           .reading = reader.number("reading", kReading).value_or(0),
                           .unit = reader.text("unit").value_or("")};
  return unless_problems(reader, typed);
}

std::string look_again_to_json(bool look_again) {
  return in_one_line(Json{{"look_again", look_again}});
}

base::ResultOrProblems<BeginBenchRun> begin_bench_run_from(const std::string& body) {
  RequestReader reader(body);
  reader.require("uid", "32 hexadecimal digits, random");
  reader.require("line", kLine.words);
  BeginBenchRun begin{.uid = reader.text("uid").value_or("")};
  constexpr std::size_t kDigits = 32;
  const bool is_uid = begin.uid.size() == kDigits &&
                      begin.uid.find_first_not_of("0123456789abcdef") == std::string::npos;
  if (!begin.uid.empty() && !is_uid) reader.refuse("uid", "32 hexadecimal digits, random");
  begin.line = static_cast<std::size_t>(reader.whole("line", kLine).value_or(0));
  if (const auto order = reader.whole("order", kLine)) begin.order = static_cast<int>(*order);
  return unless_problems(reader, std::move(begin));
}

}  // namespace keenfall::wire
