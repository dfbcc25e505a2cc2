// Reference rows for steels by open designation (AISI, SAE, UNS, EN): what they are made of, the
// hardness they usually work at, and how much carbide they hold.
//
// Content in wt-%, hardness in HRC, carbide in volume-% of the hardened steel. Each of the three
// facts has its own source and trust mark. Designations of different standards are "near", never
// equal: their limits differ. Nothing here recommends a steel; docs/methods/materials.md.
#pragma once

#include "base/result.h"
#include "materials/trust.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::materials {

enum class Element { C, Si, Mn, Cr, Mo, V, W, Ni, Co };

// "C", "Si", ...
[[nodiscard]] std::string_view symbol(Element element);

// At least one end is stated; a missing end means that the standard sets none.
struct Content {
  Element element = Element::C;
  std::optional<double> lo_percent;
  std::optional<double> hi_percent;

  bool operator==(const Content&) const = default;
};

struct HardnessRange {
  double lo_hrc = 0;
  double hi_hrc = 0;
  Provenance from;

  bool operator==(const HardnessRange&) const = default;
};

struct CarbideShare {
  std::string_view type;  // "M7C3"
  double lo_percent = 0;  // volume
  double hi_percent = 0;

  bool operator==(const CarbideShare&) const = default;
};

struct Steel {
  std::string_view name;               // the designation that tables here use
  std::vector<std::string_view> same;  // other designations of the same grade: UNS, EN number
  std::vector<std::string_view> near;  // grades of other standards that come close
  std::vector<Content> composition;
  Provenance composition_from;
  std::optional<HardnessRange> working_hardness;
  std::vector<CarbideShare> carbides;  // empty: not known
  Provenance carbides_from;            // where there are any
  std::string_view note;

  bool operator==(const Steel&) const = default;
};

[[nodiscard]] std::span<const Steel> known_steels();

struct FoundSteel {
  Steel steel;
  bool only_near = false;  // what was asked for is a near grade of another standard

  bool operator==(const FoundSteel&) const = default;
};

// By any designation, whatever its case and spaces, with or without AISI, SAE, ASTM, UNS, EN or
// W.-Nr. before it; several designations of one steel may stand together: "C75S (EN 1.1248)".
// Refused: names that are not in the table (nearest designations are offered), and designations
// that belong to different steels.
[[nodiscard]] base::Result<FoundSteel> find_steel(std::string_view text);

// Of a name that is not in the table: up to three designations that are written nearly like it.
[[nodiscard]] std::vector<std::string> nearest_steels(std::string_view text);

}  // namespace keenfall::materials
