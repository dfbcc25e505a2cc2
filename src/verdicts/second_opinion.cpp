#include "verdicts/second_opinion.h"

#include "blunting/quick/quick_fit.h"
#include "numerics/summaries.h"
#include "verdicts/lasting.h"
#include "verdicts/planned_looks.h"
#include "verdicts/simultaneous.h"

#include <algorithm>
#include <map>
#include <optional>
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

bool shares_the_fit(const trials::ReadingSeries& series, const blunting::BluntingData& data) {
  return series.kind.name == data.kind.name && series.thread == data.thread;
}

// The trial with every strike taken back; none where there is none to take back.
std::optional<trials::Trial> without_strikes(const trials::Trial& trial,
                                             const blunting::BluntingData& data) {
  std::optional<trials::Trial> restored;
  for (std::size_t r = 0; r < trial.runs.size(); ++r) {
    for (std::size_t i = 0; i < trial.runs[r].readings.size(); ++i) {
      const trials::Reading& reading = trial.runs[r].readings[i];
      if (!reading.struck_reason || !shares_the_fit(trial.series[reading.series], data)) continue;
      if (!restored) restored = trial;
      restored->runs[r].readings[i].struck_reason.reset();
    }
  }
  return restored;
}

std::vector<std::size_t> places_of(const std::vector<trials::Arm>& arms,
                                   const std::vector<trials::Arm>& among) {
  std::vector<std::size_t> places;
  for (const trials::Arm& arm : arms) {
    places.push_back(static_cast<std::size_t>(std::ranges::find(among, arm) - among.begin()));
  }
  return places;
}

}  // namespace

void add_second_opinions(Judgement& judgement,
                         const trials::Trial& trial,
                         const blunting::BluntingData& data,
                         const blunting::ModelSpec& model) {
  std::map<std::size_t, std::vector<std::size_t>> families;
  for (std::size_t c = 0; c < judgement.comparisons.size(); ++c) {
    families[data.medium_of_arm[judgement.comparisons[c].a]].push_back(c);
  }
  if (families.empty()) return;
  const Asked as_judged{.data = data,
                        .fit = blunting::quick_fit(data, model),
                        .arm_of = places_of(data.arms, data.arms)};
  const std::optional<trials::Trial> restored = without_strikes(trial, data);
  std::optional<blunting::BluntingData> restored_data;
  if (restored) {
    auto prepared =
        blunting::prepare(*restored, {.kind = data.kind.name, .thread = data.thread}, model.errors);
    if (prepared) restored_data = std::move(*prepared);
  }
  std::optional<Asked> with_struck;
  if (restored_data) {
    with_struck.emplace(Asked{.data = *restored_data,
                              .fit = blunting::quick_fit(*restored_data, model),
                              .arm_of = places_of(data.arms, restored_data->arms)});
  }
  for (const auto& [medium, places] : families) {
    std::vector<const Comparison*> family;
    for (const std::size_t c : places) family.push_back(&judgement.comparisons[c]);
    const auto quick = opinions_on(family, judgement.worth_it_margin, as_judged);
    std::vector<SecondOpinion> struck;
    if (with_struck) struck = opinions_on(family, judgement.worth_it_margin, *with_struck);
    for (std::size_t i = 0; i < places.size(); ++i) {
      Comparison& pair = judgement.comparisons[places[i]];
      pair.quick = quick[i];
      pair.quick->agrees = quick[i].verdict == pair.verdict;
      if (!with_struck) continue;
      pair.with_struck = struck[i];
      pair.with_struck->agrees = struck[i].verdict == quick[i].verdict;
    }
  }
}

}  // namespace keenfall::verdicts
