#include "cli/ruled_table.h"
#include "cli/scale_commands.h"
#include "cli/source_list.h"
#include "cli/text_layout.h"
#include "materials/hardness.h"
#include "materials/quantity.h"
#include "wire/reference_json.h"

#include <fmt/format.h>

namespace keenfall::cli {

namespace {

using materials::HardnessRow;

constexpr const char* kApproximate =
    "ASTM E140 for non-austenitic steels; between its rows along a straight line. It calls "
    "converted values approximate: whole HRC at best, and about 5 HV.";

base::Result<HardnessRow> on_both_scales(std::string_view asked) {
  const auto quantity = materials::parse_quantity(asked);
  if (!quantity) return base::failed(quantity.error());
  const double number = quantity->number;
  if (quantity->unit == "HRC") {
    return materials::vickers_from_rockwell_c(number).transform(
        [number](double hv) { return HardnessRow{.hrc = number, .hv = hv}; });
  }
  if (quantity->unit == "HV") {
    return materials::rockwell_c_from_vickers(number).transform(
        [number](double hrc) { return HardnessRow{.hrc = hrc, .hv = number}; });
  }
  return base::failed({.kind = base::ProblemKind::bad_value,
                       .sentence = "“" + std::string(asked) + "” does not say HRC or HV",
                       .place = {.found = std::string(asked)},
                       .accepted = "a hardness with its scale, such as 61HRC or 720HV"});
}

std::string both_scales_text(const HardnessRow& row, const Look& look) {
  return wrapped(
      fmt::format("{:.1f} HRC is about {:.0f} HV, and the other way round.", row.hrc, row.hv),
      {},
      look);
}

std::string rows_text(const Look& look) {
  RuledTable table{.columns = {{.head = "HRC"}, {.head = "HV"}}};
  for (const HardnessRow& row : materials::known_hardness_pairs()) {
    table.rows.push_back({fmt::format("{:g}", row.hrc), fmt::format("{:g}", row.hv)});
  }
  return laid_out(table, look).text;
}

}  // namespace

base::Result<WrittenAnswer> hardness_command(std::string_view asked,
                                             const std::string& program_version,
                                             const Look& look) {
  SourceList sources;
  sources.add({.source_key = "astm-e140", .mark = materials::TrustMark::seen});
  const std::string foot = wrapped(kApproximate, {}, look) + "\n" + sources.text(look);
  if (asked.empty()) {
    return WrittenAnswer{
        rows_text(look) + "\n" +
            wrapped("`keenfall hardness 61HRC` gives one hardness on both scales.", {}, look) +
            foot,
        wire::hardness_to_json({.program_version = program_version, .asked = {}})};
  }
  return on_both_scales(asked).transform([&](const HardnessRow& row) {
    return WrittenAnswer{both_scales_text(row, look) + foot,
                         wire::hardness_to_json({program_version, row})};
  });
}

}  // namespace keenfall::cli
