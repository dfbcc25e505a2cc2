#include "page/curves_drawn.h"

#include "telling/cuts_compared.h"
#include "telling/lasting.h"
#include "telling/level_words.h"
#include "telling/picture_words.h"

#include <algorithm>

namespace keenfall::page {

namespace {

constexpr std::size_t kMostInOneFrame = 6;  // more lines cannot be told apart
constexpr std::size_t kMostBands = 4;       // more bands hide each other

bool has_ring(const MediumShown& shown, std::size_t arm) {
  const verdicts::ArmResult& result = shown.judgement.arms[arm];
  const verdicts::At at = telling::compared_at(shown.judgement, shown.group);
  return telling::cuts_are_known(shown.judgement, result, at) &&
         !telling::cuts_compared(result, at).beyond_what_was_cut &&
         telling::reading_compared(shown.judgement, result, at).has_value();
}

bool is_struck_in(const verdicts::ReportedRun& run, const trials::Reading& reading) {
  return reading.struck_reason && std::ranges::count(run.series, reading.series) > 0;
}

bool goes_beyond(const MediumShown& shown, const std::vector<std::size_t>& arms) {
  double last_cut = 0;
  double last_drawn = 0;
  for (const std::size_t arm : arms) {
    const verdicts::ArmResult& result = shown.judgement.arms[arm];
    last_cut = std::max(last_cut, result.longest_run_cuts);
    for (const verdicts::CurvePoint& point : result.curve) {
      last_drawn = std::max(last_drawn, point.cuts);
    }
  }
  return last_drawn > last_cut;
}

}  // namespace

CurvesDrawn curves_drawn(const MediumShown& shown, const std::vector<std::size_t>& arms) {
  CurvesDrawn drawn{.frame_each = arms.size() > kMostInOneFrame};
  drawn.bands = drawn.frame_each || arms.size() <= kMostBands;
  for (std::size_t i = 0; i < shown.runs.size(); ++i) {
    const verdicts::RunResult& judged = shown.judgement.runs[i];
    if (std::ranges::count(arms, judged.arm) == 0) continue;
    const verdicts::ReportedRun& run = shown.runs[i];
    const trials::Run& recorded = shown.trial.runs[run.run];
    drawn.struck |= std::ranges::any_of(
        recorded.readings, [&](const auto& reading) { return is_struck_in(run, reading); });
    drawn.events |= !recorded.events.empty();
    drawn.not_used |= !judged.not_used_because.empty() && run.checkpoints.size() > 1;
  }
  drawn.rings = std::ranges::any_of(arms, [&](std::size_t arm) { return has_ring(shown, arm); });
  drawn.beyond = goes_beyond(shown, arms);
  return drawn;
}

std::string curves_key(const MediumShown& shown, const CurvesDrawn& drawn) {
  const verdicts::At at = telling::compared_at(shown.judgement, shown.group);
  std::string words = "Small marks: readings";
  words += drawn.frame_each ? "" : ", each edge's by its own mark";
  words += ". Thin: each run, through its checkpoints";
  words += drawn.not_used ? "; fainter: runs not used" : "";
  words += ". Bold: each edge";
  words += drawn.bands ? " with its 95 % band." : ".";
  if (at.what == verdicts::ComparedAt::common_reading) {
    words += " Dotted across: the reading at which edges are compared.";
  }
  if (drawn.rings) {
    words += " Rings: where it has " + telling::level_reached_words(shown.judgement, at) + ".";
  }
  if (drawn.struck) words += " Crosses: struck out.";
  if (drawn.events) words += " Triangles: something happened.";
  if (drawn.beyond) words += " Shaded: beyond what was cut.";
  return words;
}

std::string form_of(const CurvesDrawn& drawn) {
  if (drawn.frame_each) return "each";
  return drawn.bands ? "banded" : "plain";
}

}  // namespace keenfall::page
