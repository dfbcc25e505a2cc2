#include "trust/telling/ranks_table.h"

#include "base/plain_number.h"
#include "trust/measuring/calibration.h"
#include "trust/telling/cell_tables.h"
#include "trust/telling/markdown.h"

#include <boost/math/distributions/chi_squared.hpp>

#include <algorithm>
#include <map>
#include <numeric>

namespace keenfall::trust {

namespace {

constexpr double kFamilyLevel = 0.01;
constexpr std::string_view kRatioRanked = "ratio of half keenness";

// "300 (7)": how many of them were not usable.
std::string trials_in(const RanksResult& result) {
  return base::plain_number(sum_of(result.sums, counted::kTrials)) + " (" +
         base::plain_number(sum_of(result.sums, counted::kUnusable)) + ")";
}

void test_uniformity(RankedParameter& parameter) {
  const double all = std::accumulate(parameter.bins.begin(), parameter.bins.end(), 0.0);
  const double expected = all / static_cast<double>(kRankBins);
  for (const double count : parameter.bins) {
    parameter.chi_squared += (count - expected) * (count - expected) / expected;
  }
  const boost::math::chi_squared reference(static_cast<double>(kRankBins) - 1);
  parameter.p = boost::math::cdf(complement(reference, parameter.chi_squared));
}

// From the smallest p on, each is held to the level over those that are left; after the first that
// passes all do.
void hold_together(std::vector<RankedParameter>& parameters) {
  std::vector<RankedParameter*> by_p;
  for (RankedParameter& parameter : parameters) by_p.push_back(&parameter);
  std::ranges::sort(by_p, {}, &RankedParameter::p);
  for (std::size_t i = 0; i < by_p.size(); ++i) {
    if (by_p[i]->p > kFamilyLevel / static_cast<double>(by_p.size() - i)) break;
    by_p[i]->uniform = false;
  }
}

// Shares of the lowest, the middle and the highest fifth of the ranks: 20, 20 and 20 % if uniform.
std::string fifths(const std::vector<double>& bins) {
  constexpr std::size_t kFifth = kRankBins / 5;
  const double all = std::accumulate(bins.begin(), bins.end(), 0.0);
  std::string words;
  for (const std::size_t first : {std::size_t{0}, 2 * kFifth, 4 * kFifth}) {
    double count = 0;
    for (std::size_t i = first; i < first + kFifth; ++i) count += bins[i];
    if (!words.empty()) words += ", ";
    words += base::with_decimals(100 * count / all, 1);
  }
  return words + " %";
}

}  // namespace

std::vector<RankedParameter> ranked_parameters(const Sums& sums) {
  std::map<std::string, RankedParameter> found;
  for (const auto& [name, count] : sums) {
    const auto mark = name.find('#');
    if (mark == std::string::npos) continue;
    RankedParameter& parameter = found[name.substr(0, mark)];
    parameter.name = name.substr(0, mark);
    parameter.bins.resize(kRankBins);
    parameter.bins.at(std::stoul(name.substr(mark + 1))) = count;
  }
  std::vector<RankedParameter> parameters;
  for (auto& named : found) {
    test_uniformity(named.second);
    parameters.push_back(std::move(named.second));
  }
  hold_together(parameters);
  return parameters;
}

std::string ranks_table(std::span<const RanksResult> results) {
  MarkdownTable table{.heads = {"design",
                                "engine",
                                "trials (not usable)",
                                "parameter",
                                "lowest, middle, highest fifth",
                                "χ² (19)",
                                "p",
                                "uniform"}};
  for (const RanksResult& result : results) {
    for (const RankedParameter& parameter : ranked_parameters(result.sums)) {
      table.rows.push_back({std::string(result.design),
                            std::string(result.engine),
                            trials_in(result),
                            parameter.name,
                            fifths(parameter.bins),
                            base::with_decimals(parameter.chi_squared, 1),
                            base::with_figures(parameter.p, 2),
                            parameter.uniform ? "yes" : "**no**"});
    }
  }
  return in_markdown(table);
}

std::string ranks_summary(std::span<const RanksResult> results) {
  MarkdownTable table{.heads = {"design",
                                "engine",
                                "trials (not usable)",
                                "parameters ranked",
                                "smallest p, of",
                                "p of the ratio of half keenness",
                                "not uniform"}};
  for (const RanksResult& result : results) {
    const std::vector<RankedParameter> parameters = ranked_parameters(result.sums);
    const auto least = std::ranges::min_element(parameters, {}, &RankedParameter::p);
    const auto ratio = std::ranges::find(parameters, kRatioRanked, &RankedParameter::name);
    const auto rejected = std::ranges::count(parameters, false, &RankedParameter::uniform);
    table.rows.push_back({std::string(result.design),
                          std::string(result.engine),
                          trials_in(result),
                          std::to_string(parameters.size()),
                          base::with_figures(least->p, 2) + ", " + least->name,
                          base::with_figures(ratio->p, 2),
                          rejected == 0 ? "none" : std::to_string(rejected) + " **missed**"});
  }
  return in_markdown(table);
}

}  // namespace keenfall::trust
