#include "verdicts/look_report.h"

#include "base/plain_number.h"
#include "base/require.h"
#include "verdicts/planned_looks.h"

#include <algorithm>

namespace keenfall::verdicts {

namespace {

std::string listed(const std::vector<int>& numbers) {
  std::string list;
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    if (i > 0) list += i + 1 == numbers.size() ? " and " : ", ";
    list += std::to_string(numbers[i]);
  }
  return list;
}

std::string runs_in_words(const LookReport& look) {
  if (look.fewest_runs == look.most_runs) return std::to_string(look.fewest_runs) + " runs each";
  return std::to_string(look.fewest_runs) + " to " + std::to_string(look.most_runs) + " runs each";
}

}  // namespace

LookReport look_report(std::span<const int> runs, std::span<const int> planned, base::Seed seed) {
  base::require(runs.size() >= 2 && !planned.empty(), "a look at arms that were planned for");
  const auto [fewest, most] = std::ranges::minmax(runs);
  LookReport look{
      .planned = {planned.begin(), planned.end()}, .fewest_runs = fewest, .most_runs = most};
  const auto at = std::ranges::find(planned, fewest);
  if (at != planned.end() && fewest == most)
    look.number = static_cast<int>(at - planned.begin()) + 1;
  const auto next = std::ranges::upper_bound(planned, fewest);
  if (next != planned.end()) look.next_runs = *next;
  const LookStretch stretch =
      stretch_for_looks({.runs_each = look.planned, .arms = static_cast<int>(runs.size())}, seed);
  look.stretch_95 = stretch.at_95;
  look.stretch_90 = stretch.at_90;
  return look;
}

std::string in_words(const LookReport& look) {
  std::string words = "Looked at after " + runs_in_words(look);
  const std::string plan =
      std::to_string(look.planned.size()) + " planned (" + listed(look.planned) + " runs)";
  if (look.number) {
    words += ", look " + std::to_string(*look.number) + " of the " + plan;
  } else {
    words += ", which is none of the " + plan;
  }
  words += ": for looking more than once, intervals are " + base::with_figures(look.stretch_95, 3) +
           " times as wide (in logs).";
  if (!look.number) {
    words += " An answer at a look that was not planned is less sure than it says.";
  }
  if (look.next_runs) {
    words += " What is settled may stop here; the rest goes on to " +
             std::to_string(*look.next_runs) + " runs each.";
  } else if (look.number) {
    words += " This was the last look: what is not settled stays so by this plan.";
  }
  return words;
}

}  // namespace keenfall::verdicts
