#include "telling/differing_throughout.h"

#include "base/begun_large.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <utility>

namespace keenfall::telling {

namespace {

using verdicts::AlsoDiffers;
using verdicts::Comparison;
using verdicts::Judgement;

using ValueByName = std::map<std::string, std::string>;

// Absent unless `what` is recorded as differing in every pair, with one value for each name.
std::optional<ValueByName> values_of(const Judgement& judgement,
                                     const std::vector<ArmName>& names,
                                     const std::string& what) {
  ValueByName values;
  const auto agrees = [&](std::size_t arm, const std::string& value) {
    return values.try_emplace(names[arm].name, value).first->second == value;
  };
  for (const Comparison& comparison : judgement.comparisons) {
    const auto thing = std::ranges::find(comparison.also_differs, what, &AlsoDiffers::what);
    if (thing == comparison.also_differs.end()) return std::nullopt;
    if (thing->matching != verdicts::Matching::differs) return std::nullopt;
    if (!agrees(comparison.a, thing->a) || !agrees(comparison.b, thing->b)) return std::nullopt;
  }
  return values;
}

// " HRC" of "58 HRC"; empty for a list of values, whose end is not the unit of them all.
std::string unit_of(const std::string& value) {
  const std::size_t space = value.find(' ');
  if (space == std::string::npos || value.find(',') != std::string::npos) return {};
  return value.substr(space);
}

// "A 58, B 58.5, C 61 HRC": in the order of the arms, the unit once where all share it.
std::string values_in_words(const Judgement& judgement,
                            const std::vector<ArmName>& names,
                            const ValueByName& values) {
  const std::string unit = unit_of(values.begin()->second);
  const bool shared = std::ranges::all_of(
      values, [&unit](const auto& entry) { return unit_of(entry.second) == unit; });
  const std::string said_once = shared ? unit : "";
  std::vector<std::string> told;
  std::string words;
  for (std::size_t arm = 0; arm < judgement.arms.size(); ++arm) {
    const std::string& name = names[arm].name;
    const auto value = values.find(name);
    if (value == values.end() || std::ranges::count(told, name) > 0) continue;
    told.push_back(name);
    const std::string bare = value->second.substr(0, value->second.size() - said_once.size());
    words += (words.empty() ? "" : ", ") + name + " " + bare;
  }
  return words + said_once;
}

}  // namespace

std::vector<DiffersThroughout> differing_throughout(const Judgement& judgement,
                                                    const std::vector<ArmName>& names) {
  std::vector<DiffersThroughout> facts;
  if (judgement.comparisons.size() < 2) return facts;
  for (const AlsoDiffers& thing : judgement.comparisons.front().also_differs) {
    const auto values = values_of(judgement, names, thing.what);
    if (!values) continue;
    facts.push_back(
        {.what = thing.what,
         .sentence = base::begun_large(fmt::format("{} differs in every pair ({}).",
                                                   thing.what,
                                                   values_in_words(judgement, names, *values)))});
  }
  return facts;
}

}  // namespace keenfall::telling
