#include "cli/apex_list_text.h"

#include "cli/ruled_table.h"
#include "cli/source_list.h"
#include "cli/text_layout.h"
#include "materials/steel_constants.h"
#include "telling/listed.h"
#include "wear/constant_rows.h"
#include "wire/simulation_json.h"

#include <fmt/format.h>

#include <vector>

namespace keenfall::cli {

namespace {

using materials::Microstructure;
using workbench::ApexCatalogue;

std::string list_paragraph(const std::string& words, const Look& look) {
  return wrapped(shown_as(words, look), {}, look);
}

// A thing's name, its usual figures, and their marks together in the last cell.
std::vector<std::string> estimates_row(const std::string& name,
                                       const std::vector<materials::Estimate>& estimates,
                                       SourceList& sources) {
  std::vector<std::string> row = {name};
  std::string marks;
  for (const materials::Estimate& estimate : estimates) {
    row.push_back(fmt::format("{:g}", estimate.typical));
    marks += (marks.empty() ? "" : " ") + mark_letter(estimate.from.mark);
    sources.add(estimate.from);
  }
  row.push_back(marks);
  return row;
}

std::string steels_table_text(const ApexCatalogue& catalogue,
                              SourceList& sources,
                              const Look& look) {
  RuledTable table{.columns = {{.head = "steel", .side = Side::left},
                               {.head = "HRC"},
                               {.head = "matrix HV"},
                               {.head = "carbide"},
                               {.head = "its HV"},
                               {.head = shown_as("its µm", look)},
                               {.head = "K_IC"},
                               {.head = "marks", .side = Side::left}}};
  for (const Microstructure& steel : catalogue.steels) {
    std::vector<materials::Estimate> estimates;
    for (const auto& constant : constants_of(steel)) estimates.push_back(constant.estimate);
    table.rows.push_back(estimates_row(shown_as(steel.name, look), estimates, sources));
  }
  return laid_out(table, look).text +
         list_paragraph(
             "HRC; carbide as a fraction of volume, its hardness and diameter; K_IC in MPa √m. The "
             "marks belong to the columns, from HRC on. `keenfall apex --list --steel=NAME` shows "
             "one steel with its ranges and sources.",
             look);
}

std::string media_table_text(const ApexCatalogue& catalogue,
                             SourceList& sources,
                             const Look& look) {
  RuledTable table{.columns = {{.head = "marks", .side = Side::left}}};
  std::vector<std::string> names;
  for (const wear::AbrasiveMedium& medium : catalogue.media) {
    names.push_back("(" + std::to_string(names.size() + 1) + ") " + medium.name);
    table.columns.push_back({.head = "(" + std::to_string(names.size()) + ")"});
  }
  table.columns.push_back({.head = "constant, as a file's column", .side = Side::left});
  for (const auto& constant : wear::medium_constants()) {
    std::vector<std::string> row = {""};
    for (const wear::AbrasiveMedium& medium : catalogue.media) {
      const materials::Estimate estimate = wear::constant_of(constant, medium).estimate;
      row.front() += (row.front().empty() ? "" : " ") + mark_letter(estimate.from.mark);
      row.push_back(fmt::format("{:g}", estimate.typical));
      sources.add(estimate.from);
    }
    row.emplace_back(constant.field);
    table.rows.push_back(row);
  }
  return list_paragraph(telling::listed(names) + ":", look) + laid_out(table, look).text;
}

std::string finishes_table_text(const ApexCatalogue& catalogue,
                                SourceList& sources,
                                const Look& look) {
  RuledTable table{.columns = {{.head = "finish", .side = Side::left}}};
  for (const auto& constant : wear::finish_constants()) {
    table.columns.push_back({.head = std::string(constant.field)});
  }
  table.columns.push_back({.head = "marks", .side = Side::left});
  for (const workbench::NamedFinish& each : catalogue.finishes) {
    std::vector<materials::Estimate> estimates;
    for (const auto& constant : wear::finish_constants()) {
      estimates.push_back(wear::constant_of(constant, each.finish).estimate);
    }
    table.rows.push_back(estimates_row(shown_as(each.name, look), estimates, sources));
  }
  return laid_out(table, look).text;
}

}  // namespace

std::string apex_list_text(const ApexCatalogue& catalogue, const Look& look) {
  SourceList sources;
  std::string text = steels_table_text(catalogue, sources, look) + "\n" +
                     media_table_text(catalogue, sources, look) + "\n" +
                     finishes_table_text(catalogue, sources, look) + "\n";
  text += list_paragraph(
      "s: seen at its source. 2: seen at second hand. m: from memory, not verified. d: derived. g: "
      "a guess of ours. t: tuned, so that edges last as practice reports. o: of your own file.",
      look);
  text += list_paragraph(std::string("These are ") + wire::kSimulatedCaution +
                             ". Files of your own: --steels, --media and --finishes, whose columns "
                             "are those above; docs/methods/apex.md.",
                         look);
  return text + "\n" + sources.text(look);
}

std::string apex_steel_text(const Microstructure& steel, const Look& look) {
  RuledTable table{.columns = {{.head = "", .side = Side::left},
                               {.head = "typical"},
                               {.head = "from"},
                               {.head = "to"},
                               {.head = "unit", .side = Side::left},
                               {.head = "mark", .side = Side::left},
                               {.head = "source", .side = Side::left}}};
  SourceList sources;
  for (const auto& [name, field, unit, estimate] : constants_of(steel)) {
    const bool has_range = !estimate.is_known();
    table.rows.push_back({name,
                          fmt::format("{:g}", estimate.typical),
                          has_range ? fmt::format("{:g}", estimate.lo) : "",
                          has_range ? fmt::format("{:g}", estimate.hi) : "",
                          shown_as(unit, look),
                          std::string(in_words(estimate.from.mark)),
                          std::string(estimate.from.source_key)});
    sources.add(estimate.from);
  }
  return list_paragraph(steel.name + ", with carbides " + std::string(steel.carbide_type), look) +
         "\n" + laid_out(table, look).text + "\n" + sources.text(look);
}

}  // namespace keenfall::cli
