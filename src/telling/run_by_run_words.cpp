#include "telling/run_by_run_words.h"

#include "telling/arm_groups.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <vector>

namespace keenfall::telling {

namespace {

using verdicts::Comparison;
using verdicts::Judgement;
using verdicts::RunByRun;

constexpr double kLeastChance = 0.0001;

std::string chance_of(double p) { return p < kLeastChance ? "0.0001" : to_figures(p, 2); }

// "p = 0.029", "p under 0.0001".
std::string p_words(double p) { return (p < kLeastChance ? "p under " : "p = ") + chance_of(p); }

// Said once, of the comparison with most runs.
std::string fewness_sentence(const Judgement& judgement) {
  double smallest = 1;
  for (const Comparison& pair : judgement.comparisons) {
    if (pair.run_by_run) smallest = std::min(smallest, pair.run_by_run->smallest_possible_p);
  }
  constexpr double kUsual = 0.05;
  if (smallest <= kUsual) return {};
  return fmt::format(" With so few runs p cannot go below {}.", chance_of(smallest));
}

std::string runs_line(const Judgement& judgement,
                      const Comparison& pair,
                      const std::vector<ArmName>& names) {
  const RunByRun& found = *pair.run_by_run;
  std::string line =
      fmt::format("{} against {}: {} times ({} and {} runs{}), {}",
                  names[pair.a].name,
                  names[pair.b].name,
                  ratio_text(found.ratio, judgement.worth_it_margin),
                  found.runs_a,
                  found.runs_b,
                  found.runs_left_out > 0 ? fmt::format(", {} left out", found.runs_left_out) : "",
                  p_words(found.p));
  // Three blocks cannot go below 0.25: such ranks tell nothing.
  constexpr double kTellsSomething = 0.1;
  if (found.by_blocks && found.by_blocks->smallest_possible_p < kTellsSomething) {
    line += fmt::format(
        "; ranked within {} blocks, {}", found.by_blocks->blocks, p_words(found.by_blocks->p));
  }
  if (pair.beyond_what_was_cut) line += "; by curves carried on past what was cut";
  return line + ".";
}

}  // namespace

std::optional<Section> run_by_run_section(const Judgement& judgement) {
  const std::vector<ArmName> names = names_of(judgement);
  Section section{
      .id = "run_by_run",
      .heading = "Each run by itself",
      .lead = plain(
          "Each run by itself, without the joint model: how often would runs dealt out by chance "
          "lie so far apart? A look beside the verdicts; it decides nothing." +
          fewness_sentence(judgement)),
      .when_long = WhenLong::left_out};
  for (const ArmGroup& group : groups_of(judgement)) {
    for (const std::size_t index : group.comparisons) {
      const Comparison& pair = judgement.comparisons[index];
      if (!pair.run_by_run) continue;
      section.items.push_back(
          plain("On " + group.medium_words + ", " + runs_line(judgement, pair, names)));
    }
  }
  if (section.items.empty()) return std::nullopt;
  return section;
}

}  // namespace keenfall::telling
