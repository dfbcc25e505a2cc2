#include "verdicts/second_opinion.h"

#include "numerics/summaries.h"
#include "verdicts/lasting.h"
#include "verdicts/planned_looks.h"
#include "verdicts/simultaneous.h"

#include <map>
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

void add_to_family(std::vector<Comparison*>& family,
                   double margin,
                   const blunting::BluntingData& data,
                   const blunting::QuickFit& quick) {
  QuickLasting lasting(data, quick, family.front()->at);
  std::vector<blunting::Draws> log_ratios;
  for (const Comparison* pair : family) {
    blunting::Draws ratio = lasting.of(pair->a, pair->claim_about);
    const blunting::Draws& below = lasting.of(pair->b, pair->claim_about);
    for (std::size_t d = 0; d < ratio.size(); ++d) ratio[d] -= below[d];
    log_ratios.push_back(std::move(ratio));
  }
  const std::vector<RatioBounds> together = simultaneous_bounds(log_ratios);
  for (std::size_t c = 0; c < family.size(); ++c) {
    Comparison& pair = *family[c];
    SecondOpinion opinion{.ratio = numerics::exp_of(numerics::interval_of(log_ratios[c]))};
    const LookStretch stretch =
        pair.look ? LookStretch{.at_95 = pair.look->stretch_95, .at_90 = pair.look->stretch_90}
                  : LookStretch{};
    opinion.simultaneous = stretched(together[c], opinion.ratio.median, stretch);
    opinion.verdict = verdict_on(opinion.simultaneous, margin);
    opinion.agrees = opinion.verdict == pair.verdict;
    pair.quick = opinion;
  }
}

}  // namespace

void add_second_opinions(Judgement& judgement,
                         const blunting::BluntingData& data,
                         const blunting::QuickFit& quick) {
  std::map<std::size_t, std::vector<Comparison*>> families;
  for (Comparison& pair : judgement.comparisons) {
    if (pair.a >= quick.arms.size() || pair.b >= quick.arms.size()) continue;
    families[data.medium_of_arm[pair.a]].push_back(&pair);
  }
  for (auto& family : families)
    add_to_family(family.second, judgement.worth_it_margin, data, quick);
}

}  // namespace keenfall::verdicts
