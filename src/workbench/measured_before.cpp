#include "workbench/measured_before.h"

#include "notebook/kept_trials.h"
#include "notebook/plans.h"
#include "planning/arm_words.h"
#include "telling/simulated.h"
#include "workbench/notebook_opening.h"

#include <algorithm>
#include <memory>
#include <utility>
#include <vector>

namespace keenfall::workbench {

namespace {

using notebook::KeptTrial;

constexpr std::size_t kFewestRuns = 2;  // that show a scatter

bool measures_own_repeatability(const notebook::Notebook& opened, const KeptTrial& trial) {
  const auto kept = notebook::kept_plan(opened, trial.name);
  return kept && kept->plan.arms.size() == 1;
}

struct LookedAt {
  std::vector<KeptTrial> trials;  // in the order they are told
  std::size_t too_large = 0;      // left out
  std::size_t too_many = 0;       // left out, for those before them
};

LookedAt looked_at_in(const notebook::Notebook& opened) {
  LookedAt looked_at;
  std::vector<KeptTrial> all = notebook::kept_trials(opened);
  std::erase_if(all,
                [](const KeptTrial& one) { return one.readings == 0 || one.runs < kFewestRuns; });
  looked_at.too_large =
      std::erase_if(all, [](const KeptTrial& one) { return one.runs > kMostRunsJudgedAtOnce; });
  std::ranges::reverse(all);
  std::stable_partition(all.begin(), all.end(), [&opened](const KeptTrial& one) {
    return measures_own_repeatability(opened, one);
  });
  std::size_t runs = 0;
  for (KeptTrial& one : all) {
    runs += one.runs;
    if (looked_at.trials.size() == kMostTrialsMeasured || runs > kMostRunsMeasured) break;
    looked_at.trials.push_back(std::move(one));
  }
  looked_at.too_many = all.size() - looked_at.trials.size();
  return looked_at;
}

std::string so_many(std::size_t count, const std::string& trial) {
  return std::to_string(count) + " " + trial + (count == 1 ? "" : "s");
}

std::string left_out_words(const LookedAt& looked_at) {
  std::vector<std::string> parts;
  if (looked_at.too_large > 0) {
    parts.push_back(so_many(looked_at.too_large, "trial") + " of more than " +
                    std::to_string(kMostRunsJudgedAtOnce) + " runs");
  }
  if (looked_at.too_many > 0) parts.push_back(so_many(looked_at.too_many, "other trial"));
  if (parts.empty()) return {};
  const std::string both = parts.size() == 2 ? " and " + parts.back() : "";
  const bool is_one = looked_at.too_large + looked_at.too_many == 1;
  return parts.front() + both + (is_one ? " was" : " were") + " not looked at.";
}

std::vector<ScatterOfArm> scatters_in(const wire::Judged& judged) {
  std::vector<ScatterOfArm> scatters;
  for (const telling::ReportedJudgement& reported : judged.report.judgements) {
    const verdicts::Judgement& judgement = reported.judgement;
    if (telling::is_simulated(judgement)) continue;
    for (std::size_t arm = 0; arm < judgement.arms.size(); ++arm) {
      const auto scatter = planning::own_scatter(judgement, arm);
      if (!scatter) continue;
      scatters.push_back(
          {.arm = judgement.arms[arm].arm, .kind = judgement.kind.name, .scatter = *scatter});
    }
  }
  return scatters;
}

// A trial that cannot be judged tells no scatter.
std::vector<ScatterOfArm> scatters_of(AtHand& at_hand,
                                      const MeasuredAsked& asked,
                                      const TrialAtHand& seen) {
  if (auto known = at_hand.scatters.find(seen.trial)) return *std::move(known);
  const auto judged =
      judge_quickly(at_hand,
                    {.notebook = asked.notebook, .uid = seen.uid, .question = {}, .by = asked.by},
                    base::unwatched());
  std::vector<ScatterOfArm> scatters = judged ? scatters_in(*judged) : std::vector<ScatterOfArm>();
  at_hand.scatters.keep(seen.trial, scatters);
  return scatters;
}

// Arms of one medium and method are told apart.
std::vector<std::string> arm_words_of(const std::vector<ScatterOfArm>& scatters,
                                      const materials::ToldIn& told) {
  std::vector<trials::PlannedArm> arms;
  for (const ScatterOfArm& of : scatters) {
    arms.push_back({.blade = of.arm.blade, .edge = of.arm.edge});
  }
  return planning::words_of_arms(arms, told);
}

}  // namespace

base::Result<wire::Measured> measured_before(AtHand& at_hand, const MeasuredAsked& asked) {
  return naming_the_file(asked.notebook, [&]() -> base::Result<wire::Measured> {
    const auto opened = opened_to_read(asked.notebook);
    if (!opened) return base::failed(opened.error());
    const notebook::OneMoment moment(*opened);
    const LookedAt looked_at = looked_at_in(*opened);
    wire::Measured measured{.left_out = left_out_words(looked_at), .told_in = asked.told_in};
    for (const KeptTrial& one : looked_at.trials) {
      const auto seen = at_hand.trials.trial_of(*opened, one.uid);
      if (!seen) return base::failed(seen.error());
      std::vector<ScatterOfArm> scatters = scatters_of(at_hand, asked, **seen);
      const std::vector<std::string> words = arm_words_of(scatters, asked.told_in);
      for (std::size_t arm = 0; arm < scatters.size(); ++arm) {
        measured.arms.push_back({.trial_uid = one.uid,
                                 .trial = one.name,
                                 .arm = std::move(scatters[arm].arm),
                                 .arm_words = words[arm],
                                 .kind = std::move(scatters[arm].kind),
                                 .counted = (*seen)->trial->counted,
                                 .scatter = scatters[arm].scatter});
      }
    }
    return measured;
  });
}

}  // namespace keenfall::workbench
