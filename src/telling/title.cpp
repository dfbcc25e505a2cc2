#include "telling/title.h"

#include "base/begun_large.h"
#include "telling/simulated.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>
#include <iterator>
#include <set>

namespace keenfall::telling {

namespace {

using verdicts::Judgement;

// The way of cutting, where it is one for all arms (else each medium's heading names it).
std::string common_method_words(const Judgement& judgement) {
  std::set<std::string> methods;
  for (const auto& arm : judgement.arms)
    methods.insert(in_words(arm.arm.method, judgement.told_in));
  return methods.size() == 1 ? *methods.begin() : std::string();
}

}  // namespace

std::string title(const Judgement& judgement) {
  std::ptrdiff_t not_used = std::ssize(judgement.runs_of_arms_not_judged);
  not_used += std::ranges::count_if(judgement.runs,
                                    [](const auto& run) { return !run.not_used_because.empty(); });
  std::ptrdiff_t runs = not_used;
  for (const auto& arm : judgement.arms) runs += arm.runs;
  return base::begun_large(judgement.kind.words.empty() ? judgement.kind.name
                                                        : judgement.kind.words) +
         ", " + judgement.unit + (runs == 1 ? "; 1 run" : fmt::format("; {} runs", runs)) +
         (not_used > 0 ? fmt::format(", {} of them not used", not_used) : "") +
         (is_simulated(judgement) ? "; simulated, no edge was cut" : "");
}

std::string details(const Judgement& judgement) {
  std::string words;
  if (!judgement.thread.empty()) words = "Thread: " + judgement.thread + ". ";
  const std::string method = common_method_words(judgement);
  if (!method.empty()) words += "Cut: " + method + ".";
  while (words.ends_with(' ')) words.pop_back();
  return words;
}

}  // namespace keenfall::telling
