#include "wire/reference_json.h"

#include "base/require.h"
#include "wire/json_pieces.h"
#include "wire/provenance_json.h"

#include <string_view>

namespace keenfall::wire {

namespace {

using materials::Phase;
using materials::Provenance;

constexpr Provenance kHardnessFrom = {"astm-e140", materials::TrustMark::seen};

Json header_json(const char* format, const std::string& program_version) {
  return {{"format", format},
          {"format_version", kReferenceFormatVersion},
          {"program_version", program_version}};
}

Json phase_json(const Phase& phase, SourcesInUse& sources) {
  Json also = Json::array();
  for (const std::string_view name : phase.same) also.push_back(name);
  Json object = {{"name", phase.name},
                 {"also", also},
                 {"kind", in_words(phase.kind)},
                 {"lo_hv", finite_number(phase.lo_hv)},
                 {"hi_hv", finite_number(phase.hi_hv)}};
  put_provenance(object, phase.from, sources);
  put_text(object, "note", std::string(phase.note));
  return object;
}

Json asked_json(const AskedBody& asked) {
  Json scratches = Json::array();
  Json scratched_by = Json::array();
  for (const Phase& phase : materials::known_phases()) {
    if (phase.name == asked.name) continue;
    const auto other = hardness_span(phase);
    const auto does = materials::scratches(asked.hardness, other);
    const auto is = materials::scratches(other, asked.hardness);
    using enum materials::Scratching;
    if (does != no) scratches.push_back({{"name", phase.name}, {"surely", does == yes}});
    if (is != no) scratched_by.push_back({{"name", phase.name}, {"surely", is == yes}});
  }
  return {{"name", asked.name},
          {"lo_hv", finite_number(asked.hardness.lo_hv)},
          {"hi_hv", finite_number(asked.hardness.hi_hv)},
          {"scratches", scratches},
          {"scratched_by", scratched_by}};
}

Json row_json(const materials::HardnessRow& row) {
  return {{"hrc", finite_number(row.hrc)}, {"hv", finite_number(row.hv)}};
}

}  // namespace

std::string phases_to_json(const PhasesDocument& document) {
  Json object = header_json("keenfall-phases", document.program_version);
  object["scratching_hardness_ratio"] = materials::kScratchingHardnessRatio;
  SourcesInUse sources;
  object["asked"] = Json::array();
  for (const AskedBody& asked : document.asked) object["asked"].push_back(asked_json(asked));
  object["phases"] = Json::array();
  for (const Phase& phase : materials::known_phases()) {
    object["phases"].push_back(phase_json(phase, sources));
  }
  object["sources"] = sources_json(sources);
  return object.dump(2) + "\n";
}

std::string hardness_to_json(const HardnessDocument& document) {
  Json object = header_json("keenfall-hardness", document.program_version);
  if (document.asked) object["asked"] = row_json(*document.asked);
  SourcesInUse sources;
  put_provenance(object, kHardnessFrom, sources);
  object["rows"] = Json::array();
  for (const auto& row : materials::known_hardness_pairs()) object["rows"].push_back(row_json(row));
  object["sources"] = sources_json(sources);
  return object.dump(2) + "\n";
}

}  // namespace keenfall::wire
