#include "cli/apex_list_text.h"

#include "cli/ruled_table.h"
#include "cli/source_list.h"
#include "cli/text_layout.h"
#include "telling/listed.h"
#include "wire/simulation_json.h"

#include <fmt/format.h>

#include <vector>

namespace keenfall::cli {

namespace {

using materials::Microstructure;
using materials::PlausibleRange;
using materials::Provenance;
using workbench::ApexCatalogue;

constexpr Provenance kOwnFile{"own-file", materials::TrustMark::declared};
constexpr Provenance kFinishGuess{"plausible", materials::TrustMark::guessed};

std::string list_paragraph(const std::string& words, const Look& look) {
  return wrapped(shown_as(words, look), {}, look);
}

struct SteelProperty {
  const char* what;
  const char* unit;
  double Microstructure::*typical;
  PlausibleRange Microstructure::*range;
};

const std::vector<SteelProperty>& steel_properties() {
  static const std::vector<SteelProperty> properties = {
      {"matrix hardness", "HV", &Microstructure::matrix_hv, &Microstructure::matrix_hv_range},
      {"carbide share",
       "of volume",
       &Microstructure::carbide_volume_fraction,
       &Microstructure::carbide_volume_fraction_range},
      {"carbide hardness", "HV", &Microstructure::carbide_hv, &Microstructure::carbide_hv_range},
      {"carbide diameter",
       "µm",
       &Microstructure::carbide_diameter_um,
       &Microstructure::carbide_diameter_um_range},
      {"toughness",
       "MPa √m",
       &Microstructure::toughness_mpa_sqrt_m,
       &Microstructure::toughness_mpa_sqrt_m_range}};
  return properties;
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
    std::vector<std::string> row = {shown_as(steel.name, look),
                                    fmt::format("{:g}", steel.hardness_hrc)};
    std::string marks = mark_letter(steel.hardness_from.mark);
    sources.add(steel.hardness_from);
    for (const SteelProperty& property : steel_properties()) {
      row.push_back(fmt::format("{:g}", steel.*property.typical));
      const Provenance& from = (steel.*property.range).from;
      marks += " " + mark_letter(from.mark);
      sources.add(from);
    }
    row.push_back(marks);
    table.rows.push_back(row);
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
  std::vector<std::vector<double>> numbers;
  std::vector<std::string> names;
  for (const wear::AbrasiveMedium& medium : catalogue.media) {
    names.push_back("(" + std::to_string(names.size() + 1) + ") " + medium.name);
    table.columns.push_back({.head = "(" + std::to_string(names.size()) + ")"});
    numbers.push_back(workbench::numbers_of(medium));
  }
  table.columns.push_back({.head = "constant, as a file's column", .side = Side::left});
  const auto& columns = workbench::medium_columns();
  for (std::size_t i = 0; i < columns.size(); ++i) {
    std::vector<std::string> row = {""};
    for (std::size_t medium = 0; medium < numbers.size(); ++medium) {
      const bool is_own = medium < catalogue.own_media;
      const Provenance from = is_own ? kOwnFile : workbench::medium_provenances()[i];
      row.front() += (row.front().empty() ? "" : " ") + mark_letter(from.mark);
      row.push_back(fmt::format("{:g}", numbers[medium][i]));
      sources.add(from);
    }
    row.push_back(columns[i].name);
    table.rows.push_back(row);
  }
  return list_paragraph(telling::listed(names) + ":", look) + laid_out(table, look).text;
}

std::string finishes_table_text(const ApexCatalogue& catalogue,
                                SourceList& sources,
                                const Look& look) {
  RuledTable table{.columns = {{.head = "finish", .side = Side::left}}};
  for (const auto& column : workbench::finish_columns()) {
    table.columns.push_back({.head = column.name});
  }
  table.columns.push_back({.head = "marks", .side = Side::left});
  for (std::size_t i = 0; i < catalogue.finishes.size(); ++i) {
    const Provenance from = i < catalogue.own_finishes ? kOwnFile : kFinishGuess;
    std::vector<std::string> row = {shown_as(catalogue.finishes[i].name, look)};
    std::string marks;
    for (const double number : workbench::numbers_of(catalogue.finishes[i].finish)) {
      row.push_back(fmt::format("{:g}", number));
      marks += (marks.empty() ? "" : " ") + mark_letter(from.mark);
    }
    sources.add(from);
    row.push_back(marks);
    table.rows.push_back(row);
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
  table.rows.push_back({"hardness",
                        fmt::format("{:g}", steel.hardness_hrc),
                        "",
                        "",
                        "HRC",
                        std::string(in_words(steel.hardness_from.mark)),
                        std::string(steel.hardness_from.source_key)});
  sources.add(steel.hardness_from);
  for (const SteelProperty& property : steel_properties()) {
    const PlausibleRange& range = steel.*property.range;
    table.rows.push_back({property.what,
                          fmt::format("{:g}", steel.*property.typical),
                          fmt::format("{:g}", range.lo),
                          fmt::format("{:g}", range.hi),
                          shown_as(property.unit, look),
                          std::string(in_words(range.from.mark)),
                          std::string(range.from.source_key)});
    sources.add(range.from);
  }
  return list_paragraph(steel.name + ", with carbides " + std::string(steel.carbide_type), look) +
         "\n" + laid_out(table, look).text + "\n" + sources.text(look);
}

}  // namespace keenfall::cli
