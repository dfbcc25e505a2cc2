// A grit with its system, and what it is in micrometres.
//
// A grit number means nothing without its system: 1000 is 4.5 um in FEPA-F, 11.5 in JIS and 18.3 in
// FEPA-P. A bare number, "#1000" or a stone's grade word is kept as written, marked system unknown,
// never converted and never called the same as anything. Sizes are medians;
// docs/methods/materials.md.
#pragma once

#include "base/result.h"
#include "materials/grit_table.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::materials {

struct Grit {
  GritSystem system = GritSystem::unknown;
  std::optional<double> number;  // the grit number, or the size where the system is micrometres
  std::string as_written;

  bool operator==(const Grit&) const = default;
};

// Finds one grit in a text such as "F1000", "FEPA-P 400 paper", "JIS #1000", "1000 JIS" or
// "9 um diamond". Anything else, also two different grits or a range, is system unknown.
[[nodiscard]] Grit parse_grit(std::string_view text);

// "FEPA-F 1000", "9 um"; as written where the system is unknown.
[[nodiscard]] std::string in_words(const Grit& grit);

// The row of the table that this grit names; nullptr for micrometres, unknown systems and numbers
// that are not in the table.
[[nodiscard]] const GritRow* find_grit(const Grit& grit);

// Median size. Refused: system unknown, and numbers that the table does not hold.
[[nodiscard]] base::Result<double> to_micrometres(const Grit& grit);

struct NearestGrit {
  Grit grit;
  double median_um = 0;
  double ratio = 1;  // its median over the size asked for

  bool operator==(const NearestGrit&) const = default;
};

// The grit of a system whose median is nearest by ratio. Refused: system unknown, a size that is
// not above zero, and sizes more than 1.5 times beyond the system's coarsest or finest row.
[[nodiscard]] base::Result<NearestGrit> nearest_in_system(double size_um, GritSystem system);

// What a bare number would be in each system that holds it: 1000 -> F 4.5, P 18.3, JIS 11.5.
[[nodiscard]] std::vector<GritRow> possible_sizes_um(double bare_number);

enum class SameFinish { matched, differs, cannot_say };

// Within one system, matched means the same number. Across systems it means medians within 15 %
// (common practice, no source). With a system unknown on either side: cannot_say, whatever is
// written.
[[nodiscard]] SameFinish same_finish_size(const Grit& one, const Grit& other);

}  // namespace keenfall::materials
