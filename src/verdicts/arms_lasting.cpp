#include "verdicts/arms_lasting.h"

#include "verdicts/lasting.h"

#include <algorithm>

namespace keenfall::verdicts {

namespace {

using blunting::BluntingData;

// Sets at and remarks.
void put_where(ArmsLasting& across,
               const BluntingData& data,
               const std::vector<Comparison>& comparisons) {
  if (comparisons.empty()) return;
  across.at = comparisons.front().at;
  const auto same = [&](const Comparison& pair) { return pair.at == across.at; };
  if (std::ranges::all_of(comparisons, same)) return;
  across.at = {};
  for (const Comparison& pair : comparisons) {
    if (pair.at.what != ComparedAt::common_reading) continue;
    const bool blunter = across.at.what != ComparedAt::common_reading ||
                         (data.higher_is_keener() ? pair.at.reading < across.at.reading
                                                  : pair.at.reading > across.at.reading);
    if (blunter) across.at = pair.at;
  }
  across.remarks.push_back(
      across.at.what == ComparedAt::common_reading
          ? "The media were compared at different readings by themselves; across them all edges "
            "are compared at one, " +
                asked_reading_text(across.at.reading) + " " + data.unit + "."
          : "The media were compared at different levels by themselves; across them all edges are "
            "compared at half keenness.");
}

}  // namespace

ArmsLasting arms_lasting(const BluntingData& data,
                         const blunting::BluntingFit& fit,
                         const std::vector<Comparison>& comparisons) {
  ArmsLasting lasting{
      .arms = data.arms, .medium_of_arm = data.medium_of_arm, .media_count = data.media.size()};
  put_where(lasting, data, comparisons);
  for (std::size_t a = 0; a < data.arms.size(); ++a) {
    lasting.log_cuts.push_back(log_cuts_until(data, fit, a, lasting.at, ClaimAbout::these_blades));
  }
  return lasting;
}

ArmsLasting arms_lasting(const blunting::TimeData& data, const blunting::TimeFit& fit) {
  ArmsLasting lasting{.at = {.what = ComparedAt::test},
                      .arms = data.groups.arms,
                      .medium_of_arm = data.groups.medium_of_arm,
                      .media_count = data.groups.media.size()};
  for (const blunting::ArmTimes& arm : fit.arms) lasting.log_cuts.push_back(arm.log_cuts);
  return lasting;
}

}  // namespace keenfall::verdicts
