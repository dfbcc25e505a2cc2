#include "verdicts/also_differs.h"

#include "base/plain_number.h"
#include "materials/grits.h"

#include <algorithm>
#include <functional>
#include <set>

namespace keenfall::verdicts {

namespace {

using trials::Arm;
using trials::Run;
using trials::Trial;

AlsoDiffers compared(std::string what, std::string a, std::string b) {
  Matching matching = Matching::not_recorded;
  if (!a.empty() && !b.empty()) matching = a == b ? Matching::matched : Matching::differs;
  return {.what = std::move(what), .matching = matching, .a = std::move(a), .b = std::move(b)};
}

std::string degrees(const std::optional<trials::PerSideAngle>& angle) {
  return angle ? base::plain_number(angle->deg) + "° per side" : "";
}

std::string hardness_of(const Trial& trial, const Arm& arm) {
  const trials::Blade* blade = trials::find_blade(trial, arm.blade);
  if (blade == nullptr) return {};
  const auto in_scale = [](const trials::Hardness& hardness) {
    const bool rockwell = hardness.scale == trials::HardnessScale::rockwell_c;
    return base::plain_number(hardness.reading) + (rockwell ? " HRC" : " HV");
  };
  if (blade->hardness) return in_scale(*blade->hardness);
  std::set<std::string> readings;
  for (const auto& specimen : blade->specimens) {
    if (specimen.hardness) readings.insert(in_scale(*specimen.hardness));
  }
  std::string words;
  for (const std::string& reading : readings) words += (words.empty() ? "" : ", ") + reading;
  return words;
}

// The distinct values of one property over the runs of an arm, in order, joined.
std::string set_over_runs(const Trial& trial,
                          const Arm& arm,
                          const std::function<std::string(const Run&)>& property) {
  std::set<std::string> values;
  for (const Run& run : trial.runs) {
    if (run.arm == arm && !run.voided_reason) values.insert(property(run));
  }
  values.erase("");
  std::string words;
  for (const std::string& value : values) words += (words.empty() ? "" : ", ") + value;
  return words;
}

std::string thread_lots_of(const Trial& trial, const Run& run) {
  std::set<std::string> lots;
  for (const auto& reading : run.readings) lots.insert(trial.series.at(reading.series).thread_lot);
  lots.erase("");
  std::string words;
  for (const std::string& lot : lots) words += (words.empty() ? "" : ", ") + lot;
  return words;
}

AlsoDiffers compared_finish(const std::string& a, const std::string& b) {
  AlsoDiffers finish = compared("finish", a, b);
  if (finish.matching == Matching::matched &&
      materials::same_finish_size(materials::parse_grit(a), materials::parse_grit(b)) ==
          materials::SameFinish::cannot_say) {
    finish.matching = Matching::not_recorded;
    finish.a += " (grit system unknown)";
    finish.b += " (grit system unknown)";
  }
  return finish;
}

}  // namespace

std::vector<AlsoDiffers> what_else_differs(const Trial& trial,
                                           const TwoArms& arms,
                                           const materials::ToldIn& told) {
  const Arm& a = arms.a;
  const Arm& b = arms.b;
  const auto length = [&told](const std::optional<double>& length_mm) {
    return length_mm ? length_words(*length_mm, told) : std::string();
  };
  const auto over_runs = [&](const char* what,
                             const std::function<std::string(const Run&)>& property) {
    return compared(what, set_over_runs(trial, a, property), set_over_runs(trial, b, property));
  };
  return {compared("hardness", hardness_of(trial, a), hardness_of(trial, b)),
          compared("bevel angle", degrees(a.edge.bevel_angle), degrees(b.edge.bevel_angle)),
          compared("apex angle", degrees(a.edge.apex_angle), degrees(b.edge.apex_angle)),
          compared_finish(a.edge.finish, b.edge.finish),
          compared("thickness behind the edge",
                   length(a.edge.thickness_behind_edge_mm),
                   length(b.edge.thickness_behind_edge_mm)),
          over_runs("lot of the medium", [](const Run& run) { return run.medium_lot; }),
          over_runs("thread lot", [&](const Run& run) { return thread_lots_of(trial, run); }),
          over_runs("who cut", [](const Run& run) { return run.operator_name; })};
}

}  // namespace keenfall::verdicts
