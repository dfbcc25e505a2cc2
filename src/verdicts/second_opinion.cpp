#include "verdicts/second_opinion.h"

#include "blunting/quick/quick_fit.h"
#include "numerics/summaries.h"
#include "verdicts/lasting.h"
#include "verdicts/planned_looks.h"
#include "verdicts/simultaneous.h"

#include <algorithm>
#include <map>
#include <optional>
#include <span>
#include <utility>
#include <vector>

namespace keenfall::verdicts {

namespace {

// A quick fit, and where the judgement's arms stand in it.
struct Asked {
  const blunting::BluntingData& data;
  blunting::QuickFit fit;
  std::vector<std::size_t> arm_of;  // by index into Judgement::arms
};

// How long the arms of these pairs last by the quick fit, at what their family is compared at.
Family lasting_by(const Asked& asked, const std::vector<const Comparison*>& pairs) {
  Family family{.at = pairs.front()->at};
  const auto add = [&](std::size_t arm) {
    if (std::ranges::count(family.arms, arm, &LastingArm::index) > 0) return;
    const blunting::ArmDraws& draws = asked.fit.arms[asked.arm_of[arm]];
    family.arms.push_back(
        {.index = arm,
         .log_cuts = log_cuts_until(asked.data, draws, family.at, ClaimAbout::these_blades),
         .log_cuts_steel = log_cuts_until(asked.data, draws, family.at, ClaimAbout::the_steels)});
  };
  for (const Comparison* pair : pairs) {
    add(pair->a);
    add(pair->b);
  }
  return family;
}

// By the rules of the comparison it is beside; agrees is left to the caller.
std::vector<SecondOpinion> opinions_by(const Family& quick,
                                       const std::vector<const Comparison*>& pairs,
                                       double margin) {
  std::vector<blunting::Draws> log_ratios;
  for (const Comparison* pair : pairs) {
    log_ratios.push_back(log_ratio_of(quick, pair->a, pair->b, pair->claim_about));
  }
  const std::vector<RatioBounds> together = simultaneous_bounds(log_ratios);
  std::vector<SecondOpinion> opinions;
  for (std::size_t c = 0; c < pairs.size(); ++c) {
    SecondOpinion opinion{.ratio = numerics::exp_of(numerics::interval_of(log_ratios[c]))};
    const std::optional<LookReport>& look = pairs[c]->look;
    const LookStretch stretch =
        look ? LookStretch{.at_95 = look->stretch_95, .at_90 = look->stretch_90} : LookStretch{};
    opinion.simultaneous = stretched(together[c], opinion.ratio.median, stretch);
    opinion.verdict = verdict_on(opinion.simultaneous, margin);
    opinions.push_back(opinion);
  }
  return opinions;
}

bool shares_the_fit(const trials::ReadingSeries& series, const blunting::BluntingData& data) {
  return series.kind.name == data.kind.name && series.thread == data.thread;
}

// The trial with `change` made to its readings that share the fit; none where it changes none.
std::optional<trials::Trial> with_readings_changed(const trials::Trial& trial,
                                                   const blunting::BluntingData& data,
                                                   bool (*change)(trials::Reading&)) {
  std::optional<trials::Trial> changed;  // a copy only where one is needed: trials may be large
  for (std::size_t r = 0; r < trial.runs.size(); ++r) {
    const std::vector<trials::Reading>& readings = trial.runs[r].readings;
    for (std::size_t i = 0; i < readings.size(); ++i) {
      trials::Reading reading = readings[i];
      if (!shares_the_fit(trial.series[reading.series], data) || !change(reading)) continue;
      if (!changed) changed = trial;
      changed->runs[r].readings[i] = std::move(reading);
    }
  }
  return changed;
}

bool take_strike_back(trials::Reading& reading) {
  const bool was_struck = reading.struck_reason.has_value();
  reading.struck_reason.reset();
  return was_struck;
}

bool strike_where_doubtful(trials::Reading& reading) {
  if (reading.struck_reason || !reading.doubtful_reason) return false;
  reading.struck_reason = reading.doubtful_reason;
  return true;
}

std::vector<std::size_t> places_of(const std::vector<trials::Arm>& arms,
                                   const std::vector<trials::Arm>& among) {
  std::vector<std::size_t> places;
  for (const trials::Arm& arm : arms) {
    places.push_back(static_cast<std::size_t>(std::ranges::find(among, arm) - among.begin()));
  }
  return places;
}

using PairsAtOnce = std::vector<std::size_t>;  // indices into Judgement::comparisons
using Answer = std::optional<SecondOpinion> Comparison::*;

// Sets `answer` of the pairs of the family whose arms are both in the fit.
void answer_family(Judgement& judgement,
                   const PairsAtOnce& family,
                   const Asked& asked,
                   Answer answer) {
  PairsAtOnce present;
  std::vector<const Comparison*> pairs;
  for (const std::size_t c : family) {
    const Comparison& pair = judgement.comparisons[c];
    const std::size_t arms = asked.fit.arms.size();
    if (asked.arm_of[pair.a] >= arms || asked.arm_of[pair.b] >= arms) continue;
    present.push_back(c);
    pairs.push_back(&pair);
  }
  if (pairs.empty()) return;
  const auto opinions = opinions_by(lasting_by(asked, pairs), pairs, judgement.worth_it_margin);
  for (std::size_t i = 0; i < present.size(); ++i) {
    Comparison& pair = judgement.comparisons[present[i]];
    SecondOpinion opinion = opinions[i];
    opinion.agrees = opinion.verdict == (pair.quick ? pair.quick->verdict : pair.verdict);
    pair.*answer = opinion;
  }
}

}  // namespace

void add_second_opinions(Judgement& judgement,
                         const trials::Trial& trial,
                         const blunting::BluntingData& data,
                         const blunting::ModelSpec& model) {
  std::map<std::size_t, PairsAtOnce> families;
  for (std::size_t c = 0; c < judgement.comparisons.size(); ++c) {
    families[data.medium_of_arm[judgement.comparisons[c].a]].push_back(c);
  }
  if (families.empty()) return;
  const auto ask = [&](const blunting::BluntingData& of, Answer answer) {
    const Asked asked{
        .data = of, .fit = blunting::quick_fit(of, model), .arm_of = places_of(data.arms, of.arms)};
    for (const auto& family : families) answer_family(judgement, family.second, asked, answer);
  };
  const auto ask_changed = [&](bool (*change)(trials::Reading&), Answer answer) {
    const auto changed = with_readings_changed(trial, data, change);
    if (!changed) return;
    const auto prepared =
        blunting::prepare(*changed, {.kind = data.kind.name, .thread = data.thread}, model.errors);
    if (prepared) ask(*prepared, answer);
  };
  ask(data, &Comparison::quick);
  ask_changed(take_strike_back, &Comparison::with_struck);
  ask_changed(strike_where_doubtful, &Comparison::without_doubtful);
}

void add_second_opinions(std::span<Comparison> comparisons, const Family& quick, double margin) {
  std::vector<const Comparison*> pairs;
  for (const Comparison& pair : comparisons) pairs.push_back(&pair);
  if (pairs.empty()) return;
  const auto opinions = opinions_by(quick, pairs, margin);
  for (std::size_t c = 0; c < comparisons.size(); ++c) {
    comparisons[c].quick = opinions[c];
    comparisons[c].quick->agrees = opinions[c].verdict == comparisons[c].verdict;
  }
}

}  // namespace keenfall::verdicts
