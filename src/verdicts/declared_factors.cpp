#include "verdicts/declared_factors.h"

#include "base/plain_number.h"
#include "trials/arm_order.h"

#include <algorithm>
#include <map>
#include <optional>

namespace keenfall::verdicts {

namespace {

const char* const kNotRecorded = "not recorded";

// One factor over all arms: what each arm has, in words, and where that stands among the levels.
struct Column {
  std::string what;
  std::vector<std::string> words;  // of each arm; empty: not recorded
  std::vector<double> numbers;     // of each arm, for factors that are measured
};

struct Levelled {
  DeclaredFactor factor;
  std::vector<std::size_t> level_of_arm;
  std::optional<std::size_t> unknown;
};

Levelled levelled(const Column& column) {
  struct MetLevel {
    std::string words;
    double number = 0;
  };
  std::vector<MetLevel> levels;
  for (std::size_t a = 0; a < column.words.size(); ++a) {
    const double number = column.numbers.empty() ? 0 : column.numbers[a];
    if (std::ranges::count(levels, column.words[a], &MetLevel::words) == 0) {
      levels.push_back({column.words[a], number});
    }
  }
  const bool in_order_met = column.what == "medium" || column.what == "blade";
  if (!in_order_met) {
    std::ranges::stable_sort(levels, [](const MetLevel& one, const MetLevel& other) {
      if (one.number != other.number) return one.number < other.number;
      return trials::naturally_before(one.words, other.words);
    });
  }
  Levelled found{.factor = {.what = column.what}};
  for (std::size_t l = 0; l < levels.size(); ++l) {
    if (levels[l].words.empty()) found.unknown = l;
    found.factor.levels.push_back(levels[l].words.empty() ? kNotRecorded : levels[l].words);
  }
  for (const std::string& words : column.words) {
    found.level_of_arm.push_back(static_cast<std::size_t>(
        std::ranges::find(levels, words, &MetLevel::words) - levels.begin()));
  }
  return found;
}

void add_angle(Column& column, const std::optional<trials::PerSideAngle>& angle) {
  column.words.push_back(angle ? base::plain_number(angle->deg) + "° per side" : "");
  column.numbers.push_back(angle ? angle->deg : -1);
}

std::string medium_words(const trials::Medium& medium) {
  return medium.condition.empty() ? medium.name : medium.name + ", " + medium.condition;
}

// The earlier a factor stands, the more it explains: later ones may only change along with it.
std::vector<Column> columns_of(const std::vector<trials::Arm>& arms,
                               const materials::ToldIn& told) {
  Column blade{.what = "blade"};
  Column medium{.what = "medium"};
  Column bevel{.what = "bevel angle"};
  Column apex{.what = "apex angle"};
  Column finish{.what = "finish"};
  Column thickness{.what = "thickness behind the edge"};
  Column method{.what = "cut method"};
  for (const trials::Arm& arm : arms) {
    blade.words.push_back(arm.blade);
    medium.words.push_back(medium_words(arm.medium));
    add_angle(bevel, arm.edge.bevel_angle);
    add_angle(apex, arm.edge.apex_angle);
    finish.words.push_back(arm.edge.finish);
    const auto& behind = arm.edge.thickness_behind_edge_mm;
    thickness.words.push_back(behind ? length_words(*behind, told) : "");
    thickness.numbers.push_back(behind.value_or(-1));
    method.words.push_back(in_words(arm.method, told));
  }
  return {blade, medium, bevel, apex, finish, thickness, method};
}

// Does each level of `one` come with a single level of `other`?
bool decides(const Levelled& one, const Levelled& other) {
  std::map<std::size_t, std::size_t> partner;
  for (std::size_t a = 0; a < one.level_of_arm.size(); ++a) {
    const auto entry = partner.try_emplace(one.level_of_arm[a], other.level_of_arm[a]).first;
    if (entry->second != other.level_of_arm[a]) return false;
  }
  return true;
}

}  // namespace

DeclaredFactors declared_factors(const std::vector<trials::Arm>& arms,
                                 const materials::ToldIn& told) {
  std::vector<Levelled> kept;
  for (const Column& column : columns_of(arms, told)) {
    Levelled factor = levelled(column);
    if (factor.factor.levels.size() < 2) continue;
    const auto leader = std::ranges::find_if(
        kept, [&](const Levelled& earlier) { return decides(earlier, factor); });
    if (leader != kept.end()) {
      leader->factor.goes_with.push_back(factor.factor.what);
    } else {
      kept.push_back(std::move(factor));
    }
  }
  DeclaredFactors declared;
  declared.cells.levels.resize(arms.size());
  for (const Levelled& factor : kept) {
    declared.factors.push_back(factor.factor);
    declared.cells.level_counts.push_back(factor.factor.levels.size());
    declared.cells.unknown.push_back(factor.unknown);
    for (std::size_t a = 0; a < arms.size(); ++a) {
      declared.cells.levels[a].push_back(factor.level_of_arm[a]);
    }
  }
  return declared;
}

}  // namespace keenfall::verdicts
