// What a hardened steel is made of, as far as wear, chipping and sharpening see it: a matrix, and
// carbides in it.
//
// Hardness in HV (but hardness_hrc), carbide as a fraction of volume, its diameter in um, toughness
// as K_Ic in MPa sqrt(m). Each property has a plausible range with its source and trust mark; most
// are from memory or guesses, and no verdict rests on them. bulk_hv is hardness_hrc by ASTM E140.
// Rows describe one usual hardness of a steel, not a blade. docs/methods/materials.md.
#pragma once

#include "base/result.h"
#include "materials/trust.h"

#include <span>
#include <string>
#include <string_view>

namespace keenfall::materials {

// Where a property may well lie; holds the typical figure.
struct PlausibleRange {
  double lo = 0;
  double hi = 0;
  Provenance from;

  bool operator==(const PlausibleRange&) const = default;
};

struct Microstructure {
  std::string name;               // as in the table of steels
  std::string_view carbide_type;  // the most, or the hardest: "MC"
  double hardness_hrc = 0;
  double bulk_hv = 0;                  // of the whole, as an indenter feels it
  double matrix_hv = 0;                // between the carbides
  double carbide_volume_fraction = 0;  // 0 to 1
  double carbide_hv = 0;
  double carbide_diameter_um = 0;
  double toughness_mpa_sqrt_m = 0;
  Provenance hardness_from;
  PlausibleRange matrix_hv_range;
  PlausibleRange carbide_volume_fraction_range;
  PlausibleRange carbide_hv_range;
  PlausibleRange carbide_diameter_um_range;
  PlausibleRange toughness_mpa_sqrt_m_range;

  bool operator==(const Microstructure&) const = default;
};

// In the order of the table of steels.
[[nodiscard]] std::span<const Microstructure> known_microstructures();

// By any designation that `find_steel` takes. Refused: unknown steels, and steels that have no row
// here; near grades of another standard are not put in their place.
[[nodiscard]] base::Result<Microstructure> find_microstructure(std::string_view steel);

// Where the hardness lies outside of what the table of steels calls usual: "softer than the 57 to
// 62 HRC at which 75Ni8 is usually used". Empty where it does not, and of steels without such a
// row.
[[nodiscard]] std::string beside_usual_hardness(const Microstructure& steel);

// The same steel tempered to another hardness: bulk by E140, the matrix and its range in
// proportion. Carbides and toughness stay as tabulated, which holds for a few HRC at most. Refused:
// more than 6 HRC from the row's own, or outside E140's table.
[[nodiscard]] base::Result<Microstructure> at_hardness(const Microstructure& steel, double hrc);

}  // namespace keenfall::materials
