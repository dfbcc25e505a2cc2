#include "sharpening/counted_strokes.h"

#include "base/plain_number.h"
#include "base/require.h"
#include "sharpening/ranged_numbers.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>
#include <string>
#include <vector>

namespace keenfall::sharpening {

namespace {

using base::Problem;

constexpr double kVolumeMm3PerUm2AndMm = 1e-6;
constexpr double kUsualErrorShare = 0.1;  // a guess
constexpr materials::Provenance kOwnCount = {"own-count", materials::TrustMark::declared};

double tan_of(trials::PerSideAngle angle) { return std::tan(angle.deg * std::numbers::pi / 180); }

struct Face {
  double slope = 0;         // tan gamma
  double slope_behind = 0;  // tan beta
};

double face_area_um2(const Face& face, double before_um, double after_um) {
  const double g = face.slope;
  const double b = face.slope_behind;
  const double sin_squared = g * g / (1 + g * g);
  return sin_squared * (after_um * after_um - before_um * before_um) * (g - b) / (g * b);
}

std::vector<Ranged> numbers_of(const BevelCount& count) {
  const std::string mm = "0.001 to 100,000 mm";
  const std::string um = "0 to 10,000 µm";
  const std::string some_um = "0.001 to 10,000 µm";
  std::vector<Ranged> numbers = {
      {"a count of", count.passes, " passes", 1, 1e9, "1 to 1,000,000,000", "counted_passes"},
      {"a counted force of",
       count.stroke.force_newton,
       " N",
       1e-3,
       1e4,
       "0.001 to 10,000 N",
       "counted_force"},
      {"a counted stroke of", count.stroke.length_mm, " mm", 1e-3, 1e5, mm, "counted_stroke"},
      {"a counted edge of", count.edge_length_mm, " mm", 1e-3, 1e5, mm, "counted_edge"},
      {"a width before of", count.width_before_um, " µm", 0, 1e4, um, "counted_width_before"}};
  if (count.height_um) {
    numbers.push_back(
        {"a height of", *count.height_um, " µm", 1e-3, 1e4, some_um, "counted_height"});
  }
  if (count.width_after_um) {
    numbers.push_back(
        {"a width of", *count.width_after_um, " µm", 1e-3, 1e4, some_um, "counted_width"});
  }
  if (count.error_um) {
    numbers.push_back({"an error of", *count.error_um, " µm", 0, 1e4, um, "counted_error"});
  }
  return numbers;
}

std::optional<Problem> problem_of_passes(const BevelCount& count) {
  if (!std::isfinite(count.passes) || count.passes == std::floor(count.passes)) return std::nullopt;
  return Problem{
      .kind = base::ProblemKind::bad_value,
      .sentence = "passes are counted whole, and " + base::plain_number(count.passes) + " is not",
      .place = {.column = "counted_passes"},
      .accepted = "a whole number of passes, both sides together"};
}

std::optional<Problem> problem_of_measure(const BevelCount& count) {
  if (count.height_um.has_value() != count.width_after_um.has_value()) return std::nullopt;
  return Problem{
      .kind = count.height_um ? base::ProblemKind::conflicting : base::ProblemKind::missing,
      .sentence = count.height_um
                      ? "a count is measured by the height or by the width, not by both"
                      : "a count tells nothing without what was measured before and after",
      .place = {.column = count.height_um ? "counted_height" : "counted_passes"},
      .accepted = "how far the apex went up, or how wide the ground face is"};
}

// Which face was ground, and on what: problems where its width does not tell.
void look_at_face(const BevelCount& count, const Bevel& bevel, std::vector<Problem>& problems) {
  if (!count.width_after_um) return;
  if (!count.face_angle && count.width_before_um == 0) {
    problems.push_back({.kind = base::ProblemKind::missing,
                        .sentence = "how wide the bevel was before it was ground is not said",
                        .place = {.column = "counted_width_before"},
                        .accepted = "the width before, or the angle of a new test bevel"});
  }
  if (!count.face_angle) {
    if (bevel.primary_angle.deg > 0) return;
    problems.push_back(
        {.sentence = "on parallel faces a bevel stays as wide as it is, however much is ground",
         .place = {.column = "counted_width"},
         .accepted = "the height, or the width of a steeper test bevel"});
    return;
  }
  if (!(count.face_angle->deg >= bevel.bevel_angle.deg + kLeastStepDeg &&
        count.face_angle->deg < 90)) {
    problems.push_back({.sentence = "a test bevel of " + base::plain_number(count.face_angle->deg) +
                                    "° per side on a bevel of " +
                                    base::plain_number(bevel.bevel_angle.deg) +
                                    "°: a test bevel must be steeper",
                        .place = {.column = "counted_angle"},
                        .accepted = "0.01° more than the bevel angle or steeper, below 90°"});
    return;
  }
  const double shoulder_um =
      2 * *count.width_after_um * std::sin(count.face_angle->deg * std::numbers::pi / 180);
  if (shoulder_um > 1000 * bevel.thickness_behind_edge_mm) {
    problems.push_back({.sentence = "a test bevel " + base::plain_number(*count.width_after_um) +
                                    " µm wide would be thicker than the blade is behind its bevel",
                        .place = {.column = "counted_width"},
                        .accepted = "the width of the ground face, on one side"});
  }
}

// The steel by the readings moved by so much, after upwards and before downwards.
double volume_mm3(const BevelCount& count, const Bevel& bevel, double share) {
  const auto error_of = [&](double reading_um) {
    return share * count.error_um.value_or(kUsualErrorShare * reading_um);
  };
  double area_um2 = 0;
  if (count.height_um) {
    const double h_um = *count.height_um + error_of(*count.height_um);
    const double t = tan_of(bevel.bevel_angle);
    const double a = tan_of(bevel.primary_angle);
    area_um2 =
        h_um <= 0 ? 0 : h_um * (1000 * bevel.thickness_behind_edge_mm + h_um * a * t / (t - a));
  } else {
    const Face face = count.face_angle
                          ? Face{tan_of(*count.face_angle), tan_of(bevel.bevel_angle)}
                          : Face{tan_of(bevel.bevel_angle), tan_of(bevel.primary_angle)};
    const double after_um = *count.width_after_um + error_of(*count.width_after_um);
    const bool was_ground = count.width_before_um > 0;  // else there is nothing to misread
    const double before_um =
        was_ground ? count.width_before_um - error_of(count.width_before_um) : 0;
    area_um2 = face_area_um2(face, std::max(0.0, before_um), std::max(0.0, after_um));
  }
  return kVolumeMm3PerUm2AndMm * area_um2 * count.edge_length_mm;
}

}  // namespace

base::ResultOrProblems<CountedStrokes> counted_strokes(const BevelCount& count,
                                                       const Bevel& bevel) {
  std::vector<Problem> problems = problems_of(bevel, {});
  std::ranges::copy(problems_of(numbers_of(count)), std::back_inserter(problems));
  if (auto problem = problem_of_passes(count)) problems.push_back(*problem);
  if (auto problem = problem_of_measure(count)) problems.push_back(*problem);
  if (problems.empty()) look_at_face(count, bevel, problems);
  if (!problems.empty()) return tl::unexpected(problems);
  const Estimate removed = {.typical = volume_mm3(count, bevel, 0),
                            .lo = volume_mm3(count, bevel, -1),
                            .hi = volume_mm3(count, bevel, 1),
                            .from = kOwnCount};
  if (!(removed.lo > 0)) {
    return base::failed_by(
        {.kind = base::ProblemKind::unsuitable_data,
         .sentence = "what was measured before and after differs by no more than the readings err",
         .place = {.column = count.height_um ? "counted_height" : "counted_width"},
         .accepted = "more passes, or a smaller error of the readings"});
  }
  return CountedStrokes{.passes = count.passes, .stroke = count.stroke, .removed_mm3 = removed};
}

RemovalConstants calibrated(RemovalConstants constants, const CountedStrokes& counted) {
  base::require(constants.counted_mm3 > 0 && counted.passes > 0, "steel was taken and counted");
  constants.wear_mm3_per_newton_m = 1;
  const double by_one_mm3 = removed_mm3(cutting_rate(constants, counted.stroke), counted.passes);
  constants.wear_mm3_per_newton_m =
      constants.counted_mm3 / by_one_mm3 * constants.later_stroke_ratio;
  return constants;
}

}  // namespace keenfall::sharpening
