#include "materials/grit_table.h"

#include <cmath>
#include <vector>

namespace keenfall::materials {

namespace {

constexpr Provenance kSizes = {"sizes", TrustMark::seen};
constexpr Provenance kList = {"p-cami-list", TrustMark::seen};

GritRow f_band(double number, double from_um, double to_um) {
  return {.system = GritSystem::fepa_f,
          .number = number,
          .median_um = std::round(std::sqrt(from_um * to_um)),
          .from = {"fepa-42-d-1986", TrustMark::derived}};
}

GritRow f_recalled(double number, double median_um) {
  return {.system = GritSystem::fepa_f,
          .number = number,
          .median_um = median_um,
          .from = {"fepa-42-memory", TrustMark::from_memory}};
}

GritRow p(double number, double median_um, Provenance from) {
  return {.system = GritSystem::fepa_p, .number = number, .median_um = median_um, .from = from};
}

GritRow jis(double number, double median_um, double tolerance_um) {
  return {.system = GritSystem::jis,
          .number = number,
          .median_um = median_um,
          .tolerance_um = tolerance_um,
          .from = {"jis-r6001-1987", TrustMark::seen}};
}

GritRow cami(double number, double median_um, Provenance from) {
  return {.system = GritSystem::cami, .number = number, .median_um = median_um, .from = from};
}

// clang-format off
// A table rather than a procedure.
// NOLINTNEXTLINE(readability-function-size)
const std::vector<GritRow>& all_grits() {
  static const std::vector<GritRow> rows = {
    // The geometric middle of the band that holds 80 % of the grain, e.g. F220: sqrt(53 * 75) = 63.
    f_band(46, 300, 425),
    f_band(60, 212, 300),
    f_band(80, 150, 212),
    f_band(100, 106, 150),
    f_band(120, 90, 125),
    f_band(150, 63, 106),
    f_band(180, 63, 90),
    f_band(220, 53, 75),
    f_recalled(230, 53),
    f_recalled(240, 44.5),
    f_recalled(280, 36.5),
    f_recalled(320, 29.2),
    f_recalled(360, 22.8),
    f_recalled(400, 17.3),
    f_recalled(500, 12.8),
    f_recalled(600, 9.3),
    f_recalled(800, 6.5),
    f_recalled(1000, 4.5),
    f_recalled(1200, 3),
    p(12, 1815, kSizes),
    p(16, 1324, kSizes),
    p(20, 1000, kSizes),
    p(24, 764, kSizes),
    p(30, 642, kSizes),
    p(36, 538, kSizes),
    p(40, 425, kSizes),
    p(50, 336, kSizes),
    p(60, 269, kSizes),
    p(80, 201, kSizes),
    p(100, 162, kSizes),
    p(120, 125, kSizes),
    p(150, 100, kList),
    p(180, 82, kList),
    p(220, 68, kList),
    p(240, 58.5, kList),
    p(280, 52.2, kList),
    p(320, 46.2, kList),
    p(360, 40.5, kList),
    p(400, 35, kList),
    p(500, 30.2, kList),
    p(600, 25.8, kList),
    p(800, 21.8, kList),
    p(1000, 18.3, kList),
    p(1200, 15.3, kList),
    p(1500, 12.6, kList),
    p(2000, 10.3, kList),
    p(2500, 8.4, kList),
    jis(240, 57, 3),
    jis(280, 48, 3),
    jis(320, 40, 2.5),
    jis(360, 35, 2),
    jis(400, 30, 2),
    jis(500, 25, 2),
    jis(600, 20, 1.5),
    jis(700, 17, 1.3),
    jis(800, 14, 1),
    jis(1000, 11.5, 1),
    jis(1200, 9.5, 0.8),
    jis(1500, 8, 0.6),
    jis(2000, 6.7, 0.6),
    jis(2500, 5.5, 0.5),
    jis(3000, 4, 0.5),
    jis(4000, 3, 0.4),
    jis(6000, 2, 0.4),
    jis(8000, 1.2, 0.3),
    cami(16, 1320, kSizes),
    cami(20, 905, kSizes),
    cami(24, 715, kSizes),
    cami(30, 638, kSizes),
    cami(36, 535, kSizes),
    cami(40, 428, kSizes),
    cami(50, 351, kSizes),
    cami(60, 268, kSizes),
    cami(80, 192, kSizes),
    cami(100, 141, kSizes),
    cami(120, 115, kList),
    cami(150, 92, kList),
    cami(180, 82, kList),
    cami(220, 68, kList),
    cami(240, 53, kList),
    cami(320, 36, kList),
    cami(360, 28, kList),
    cami(400, 23.6, kSizes),
    cami(500, 20, kList),
    cami(600, 16, kSizes),
    cami(800, 12.6, kList),
    cami(1000, 10.3, kList),
  };
  return rows;
}
// clang-format on

}  // namespace

std::string_view in_words(GritSystem system) {
  switch (system) {
    case GritSystem::unknown:
      return "system unknown";
    case GritSystem::fepa_f:
      return "FEPA-F";
    case GritSystem::fepa_p:
      return "FEPA-P";
    case GritSystem::jis:
      return "JIS";
    case GritSystem::cami:
      return "CAMI";
    case GritSystem::micrometres:
      return "um";
  }
  return "";
}

std::span<const GritRow> known_grits() { return all_grits(); }

}  // namespace keenfall::materials
