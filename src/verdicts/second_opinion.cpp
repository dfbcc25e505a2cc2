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

// Draws of an arm's log cuts, found once for all the pairs of its family.
class QuickLasting {
 public:
  QuickLasting(const blunting::BluntingData& data, const blunting::QuickFit& quick, const At& at)
      : data_(data), quick_(quick), at_(at) {}

  const blunting::Draws& of(std::size_t arm, ClaimAbout claim) {
    const auto [found, is_new] = known_.try_emplace({arm, claim});
    if (is_new) found->second = log_cuts_until(data_, quick_.arms[arm], at_, claim);
    return found->second;
  }

 private:
  const blunting::BluntingData& data_;
  const blunting::QuickFit& quick_;
  At at_;
  std::map<std::pair<std::size_t, ClaimAbout>, blunting::Draws> known_;
};

// A quick fit, and where the judgement's arms stand in it.
struct Asked {
  const blunting::BluntingData& data;
  blunting::QuickFit fit;
  std::vector<std::size_t> arm_of;  // by index into Judgement::arms
};

// By the rules of the comparison it is beside; agrees is left to the caller.
std::vector<SecondOpinion> opinions_by(const std::vector<blunting::Draws>& log_ratios,
                                       const std::vector<const Comparison*>& family,
                                       double margin) {
  const std::vector<RatioBounds> together = simultaneous_bounds(log_ratios);
  std::vector<SecondOpinion> opinions;
  for (std::size_t c = 0; c < family.size(); ++c) {
    SecondOpinion opinion{.ratio = numerics::exp_of(numerics::interval_of(log_ratios[c]))};
    const std::optional<LookReport>& look = family[c]->look;
    const LookStretch stretch =
        look ? LookStretch{.at_95 = look->stretch_95, .at_90 = look->stretch_90} : LookStretch{};
    opinion.simultaneous = stretched(together[c], opinion.ratio.median, stretch);
    opinion.verdict = verdict_on(opinion.simultaneous, margin);
    opinions.push_back(opinion);
  }
  return opinions;
}

std::vector<SecondOpinion> opinions_on(const std::vector<const Comparison*>& family,
                                       double margin,
                                       const Asked& asked) {
  QuickLasting lasting(asked.data, asked.fit, family.front()->at);
  std::vector<blunting::Draws> log_ratios;
  for (const Comparison* pair : family) {
    blunting::Draws ratio = lasting.of(asked.arm_of[pair->a], pair->claim_about);
    const blunting::Draws& below = lasting.of(asked.arm_of[pair->b], pair->claim_about);
    for (std::size_t d = 0; d < ratio.size(); ++d) ratio[d] -= below[d];
    log_ratios.push_back(std::move(ratio));
  }
  return opinions_by(log_ratios, family, margin);
}

bool shares_the_fit(const trials::ReadingSeries& series, const blunting::BluntingData& data) {
  return series.kind.name == data.kind.name && series.thread == data.thread;
}

// The trial with `change` made to its readings that share the fit; none where it changes none.
std::optional<trials::Trial> with_readings_changed(const trials::Trial& trial,
                                                   const blunting::BluntingData& data,
                                                   bool (*change)(trials::Reading&)) {
  trials::Trial changed = trial;
  bool is_changed = false;
  for (trials::Run& run : changed.runs) {
    for (trials::Reading& reading : run.readings) {
      if (!shares_the_fit(trial.series[reading.series], data)) continue;
      is_changed = change(reading) || is_changed;
    }
  }
  return is_changed ? std::optional(std::move(changed)) : std::nullopt;
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
  const auto opinions = opinions_on(pairs, judgement.worth_it_margin, asked);
  for (std::size_t i = 0; i < present.size(); ++i) {
    Comparison& pair = judgement.comparisons[present[i]];
    SecondOpinion opinion = opinions[i];
    opinion.agrees = opinion.verdict == (pair.quick ? pair.quick->verdict : pair.verdict);
    pair.*answer = std::move(opinion);
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
  std::vector<blunting::Draws> log_ratios;
  std::vector<const Comparison*> family;
  for (const Comparison& pair : comparisons) {
    log_ratios.push_back(log_ratio_of(quick, pair.a, pair.b, pair.claim_about));
    family.push_back(&pair);
  }
  if (family.empty()) return;
  const auto opinions = opinions_by(log_ratios, family, margin);
  for (std::size_t c = 0; c < comparisons.size(); ++c) {
    comparisons[c].quick = opinions[c];
    comparisons[c].quick->agrees = opinions[c].verdict == comparisons[c].verdict;
  }
}

}  // namespace keenfall::verdicts
