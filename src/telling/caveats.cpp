#include "telling/caveats.h"

#include "telling/arm_groups.h"
#include "telling/listed.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::telling {

namespace {

using verdicts::Comparison;
using verdicts::Judgement;

std::string p_text(double p) {
  constexpr double kSmallestShown = 0.001;
  return p < kSmallestShown ? "below 0.001" : to_figures(p, 1);
}

}  // namespace

std::optional<Section> second_opinion(const Judgement& judgement) {
  const std::vector<ArmName> names = names_of(judgement);
  std::vector<std::string> others;
  std::size_t asked = 0;
  for (const Comparison& pair : judgement.comparisons) {
    if (!pair.quick) continue;
    ++asked;
    if (pair.quick->agrees) continue;
    others.push_back(fmt::format("{} on {}: {}, by {} ({} to {}).",
                                 pair_name(pair, names),
                                 judgement.arms[pair.a].arm.medium.name,
                                 verdicts::in_words(pair.quick->verdict),
                                 to_figures(pair.quick->ratio.median, 2),
                                 to_figures(pair.quick->simultaneous.lo95, 2),
                                 to_figures(pair.quick->simultaneous.hi95, 2)));
  }
  if (asked == 0) return std::nullopt;
  std::string lead = "A second, quicker calculation ";
  if (others.empty()) {
    lead += asked == 1 ? std::string("agrees.") : fmt::format("agrees on all {}.", asked);
  } else {
    lead += asked == 1 ? std::string("reads otherwise")
                       : fmt::format("reads otherwise for {} of {}", others.size(), asked);
    lead += "; take such a verdict as near a boundary:";
  }
  return Section{.id = "second_opinion",
                 .heading = "A second opinion",
                 .lead = plain(lead),
                 .items = all_plain(others)};
}

std::optional<Section> curve_warnings(const Judgement& judgement) {
  if (judgement.curve_check.passed) return std::nullopt;
  return Section{
      .id = "curve_warnings",
      .heading = "Where the curve misses the readings",
      .lead = plain(fmt::format(
          "The curve misses the readings in places by more than chance (smallest p {}), so take "
          "{} to a level there with care:",
          p_text(judgement.curve_check.smallest_p),
          judgement.counted.many)),
      .items = all_plain(judgement.curve_check.where)};
}

std::optional<Section> how_it_was_read(const Judgement& judgement) {
  if (judgement.taken_as.empty()) return std::nullopt;
  return Section{.id = "how_read",
                 .heading = "How the table was read",
                 .items = all_plain(judgement.taken_as)};
}

std::optional<Section> what_cannot_be_said(const Judgement& judgement) {
  if (judgement.cannot_say.empty()) return std::nullopt;
  return Section{.id = "cannot_say",
                 .heading = "What these readings cannot say",
                 .items = all_plain(judgement.cannot_say)};
}

Section the_fit(const Judgement& judgement) {
  const verdicts::FitReport& fit = judgement.fit;
  const std::string parts = listed(fit.model_parts);
  if (fit.model == "quick") {
    return {.id = "fit",
            .heading = "The fit",
            .lead = plain(fmt::format(
                "By the quick calculation, a first look that is not counted{}. {} draws, without a "
                "sampler, {:.2f} s of processor time. The full calculation is the one that counts.",
                parts.empty() ? "" : ": " + parts,
                fit.draws,
                fit.cpu_seconds))};
  }
  return {.id = "fit",
          .heading = "The fit",
          .lead = plain(fmt::format(
              "Fit: {}. Model {}{}. Seed {}, {} draws, largest R-hat {:.3f}, smallest effective "
              "sample {:.0f}, {:.1f} s of processor time.",
              fit.usable ? "usable" : "not usable",
              fit.model,
              parts.empty() ? "" : ": " + parts,
              fit.seed,
              fit.draws,
              fit.r_hat_max,
              std::min(fit.ess_bulk_min, fit.ess_tail_min),
              fit.cpu_seconds))};
}

}  // namespace keenfall::telling
