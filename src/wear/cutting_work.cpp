#include "wear/cutting_work.h"

#include <algorithm>

namespace keenfall::wear {

namespace {

void append(const CuttingWork& work, long cuts, std::vector<Stretch>& list);

// Stops where a whole round of the parts spends no cuts.
void append_mix(const MixedWork& mix, long cuts, std::vector<Stretch>& list) {
  long left = cuts;
  while (left > 0) {
    const long before = left;
    for (const CuttingWork& part : mix.parts) {
      if (left == 0) return;
      const bool pauses = std::holds_alternative<WetPause>(part.what);
      const long share = pauses ? 0 : std::min(left, part.cuts);
      append(part, share, list);
      left -= share;
    }
    if (left == before) return;
  }
}

void append(const CuttingWork& work, long cuts, std::vector<Stretch>& list) {
  if (const auto* medium = std::get_if<CutMedium>(&work.what)) {
    const bool goes_on = !list.empty() && list.back().medium == medium;
    if (goes_on) {
      list.back().cuts += cuts;
    } else if (cuts > 0) {
      list.push_back({.medium = medium, .cuts = cuts});
    }
  } else if (const auto* pause = std::get_if<WetPause>(&work.what)) {
    list.push_back({.pause = pause});
  } else {
    append_mix(std::get<MixedWork>(work.what), cuts, list);
  }
}

}  // namespace

std::vector<Stretch> stretches_of(const Schedule& schedule) {
  std::vector<Stretch> list;
  for (const CuttingWork& work : schedule) append(work, work.cuts, list);
  return list;
}

long total_cuts(const Schedule& schedule) {
  long cuts = 0;
  for (const Stretch& stretch : stretches_of(schedule)) cuts += stretch.cuts;
  return cuts;
}

}  // namespace keenfall::wear
