#include "materials/hardness.h"

#include "base/plain_number.h"

#include <algorithm>
#include <array>
#include <string>

namespace keenfall::materials {

namespace {

// 62 HRC: two of the three reprints say 746, one says 745.
constexpr auto kPairs = std::to_array<HardnessRow>(
    {{40, 392}, {45, 446}, {48, 484}, {50, 513}, {51, 528}, {52, 544}, {53, 560}, {54, 577},
     {55, 595}, {56, 613}, {57, 633}, {58, 653}, {59, 674}, {60, 697}, {61, 720}, {62, 746},
     {63, 772}, {64, 800}, {65, 832}, {66, 865}, {67, 900}, {68, 940}});

struct Scale {
  double HardnessRow::*reading;
  const char* unit;
};

constexpr Scale kRockwell = {&HardnessRow::hrc, "HRC"};
constexpr Scale kVickers = {&HardnessRow::hv, "HV"};

base::Result<double> converted(double hardness, const Scale& from, const Scale& to) {
  const double softest = kPairs.front().*from.reading;
  const double hardest = kPairs.back().*from.reading;
  if (!(hardness >= softest && hardness <= hardest)) {
    const std::string unit = from.unit;
    return base::failed({.sentence = "a hardness of " + base::plain_number(hardness) + " " + unit +
                                     " is outside the conversion table (ASTM E140), which here "
                                     "runs from " +
                                     base::plain_number(softest) + " to " +
                                     base::plain_number(hardest) + " " + unit,
                         .accepted = base::plain_number(softest) + " to " +
                                     base::plain_number(hardest) + " " + unit});
  }
  const auto above =
      std::max(std::ranges::lower_bound(kPairs, hardness, {}, from.reading), kPairs.begin() + 1);
  const HardnessRow& low = *(above - 1);
  const HardnessRow& high = *above;
  const double fraction = (hardness - low.*from.reading) / (high.*from.reading - low.*from.reading);
  return low.*to.reading + fraction * (high.*to.reading - low.*to.reading);
}

}  // namespace

std::span<const HardnessRow> known_hardness_pairs() { return kPairs; }

base::Result<double> vickers_from_rockwell_c(double hrc) {
  return converted(hrc, kRockwell, kVickers);
}

base::Result<double> rockwell_c_from_vickers(double hv) {
  return converted(hv, kVickers, kRockwell);
}

}  // namespace keenfall::materials
