#include "cli/reference_commands.h"
#include "cli/ruled_table.h"
#include "cli/source_list.h"
#include "cli/text_layout.h"
#include "materials/microstructure.h"
#include "materials/steels.h"
#include "telling/listed.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace keenfall::cli {

namespace {

using materials::Content;
using materials::Element;
using materials::Steel;

constexpr const char* kNoRecommendation = "Reference values, no recommendation of any steel.";

std::string percent_text(const std::optional<double>& percent) {
  return percent ? fmt::format("{:.2f}", *percent) : "";
}

// One digit less from ten on, so that all elements fit side by side.
std::string short_percent_text(const std::optional<double>& percent) {
  return percent >= 10.0 ? fmt::format("{:g}", *percent) : percent_text(percent);
}

std::string content_text(const Steel& steel, Element element) {
  const auto content = std::ranges::find(steel.composition, element, &Content::element);
  if (content == steel.composition.end()) return "";
  const std::string lo = short_percent_text(content->lo_percent);
  const std::string hi = short_percent_text(content->hi_percent);
  if (lo.empty()) return "≤" + hi;
  if (hi.empty()) return "≥" + lo;
  return lo + "–" + hi;
}

std::string carbide_text(const Steel& steel) {
  if (steel.carbides.empty()) return "";
  double lo_percent = 0;
  double hi_percent = 0;
  for (const auto& share : steel.carbides) {
    lo_percent += share.lo_percent;
    hi_percent += share.hi_percent;
  }
  return fmt::format("{:g}–{:g}", lo_percent, hi_percent);
}

std::string marks_text(const Steel& steel) {
  std::string marks = mark_letter(steel.composition_from.mark) + " ";
  marks += steel.working_hardness ? mark_letter(steel.working_hardness->from.mark) : " ";
  marks += " ";
  marks += steel.carbides.empty() ? " " : mark_letter(steel.carbides_from.mark);
  return marks;
}

std::vector<std::string> short_row(const Steel& steel) {
  const auto& hardness = steel.working_hardness;
  return {std::string(steel.name),
          steel.same.empty() ? "" : std::string(steel.same.front()),
          content_text(steel, Element::C),
          content_text(steel, Element::Cr),
          content_text(steel, Element::Mo),
          content_text(steel, Element::V),
          content_text(steel, Element::W),
          hardness ? fmt::format("{:g}–{:g}", hardness->lo_hrc, hardness->hi_hrc) : "",
          carbide_text(steel),
          marks_text(steel)};
}

std::string all_steels_text(const Look& look) {
  RuledTable table{.columns = {{.head = "steel", .side = Side::left},
                               {.head = "also", .side = Side::left},
                               {.head = "C"},
                               {.head = "Cr", .drop_order = 4},
                               {.head = "Mo", .drop_order = 2},
                               {.head = "V", .drop_order = 3},
                               {.head = "W", .drop_order = 1},
                               {.head = "HRC"},
                               {.head = "carbide"},
                               {.head = "marks", .side = Side::left}}};
  for (const Steel& steel : materials::known_steels()) table.rows.push_back(short_row(steel));
  const LaidOutTable laid = laid_out(table, look);
  std::string text = laid.text + "\n";
  if (!laid.left_out.empty()) {
    text += wrapped(
        "Left out here for want of width: " + telling::listed(laid.left_out) + ".", {}, look);
  }
  text += wrapped(shown_as("Contents in wt-%; HRC is the usual working hardness; carbide in "
                           "volume-% of the hardened steel; a blank is not known or not limited. "
                           "The marks belong to composition, hardness and carbide, in this order.",
                           look),
                  {},
                  look);
  text += mark_letters_explained(look);
  text += wrapped(
      "`keenfall steels NAME` shows one steel with its sources. " + std::string(kNoRecommendation),
      {},
      look);
  return text;
}

std::vector<std::string> detail_row(const std::string& fact,
                                    const std::string& lo,
                                    const std::string& hi,
                                    const std::string& unit,
                                    const materials::Provenance& from) {
  return {fact, lo, hi, unit, std::string(in_words(from.mark)), std::string(from.source_key)};
}

RuledTable detail_table(const Steel& steel, SourceList& sources) {
  RuledTable table{.columns = {{.head = "", .side = Side::left},
                               {.head = "from"},
                               {.head = "to"},
                               {.head = "unit", .side = Side::left},
                               {.head = "mark", .side = Side::left},
                               {.head = "source", .side = Side::left}}};
  for (const Content& content : steel.composition) {
    table.rows.push_back(detail_row(std::string(symbol(content.element)),
                                    percent_text(content.lo_percent),
                                    percent_text(content.hi_percent),
                                    "wt-%",
                                    steel.composition_from));
  }
  sources.add(steel.composition_from);
  if (const auto& hardness = steel.working_hardness) {
    table.rows.push_back(detail_row("hardness in use",
                                    fmt::format("{:g}", hardness->lo_hrc),
                                    fmt::format("{:g}", hardness->hi_hrc),
                                    "HRC",
                                    hardness->from));
    sources.add(hardness->from);
  }
  for (const auto& share : steel.carbides) {
    table.rows.push_back(detail_row("carbide " + std::string(share.type),
                                    fmt::format("{:g}", share.lo_percent),
                                    fmt::format("{:g}", share.hi_percent),
                                    "vol-%",
                                    steel.carbides_from));
    sources.add(steel.carbides_from);
  }
  return table;
}

// What models of wear and of stones take this steel for; empty where it has no such row.
std::string microstructure_text(const Steel& steel, SourceList& sources, const Look& look) {
  const auto found = materials::find_microstructure(steel.name);
  if (!found) return "";
  RuledTable table{
      .columns = {{.head = fmt::format("at {:g} HRC", found->hardness_hrc), .side = Side::left},
                  {.head = "typical"},
                  {.head = "from"},
                  {.head = "to"},
                  {.head = "unit", .side = Side::left},
                  {.head = "mark", .side = Side::left},
                  {.head = "source", .side = Side::left, .drop_order = 1}}};
  const auto add = [&](const std::string& fact,
                       double typical,
                       const materials::PlausibleRange& range,
                       const char* unit) {
    table.rows.push_back({fact,
                          fmt::format("{:g}", typical),
                          fmt::format("{:g}", range.lo),
                          fmt::format("{:g}", range.hi),
                          unit,
                          std::string(in_words(range.from.mark)),
                          std::string(range.from.source_key)});
    sources.add(range.from);
  };
  const std::string carbide(found->carbide_type);
  add("matrix", found->matrix_hv, found->matrix_hv_range, "HV");
  add(carbide + ", of the volume",
      found->carbide_volume_fraction,
      found->carbide_volume_fraction_range,
      "");
  add(carbide + ", hardness", found->carbide_hv, found->carbide_hv_range, "HV");
  add(carbide + ", diameter", found->carbide_diameter_um, found->carbide_diameter_um_range, "µm");
  add("toughness K_Ic",
      found->toughness_mpa_sqrt_m,
      found->toughness_mpa_sqrt_m_range,
      "MPa m^0.5");
  std::string text = wrapped(
      "What models of wear and of stones take it for, each with where it may well lie:", {}, look);
  text += "\n" + laid_out(table, look).text + "\n";
  const std::string beside = materials::beside_usual_hardness(*found);
  if (!beside.empty()) {
    text +=
        wrapped(
            fmt::format("This row is at {:g} HRC, {}.", found->hardness_hrc, beside), {}, look) +
        "\n";
  }
  return text;
}

std::vector<std::string> as_strings(const std::vector<std::string_view>& names) {
  return {names.begin(), names.end()};
}

std::string steel_text(const materials::FoundSteel& found,
                       std::string_view asked,
                       const Look& look) {
  const Steel& steel = found.steel;
  const auto say = [&look](const std::string& sentence) {
    return wrapped(shown_as(sentence, look), {}, look);
  };
  std::string text;
  if (found.only_near) {
    text += say("“" + std::string(asked) + "” has no row of its own; " + std::string(steel.name) +
                " comes near it, with limits of its own.");
    text += "\n";
  }
  std::string head(steel.name);
  if (!steel.same.empty()) head += ", also " + telling::listed(as_strings(steel.same));
  text += say(head);
  if (!steel.near.empty()) {
    text += say("Near, though the limits differ: " + telling::listed(as_strings(steel.near)) + ".");
  }
  SourceList sources;
  text += "\n" + laid_out(detail_table(steel, sources), look).text + "\n";
  if (!steel.note.empty()) text += say("Note: " + std::string(steel.note) + ".") + "\n";
  text += microstructure_text(steel, sources, look);
  return text + sources.text(look) + "\n" + say(kNoRecommendation);
}

}  // namespace

base::Result<std::string> steels_command(std::string_view name, const Look& look) {
  if (name.empty()) return all_steels_text(look);
  return materials::find_steel(name).transform(
      [&](const materials::FoundSteel& found) { return steel_text(found, name, look); });
}

}  // namespace keenfall::cli
