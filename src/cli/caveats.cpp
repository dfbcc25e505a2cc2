#include "cli/caveats.h"

#include "cli/differing_throughout.h"
#include "cli/struck_and_doubtful.h"
#include "cli/text_layout.h"
#include "telling/arm_groups.h"
#include "telling/listed.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>
#include <map>
#include <utility>
#include <vector>

namespace keenfall::cli {

namespace {

using verdicts::AlsoDiffers;
using verdicts::Comparison;
using verdicts::Judgement;
using verdicts::Matching;

constexpr std::size_t kMostLines = 12;
constexpr Indent kItem = {.first = 2, .rest = 4};

// Lines of a list, cut short with a word on how many more there are.
std::string items_text(const std::vector<std::string>& items, const Look& look) {
  std::string text;
  for (std::size_t i = 0; i < std::min(items.size(), kMostLines); ++i) {
    text += wrapped(shown_as(items[i], look), kItem, look);
  }
  if (items.size() > kMostLines) {
    text += wrapped(
        fmt::format("and {} more; --json holds them all.", items.size() - kMostLines), kItem, look);
  }
  return text;
}

void add_once(std::vector<std::string>& items, const std::string& item) {
  if (std::ranges::count(items, item) == 0) items.push_back(item);
}

std::string things_that_are(const Comparison& comparison, Matching matching) {
  std::vector<std::string> things;
  for (const AlsoDiffers& thing : comparison.also_differs) {
    if (thing.matching == matching) things.push_back(thing.what);
  }
  return telling::listed(things);
}

std::string or_not_recorded(const std::string& words) {
  return words.empty() ? "not recorded" : words;
}

std::string differences(const Comparison& comparison) {
  std::string words;
  for (const AlsoDiffers& thing : comparison.also_differs) {
    if (thing.matching != Matching::differs) continue;
    words += fmt::format("{}{} ({} against {})",
                         words.empty() ? "" : ", ",
                         thing.what,
                         or_not_recorded(thing.a),
                         or_not_recorded(thing.b));
  }
  return words;
}

// "differs in steel (X153CrMoV12 against C75S); matched: finish; not recorded: hardness."
std::string differences_words(const Comparison& comparison) {
  std::string sentence;
  const auto add = [&sentence](const std::string& head, const std::string& things) {
    if (!things.empty()) sentence += (sentence.empty() ? "" : "; ") + head + things;
  };
  add("differs in ", differences(comparison));
  add("not recorded: ", things_that_are(comparison, Matching::not_recorded));
  add("matched: ", things_that_are(comparison, Matching::matched));
  return sentence.empty() ? sentence : sentence + ".";
}

std::string pair_of(const Comparison& comparison, const std::vector<telling::ArmName>& names) {
  return names[comparison.a].name + " against " + names[comparison.b].name;
}

// The arm listed later against the one listed earlier, whichever lasts longer: so a pair that is
// alike in two media is said once.
Comparison as_listed(Comparison comparison) {
  if (comparison.a > comparison.b) return comparison;
  std::swap(comparison.a, comparison.b);
  for (AlsoDiffers& thing : comparison.also_differs) std::swap(thing.a, thing.b);
  return comparison;
}

// Things that are matched, or unrecorded, for every comparison: said once.
std::string common_to_all(const Judgement& judgement, Matching matching) {
  const std::string first = things_that_are(judgement.comparisons.front(), matching);
  const bool same = std::ranges::all_of(judgement.comparisons, [&](const Comparison& comparison) {
    return things_that_are(comparison, matching) == first;
  });
  return same ? first : std::string();
}

std::string run_name(const Judgement& judgement,
                     const verdicts::RunResult& run,
                     const std::vector<telling::ArmName>& names) {
  const auto& medium = judgement.arms[run.arm].arm.medium.name;
  return fmt::format("Run {} of {} on {}", run.name, names[run.arm].name, medium);
}

// What was noticed in one run names it; what was noticed in several is said once, at the end.
std::vector<std::string> remarks_on_runs(const Judgement& judgement,
                                         const std::vector<telling::ArmName>& names) {
  std::map<std::string, int> runs_with;
  for (const verdicts::RunResult& run : judgement.runs) {
    for (const std::string& remark : run.remarks) ++runs_with[remark];
  }
  std::vector<std::string> remarks;
  for (const verdicts::RunResult& run : judgement.runs) {
    std::string own;
    for (const std::string& remark : run.remarks) {
      if (runs_with[remark] == 1) own += (own.empty() ? "" : "; ") + remark;
    }
    if (!own.empty()) remarks.push_back(run_name(judgement, run, names) + ": " + own);
  }
  for (const auto& [remark, runs] : runs_with) {
    if (runs > 1) remarks.push_back(fmt::format("{} runs: {}", runs, remark));
  }
  return remarks;
}

// What is remarked on some pairs of a medium only; the rest stands below the answers.
std::vector<std::string> remarks_on_pairs(const Judgement& judgement,
                                          const std::vector<telling::ArmName>& names) {
  std::vector<std::string> remarks;
  for (const telling::ArmGroup& group : telling::groups_of(judgement)) {
    const std::vector<std::string> said = telling::remarks_on_all(judgement, group);
    for (const std::size_t index : group.comparisons) {
      const Comparison& comparison = judgement.comparisons[index];
      for (const std::string& remark : comparison.remarks) {
        if (std::ranges::count(said, remark) > 0) continue;
        add_once(remarks, pair_of(comparison, names) + ": " + remark);
      }
    }
  }
  return remarks;
}

// "1.4 (1.2 to 1.7)", or "0.7 (0.6 to 0.8)".
std::string ratio_with_interval(const numerics::Interval& ratio) {
  return fmt::format("{} ({} to {})",
                     telling::to_figures(ratio.median, 2),
                     telling::to_figures(ratio.lo95, 2),
                     telling::to_figures(ratio.hi95, 2));
}

// Covariates whose effect is clear of none; the others stand in --json.
std::vector<std::string> covariate_sentences(const Judgement& judgement) {
  std::vector<std::string> sentences;
  for (const verdicts::CovariateEffect& effect : judgement.covariates) {
    if (effect.ratio.lo95 <= 1 && 1 <= effect.ratio.hi95) continue;
    switch (effect.covariate) {
      case verdicts::Covariate::start_reading:
        sentences.push_back(fmt::format(
            "A run that starts 10 % blunter than its edge usually does takes {} times as many {} "
            "to half keenness; allowed for.",
            ratio_with_interval(effect.ratio),
            judgement.counted.many));
        break;
      case verdicts::Covariate::order_of_cutting:
        sentences.push_back(fmt::format(
            "The last run of the trial lasted {} times as long as the first would have; allowed "
            "for.",
            ratio_with_interval(effect.ratio)));
        break;
    }
  }
  return sentences;
}

std::string p_text(double p) {
  constexpr double kSmallestShown = 0.001;
  return p < kSmallestShown ? "below 0.001" : telling::to_figures(p, 1);
}

}  // namespace

std::string what_else_differed(const Judgement& judgement, const Look& look) {
  if (judgement.comparisons.empty()) return {};
  const std::vector<telling::ArmName> names = telling::names_of(judgement);
  const std::string matched = common_to_all(judgement, Matching::matched);
  const std::string unrecorded = common_to_all(judgement, Matching::not_recorded);
  std::vector<std::string> items;
  if (!matched.empty()) items.push_back("Matched in every pair: " + matched + ".");
  if (!unrecorded.empty()) items.push_back("Not recorded for any pair: " + unrecorded + ".");
  const std::vector<DiffersThroughout> throughout = differing_throughout(judgement, names);
  for (const DiffersThroughout& fact : throughout) items.push_back(fact.sentence);
  for (const Comparison& comparison : judgement.comparisons) {
    Comparison own = as_listed(comparison);
    std::erase_if(own.also_differs, [&](const AlsoDiffers& thing) {
      return std::ranges::count(throughout, thing.what, &DiffersThroughout::what) > 0 ||
             (thing.matching == Matching::matched && !matched.empty()) ||
             (thing.matching == Matching::not_recorded && !unrecorded.empty());
    });
    const std::string words = differences_words(own);
    if (!words.empty()) add_once(items, pair_of(own, names) + ": " + words);
  }
  for (std::string& sentence : covariate_sentences(judgement)) items.push_back(std::move(sentence));
  if (items.empty()) return {};
  return "What else could explain a difference\n" + items_text(items, look);
}

std::string second_opinions(const Judgement& judgement, const Look& look) {
  const std::vector<telling::ArmName> names = telling::names_of(judgement);
  std::vector<std::string> others;
  std::size_t asked = 0;
  for (const Comparison& pair : judgement.comparisons) {
    if (!pair.quick) continue;
    ++asked;
    if (pair.quick->agrees) continue;
    others.push_back(fmt::format("{} on {}: {}, by {} ({} to {}). Take it as near a boundary.",
                                 pair_of(pair, names),
                                 judgement.arms[pair.a].arm.medium.name,
                                 verdicts::in_words(pair.quick->verdict),
                                 telling::to_figures(pair.quick->ratio.median, 2),
                                 telling::to_figures(pair.quick->simultaneous.lo95, 2),
                                 telling::to_figures(pair.quick->simultaneous.hi95, 2)));
  }
  if (asked == 0) return {};
  if (others.empty()) {
    return wrapped(asked == 1
                       ? std::string("A second, quicker calculation agrees.")
                       : fmt::format("A second, quicker calculation agrees on all {}.", asked),
                   {},
                   look);
  }
  return wrapped(
             fmt::format("A second, quicker calculation agrees on {} of {}; it says otherwise of",
                         asked - others.size(),
                         asked),
             {},
             look) +
         items_text(others, look);
}

std::string curve_warnings(const Judgement& judgement, const Look& look) {
  if (judgement.curve_check.passed) return {};
  std::string text = wrapped(
      fmt::format("The curve misses the readings in places (smallest posterior predictive p {}), "
                  "so take {} to a level there with care:",
                  p_text(judgement.curve_check.smallest_p),
                  judgement.counted.many),
      {},
      look);
  return text + items_text(judgement.curve_check.where, look);
}

std::string runs_and_remarks(const Judgement& judgement, const Look& look) {
  const std::vector<telling::ArmName> names = telling::names_of(judgement);
  std::vector<std::string> items;
  for (const verdicts::RunResult& run : judgement.runs) {
    if (!run.not_used_because.empty()) {
      items.push_back(run_name(judgement, run, names) + " is not used: " + run.not_used_because);
    }
  }
  const auto name_of_pair = [&names](const Comparison& pair) { return pair_of(pair, names); };
  for (std::string& item : struck_and_doubtful(judgement, name_of_pair)) {
    items.push_back(std::move(item));
  }
  for (const std::string& remark : remarks_on_runs(judgement, names)) items.push_back(remark);
  for (const std::string& remark : remarks_on_pairs(judgement, names)) items.push_back(remark);
  if (items.empty()) return {};
  return "Noticed in the runs\n" + items_text(items, look);
}

std::string how_it_was_read(const Judgement& judgement, const Look& look) {
  if (judgement.taken_as.empty()) return {};
  return "How the table was read\n" + items_text(judgement.taken_as, look);
}

std::string what_cannot_be_said(const Judgement& judgement, const Look& look) {
  if (judgement.cannot_say.empty()) return {};
  return "What these readings cannot say\n" + items_text(judgement.cannot_say, look);
}

std::string fit_line(const Judgement& judgement, const Look& look) {
  const verdicts::FitReport& fit = judgement.fit;
  const std::string parts = telling::listed(fit.model_parts);
  return wrapped(
      fmt::format(
          "Fit: {}. Model {}{}. Seed {}, {} draws, largest R-hat {:.3f}, smallest effective "
          "sample {:.0f}, {:.1f} s of processor time.",
          fit.usable ? "usable" : "not usable",
          fit.model,
          parts.empty() ? "" : ": " + shown_as(parts, look),
          fit.seed,
          fit.draws,
          fit.r_hat_max,
          std::min(fit.ess_bulk_min, fit.ess_tail_min),
          fit.cpu_seconds),
      {},
      look);
}

}  // namespace keenfall::cli
