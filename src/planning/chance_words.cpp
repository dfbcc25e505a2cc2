#include "planning/chance_words.h"

#include "base/plain_number.h"

#include <algorithm>
#include <cmath>

namespace keenfall::planning {

namespace {

// Two decimals at most: "1.22", "2.5".
std::string in_times(double ratio) {
  const double said = std::round(100 * ratio) / 100;
  if (said == 2) return "twice as long";
  if (said == 3) return "three times as long";
  return base::plain_number(said) + " times as long";
}

// Whole trials of a hundred; nearly none and nearly all are not said to be none and all.
std::string of_a_hundred(const Chance& chance) {
  const double of_100 = std::round(100 * chance.probability);
  if (of_100 >= 100) return "nearly all";
  if (of_100 <= 0) return "hardly any";
  return base::plain_number(of_100);
}

}  // namespace

std::string if_true(double ratio) {
  const double times = std::max(ratio, 1 / ratio);
  if (std::round(100 * times) == 100) return "if both last equally long";
  return "if one lasts " + in_times(times);
}

std::string in_words(const PlanChances& chances, const std::string& in_what) {
  if (chances.at.empty()) return {};
  std::string words = (in_what.empty() ? "Of" : in_what + ", of") + " 100 such trials ";
  for (std::size_t i = 0; i < chances.at.size(); ++i) {
    const ChancesAt& at = chances.at[i];
    const std::string share = of_a_hundred(at.settled);
    const bool is_number = share.find(' ') == std::string::npos;
    if (i == 0) {
      words += (is_number ? "about " : "") + share + " would settle it ";
    } else {
      words += i + 1 == chances.at.size() ? " and " : ", ";
      words += share + " ";
    }
    words += if_true(at.true_ratio);
  }
  return words + ".";
}

std::string in_words(const RunsNeeded& needed) {
  if (!needed.runs_each) {
    return "More than " + std::to_string(kMostRunsNeeded) +
           " runs each would be needed to settle it in four of five such trials " +
           if_true(needed.true_ratio) + ".";
  }
  return std::to_string(*needed.runs_each) +
         " runs each would settle it in four of five such trials " + if_true(needed.true_ratio) +
         ".";
}

}  // namespace keenfall::planning
