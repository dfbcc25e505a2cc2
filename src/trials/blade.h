// The blade as bought or made: its steel, its hardness, and how many specimens of it there are.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace keenfall::trials {

enum class HardnessScale { rockwell_c, vickers };
enum class HowKnown { not_said, declared_by_maker, mill_sheet, measured };

struct Hardness {
  double reading = 0;
  HardnessScale scale = HardnessScale::rockwell_c;
  std::optional<double> error;  // plus or minus, in the same scale
  HowKnown how_known = HowKnown::not_said;

  bool operator==(const Hardness&) const = default;
};

// One physical piece. A claim about a steel needs several; with one it is about these blades.
struct Specimen {
  std::string name;
  std::optional<Hardness> hardness;  // where it was measured on this piece

  bool operator==(const Specimen&) const = default;
};

// "61 HRC", "58 ± 1 HRC, measured".
[[nodiscard]] std::string in_words(const Hardness& hardness);

struct Blade {
  std::string name;
  std::string steel;                 // designation as written; empty: not recorded
  std::optional<Hardness> hardness;  // of the blade as declared, or of all its specimens
  std::vector<Specimen> specimens;   // empty: one, unnamed

  bool operator==(const Blade&) const = default;
};

}  // namespace keenfall::trials
