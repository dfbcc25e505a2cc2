// The pictures of one medium cut by one method: blunting curves, ratios, how long each edge lasts,
// how every run started, and a ratio at each level where it changes.
#pragma once

#include "page/figure.h"
#include "telling/arm_groups.h"
#include "verdicts/judgement.h"
#include "verdicts/reported_run.h"

#include <cstddef>
#include <vector>

namespace keenfall::page {

// What the figures are of; `names` of all arms of the judgement, `group` one of its media.
struct MediumShown {
  const verdicts::Judgement& judgement;
  const std::vector<telling::ArmName>& names;
  const telling::ArmGroup& group;
  const std::vector<verdicts::ReportedRun>& runs;  // of all runs of the judgement
  const trials::Trial& trial;
  std::size_t judgement_index = 0;
  std::size_t group_index = 0;
};

// In the order they are shown; those that have nothing to show are left out.
[[nodiscard]] std::vector<Figure> figures_of(const MediumShown& shown);

// So many pairs are drawn at most; of more, each edge against the longest-lasting.
inline constexpr std::size_t kMostPairsDrawn = 24;

}  // namespace keenfall::page
