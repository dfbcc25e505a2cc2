#include "cli/ruled_table.h"
#include "cli/scale_commands.h"
#include "cli/source_list.h"
#include "cli/text_layout.h"
#include "materials/microstructure.h"
#include "materials/phases.h"
#include "telling/listed.h"
#include "wire/reference_json.h"

#include <fmt/format.h>

#include <vector>

namespace keenfall::cli {

namespace {

using materials::HardnessSpan;
using materials::Microstructure;
using materials::Phase;
using materials::Scratching;

constexpr const char* kRule =
    "Rule: what scratches is at least 1.2 times as hard (Pintaude 2010, abstract read). In part: "
    "it "
    "depends on the pieces that meet.";

std::string span_text(const HardnessSpan& span) {
  if (span.lo_hv == span.hi_hv) return fmt::format("{:g} HV", span.lo_hv);
  return fmt::format("{:g}–{:g} HV", span.lo_hv, span.hi_hv);
}

std::string also_text(const Phase& phase) {
  return telling::listed({phase.same.begin(), phase.same.end()});
}

std::string sentence(const std::string& words, const Look& look) {
  return wrapped(shown_as(words, look), {}, look);
}

std::string whole_table_text(const Look& look) {
  RuledTable table{.columns = {{.head = "phase", .side = Side::left},
                               {.head = "also", .side = Side::left, .drop_order = 1},
                               {.head = "kind", .side = Side::left},
                               {.head = "HV from"},
                               {.head = "to"},
                               {.head = "mark", .side = Side::left},
                               {.head = "source", .side = Side::left, .drop_order = 2}}};
  SourceList sources;
  for (const Phase& phase : materials::known_phases()) {
    table.rows.push_back({std::string(phase.name),
                          also_text(phase),
                          std::string(in_words(phase.kind)),
                          fmt::format("{:g}", phase.lo_hv),
                          fmt::format("{:g}", phase.hi_hv),
                          std::string(in_words(phase.from.mark)),
                          std::string(phase.from.source_key)});
    sources.add(phase.from);
  }
  const LaidOutTable laid = laid_out(table, look);
  std::string text = laid.text + "\n";
  if (!laid.left_out.empty()) {
    text +=
        sentence("Left out here for want of width: " + telling::listed(laid.left_out) + ".", look);
  }
  return text + sentence(kRule, look) +
         sentence(
             "`keenfall phases NAME` shows what one scratches, and with a steel (A11) what "
             "cuts it.",
             look) +
         "\n" + sources.text(look);
}

enum class Reading { bodies_scratch, bodies_are_scratched };

struct Question {
  std::vector<std::string> heads;  // a column for each body
  std::vector<HardnessSpan> bodies;
  Reading reading = Reading::bodies_are_scratched;
  std::vector<const Phase*> among;
};

// A row for every phase that is anything but no for one of the bodies.
RuledTable scratching_table(const Question& question) {
  RuledTable table{.columns = {{.head = "phase", .side = Side::left},
                               {.head = "kind", .side = Side::left},
                               {.head = "HV", .side = Side::left}}};
  for (const std::string& head : question.heads) {
    table.columns.push_back({.head = head, .side = Side::left});
  }
  for (const Phase* phase : question.among) {
    const HardnessSpan other = hardness_span(*phase);
    std::vector<std::string> row = {
        std::string(phase->name), std::string(in_words(phase->kind)), span_text(other)};
    bool any = false;
    for (const HardnessSpan& body : question.bodies) {
      const auto answer = question.reading == Reading::bodies_scratch ? scratches(body, other)
                                                                      : scratches(other, body);
      any = any || answer != Scratching::no;
      row.emplace_back(in_words(answer));
    }
    if (any) table.rows.push_back(row);
  }
  return table;
}

std::vector<const Phase*> all_but(const Phase& one) {
  std::vector<const Phase*> others;
  for (const Phase& phase : materials::known_phases()) {
    if (phase.name != one.name) others.push_back(&phase);
  }
  return others;
}

// What a blade is cut with or cuts: carbides and nitrides lie inside steels.
std::vector<const Phase*> what_meets_a_blade() {
  std::vector<const Phase*> others;
  for (const Phase& phase : materials::known_phases()) {
    using enum materials::PhaseKind;
    if (phase.kind != carbide && phase.kind != nitride) others.push_back(&phase);
  }
  return others;
}

std::string table_or(const RuledTable& table, const std::string& otherwise, const Look& look) {
  return table.rows.empty() ? sentence(otherwise, look) : laid_out(table, look).text;
}

std::string phase_text(const Phase& phase, const Look& look) {
  SourceList sources;
  sources.add(phase.from);
  std::string head(phase.name);
  if (!phase.same.empty()) head += ", also " + also_text(phase);
  head += fmt::format(": {}, {} ({}, {}).",
                      in_words(phase.kind),
                      span_text(hardness_span(phase)),
                      in_words(phase.from.mark),
                      phase.from.source_key);
  std::string text = sentence(head, look);
  if (!phase.note.empty()) text += sentence("Note: " + std::string(phase.note) + ".", look);
  const std::vector<HardnessSpan> body = {hardness_span(phase)};
  const std::string name(phase.name);
  const auto others = all_but(phase);
  text +=
      "\n" +
      table_or(scratching_table({{name + " scratches it"}, body, Reading::bodies_scratch, others}),
               name + " scratches nothing in this table.",
               look);
  text += "\n" + table_or(scratching_table(
                              {{"scratches " + name}, body, Reading::bodies_are_scratched, others}),
                          "Nothing in this table scratches " + name + ".",
                          look);
  return text + "\n" + sentence(kRule, look) + "\n" + sources.text(look);
}

std::vector<wire::AskedBody> bodies_of(const Microstructure& steel) {
  return {{.name = "matrix of " + steel.name,
           .hardness = {steel.matrix_hv_range.lo, steel.matrix_hv_range.hi}},
          {.name = std::string(steel.carbide_type) + " of " + steel.name,
           .hardness = {steel.carbide_hv_range.lo, steel.carbide_hv_range.hi}}};
}

std::string steel_text(const Microstructure& steel, const Look& look) {
  SourceList sources;
  sources.add(steel.matrix_hv_range.from);
  sources.add(steel.carbide_hv_range.from);
  sources.add(steel.carbide_volume_fraction_range.from);
  const auto bodies = bodies_of(steel);
  const std::string head =
      fmt::format("{} at {:g} HRC: a matrix of {} ({}) with {:g} % of its volume {} of {} ({}).",
                  steel.name,
                  steel.hardness_hrc,
                  span_text(bodies.front().hardness),
                  in_words(steel.matrix_hv_range.from.mark),
                  100 * steel.carbide_volume_fraction,
                  steel.carbide_type,
                  span_text(bodies.back().hardness),
                  in_words(steel.carbide_hv_range.from.mark));
  const RuledTable table =
      scratching_table({{"cuts the matrix", "cuts " + std::string(steel.carbide_type)},
                        {bodies.front().hardness, bodies.back().hardness},
                        Reading::bodies_are_scratched,
                        what_meets_a_blade()});
  return sentence(head, look) + "\n" + laid_out(table, look).text + "\n" + sentence(kRule, look) +
         "\n" + sources.text(look);
}

}  // namespace

base::Result<WrittenAnswer> phases_command(std::string_view asked,
                                           const std::string& program_version,
                                           const Look& look) {
  if (asked.empty()) {
    return WrittenAnswer{whole_table_text(look),
                         wire::phases_to_json({.program_version = program_version, .asked = {}})};
  }
  if (const auto steel = materials::find_microstructure(asked)) {
    return WrittenAnswer{steel_text(*steel, look),
                         wire::phases_to_json({program_version, bodies_of(*steel)})};
  }
  return materials::find_phase(asked).transform([&](const Phase& phase) {
    const wire::AskedBody body{std::string(phase.name), hardness_span(phase)};
    return WrittenAnswer{phase_text(phase, look), wire::phases_to_json({program_version, {body}})};
  });
}

}  // namespace keenfall::cli
