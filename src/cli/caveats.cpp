#include "cli/caveats.h"

#include "cli/arm_groups.h"
#include "cli/rounded.h"
#include "cli/text_layout.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>
#include <map>
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
  return listed(things);
}

std::string or_not_recorded(const std::string& words) {
  return words.empty() ? "not recorded" : words;
}

std::string differences(const Comparison& comparison, const std::vector<ArmName>& names) {
  std::string words;
  for (const AlsoDiffers& thing : comparison.also_differs) {
    if (thing.matching != Matching::differs) continue;
    if (!words.empty()) words += "; ";
    words += fmt::format("{} ({}: {}, {}: {})",
                         thing.what,
                         names[comparison.a].name,
                         or_not_recorded(thing.a),
                         names[comparison.b].name,
                         or_not_recorded(thing.b));
  }
  return words;
}

// "Differs: steel (C: ..., A: ...). Matched: bevel angle and finish. Not recorded: hardness."
std::string differences_sentence(const Comparison& comparison, const std::vector<ArmName>& names) {
  std::string sentence;
  const auto add = [&sentence](const std::string& head, const std::string& things) {
    if (things.empty()) return;
    if (!sentence.empty()) sentence += " ";
    sentence += head + things + ".";
  };
  add("Differs: ", differences(comparison, names));
  add("Not recorded: ", things_that_are(comparison, Matching::not_recorded));
  add("Matched: ", things_that_are(comparison, Matching::matched));
  return sentence;
}

std::string pair_of(const Comparison& comparison, const std::vector<ArmName>& names) {
  return names[comparison.a].name + " against " + names[comparison.b].name;
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
                     const std::vector<ArmName>& names) {
  const auto& medium = judgement.arms[run.arm].arm.medium.name;
  return fmt::format("Run {} of {} on {}", run.name, names[run.arm].name, medium);
}

// What was noticed in one run names it; what was noticed in several is said once, at the end.
std::vector<std::string> remarks_on_runs(const Judgement& judgement,
                                         const std::vector<ArmName>& names) {
  std::map<std::string, int> runs_with;
  for (const verdicts::RunResult& run : judgement.runs) {
    for (const std::string& remark : run.remarks) ++runs_with[remark];
  }
  std::vector<std::string> remarks;
  for (const verdicts::RunResult& run : judgement.runs) {
    for (const std::string& remark : run.remarks) {
      if (runs_with[remark] == 1)
        remarks.push_back(run_name(judgement, run, names) + ": " + remark);
    }
  }
  for (const auto& [remark, runs] : runs_with) {
    if (runs > 1) remarks.push_back(fmt::format("{} runs: {}", runs, remark));
  }
  return remarks;
}

}  // namespace

std::string what_else_differed(const Judgement& judgement, const Look& look) {
  if (judgement.comparisons.empty()) return {};
  const std::vector<ArmName> names = names_of(judgement);
  const std::string matched = common_to_all(judgement, Matching::matched);
  const std::string unrecorded = common_to_all(judgement, Matching::not_recorded);
  std::vector<std::string> items;
  if (!matched.empty()) items.push_back("Matched in every pair: " + matched + ".");
  if (!unrecorded.empty()) items.push_back("Not recorded for any pair: " + unrecorded + ".");
  for (const Comparison& comparison : judgement.comparisons) {
    Comparison own = comparison;
    std::erase_if(own.also_differs, [&](const AlsoDiffers& thing) {
      return (thing.matching == Matching::matched && !matched.empty()) ||
             (thing.matching == Matching::not_recorded && !unrecorded.empty());
    });
    const std::string sentence = differences_sentence(own, names);
    if (!sentence.empty()) add_once(items, pair_of(comparison, names) + ": " + sentence);
  }
  if (items.empty()) return {};
  return "What else could explain a difference\n" + items_text(items, look);
}

std::string curve_warnings(const Judgement& judgement, const Look& look) {
  if (judgement.curve_check.passed) return {};
  std::string text = wrapped(
      "The curve misses the readings in places, so take cuts to a level there "
      "with care:",
      {},
      look);
  return text + items_text(judgement.curve_check.where, look);
}

std::string runs_and_remarks(const Judgement& judgement, const Look& look) {
  const std::vector<ArmName> names = names_of(judgement);
  std::vector<std::string> items;
  int struck = 0;
  for (const verdicts::RunResult& run : judgement.runs) {
    struck += run.readings_struck;
    if (!run.not_used_because.empty()) {
      items.push_back(run_name(judgement, run, names) + " is not used: " + run.not_used_because);
    }
  }
  if (struck > 0) {
    items.push_back(struck == 1
                        ? std::string("1 reading is struck out: kept, but not used.")
                        : fmt::format("{} readings are struck out: kept, but not used.", struck));
  }
  for (const std::string& remark : remarks_on_runs(judgement, names)) items.push_back(remark);
  for (const Comparison& comparison : judgement.comparisons) {
    for (const std::string& remark : comparison.remarks) {
      add_once(items, pair_of(comparison, names) + ": " + remark);
    }
  }
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
  const std::string parts = listed(fit.model_parts);
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
