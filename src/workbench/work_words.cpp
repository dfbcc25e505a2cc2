#include "workbench/work_words.h"

#include <algorithm>
#include <charconv>
#include <optional>
#include <sstream>
#include <system_error>
#include <vector>

namespace keenfall::workbench {

namespace {

using wear::WorkStep;

constexpr double kLongestPauseHours = 1e6;
constexpr long kMostCutsOfAPart = 1'000'000;
constexpr const char* kAcceptedParts =
    "cuts and a medium, as in “90 new sisal matting”, or “pause 8 h”, “pause 8 h wet”, “pause 8 h "
    "wet at 0.02 um/h”";

std::vector<std::string> words_of(const std::string& text) {
  std::istringstream stream(text);
  std::vector<std::string> words;
  for (std::string word; stream >> word;) words.push_back(word);
  return words;
}

template <class Number>
std::optional<Number> whole_word(const std::string& word) {
  Number number{};
  const char* const end = word.data() + word.size();
  const auto [stop, fault] = std::from_chars(word.data(), end, number);
  if (fault != std::errc() || stop != end) return std::nullopt;
  return number;
}

base::Problem no_such_part(const std::string& part) {
  return {.kind = base::ProblemKind::bad_value,
          .sentence = "“" + part + "” is no part of mixed work",
          .place = {.found = part},
          .accepted = kAcceptedParts};
}

// "pause 8 h wet at 0.02 um/h", from its second word on.
std::optional<wear::WetPause> pause_in(const std::vector<std::string>& words) {
  if (words.size() < 3 || words[2] != "h") return std::nullopt;
  const auto hours = whole_word<double>(words[1]);
  if (!hours || !(*hours >= 0 && *hours <= kLongestPauseHours)) return std::nullopt;
  wear::WetPause pause{.duration_hour = *hours};
  if (words.size() == 3 || (words.size() == 4 && words[3] == "dry")) return pause;
  if (words[3] != "wet") return std::nullopt;
  pause.land_growth_um_per_hour = wear::kWetLandGrowthUmPerHour;
  if (words.size() == 4) return pause;
  const bool says_a_rate =
      words.size() == 7 && words[4] == "at" && (words[6] == "um/h" || words[6] == "µm/h");
  const auto rate = says_a_rate ? whole_word<double>(words[5]) : std::nullopt;
  if (!rate || !(*rate >= 0 && *rate <= 1000)) return std::nullopt;
  pause.land_growth_um_per_hour = *rate;
  return pause;
}

std::string joined_with_blanks(const std::vector<std::string>& words, std::size_t first) {
  std::string text;
  for (std::size_t i = first; i < words.size(); ++i) text += (i == first ? "" : " ") + words[i];
  return text;
}

base::Result<WorkStep> step_in(const std::string& part, const ApexCatalogue& catalogue) {
  const auto words = words_of(part);
  if (!words.empty() && words.front() == "pause") {
    const auto pause = pause_in(words);
    if (!pause) return base::failed(no_such_part(part));
    return WorkStep{.what = *pause};
  }
  const auto cuts = words.size() < 2 ? std::nullopt : whole_word<long>(words.front());
  if (!cuts || *cuts < 1 || *cuts > kMostCutsOfAPart) return base::failed(no_such_part(part));
  auto medium = find_medium(catalogue, joined_with_blanks(words, 1));
  if (!medium) return base::failed(medium.error());
  return WorkStep{.what = std::move(*medium), .cuts = *cuts};
}

}  // namespace

base::Result<wear::WorkPlan> work_in_words(const std::string& words,
                                           const ApexCatalogue& catalogue) {
  wear::WorkPlan plan;
  std::size_t begin = 0;
  bool cuts = false;
  while (begin <= words.size()) {
    const std::size_t comma = std::min(words.find(',', begin), words.size());
    const std::string part = joined_with_blanks(words_of(words.substr(begin, comma - begin)), 0);
    auto step = step_in(part, catalogue);
    if (!step) return base::failed(step.error());
    cuts = cuts || step->cuts > 0;
    plan.steps.push_back(std::move(*step));
    plan.name += (plan.name.empty() ? "" : ", ") + part;
    begin = comma + 1;
  }
  if (!cuts) {
    return base::failed({.kind = base::ProblemKind::bad_value,
                         .sentence = "“" + words + "” has no cut in it",
                         .place = {.found = words},
                         .accepted = kAcceptedParts});
  }
  return plan;
}

}  // namespace keenfall::workbench
