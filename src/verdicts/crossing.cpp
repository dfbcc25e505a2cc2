#include "verdicts/crossing.h"

#include <algorithm>
#include <cmath>

namespace keenfall::verdicts {

namespace {

using Kept = std::vector<std::vector<bool>>;  // [factor][level]

bool is_inside(const std::vector<std::size_t>& cell, const Kept& kept) {
  for (std::size_t f = 0; f < kept.size(); ++f) {
    if (!kept[f][cell[f]]) return false;
  }
  return true;
}

std::size_t kept_of(const std::vector<bool>& levels) {
  return static_cast<std::size_t>(std::ranges::count(levels, true));
}

double combinations_of(const Kept& kept) {
  double product = 1;
  for (const auto& levels : kept) product *= static_cast<double>(kept_of(levels));
  return product;
}

bool mixes_unknown(const Cells& cells, const Kept& kept) {
  for (std::size_t f = 0; f < kept.size(); ++f) {
    if (cells.unknown[f] && kept[f][*cells.unknown[f]] && kept_of(kept[f]) > 1) return true;
  }
  return false;
}

double cells_inside(const Cells& cells, const Kept& kept) {
  return static_cast<double>(
      std::ranges::count_if(cells.levels, [&](const auto& cell) { return is_inside(cell, kept); }));
}

std::size_t factors_varied(const Kept& kept) {
  return static_cast<std::size_t>(
      std::ranges::count_if(kept, [](const auto& levels) { return kept_of(levels) > 1; }));
}

// The larger table first; of two as large, the one that varies more factors.
double worth_of(const Cells& cells, const Kept& kept) {
  constexpr std::size_t kFewestFactors = 2;
  const std::size_t varied = factors_varied(kept);
  if (varied < kFewestFactors || mixes_unknown(cells, kept)) return 0;
  const double inside = cells_inside(cells, kept);
  if (inside != combinations_of(kept)) return 0;
  return inside + 0.01 * static_cast<double>(varied);
}

std::optional<Kept> best_of_all(const Cells& cells) {
  std::vector<std::size_t> masks(cells.level_counts.size(), 1);
  std::optional<Kept> best;
  double best_worth = 0;
  while (true) {
    Kept kept;
    for (std::size_t f = 0; f < masks.size(); ++f) {
      kept.push_back(std::vector<bool>(cells.level_counts[f]));
      for (std::size_t l = 0; l < cells.level_counts[f]; ++l)
        kept[f][l] = ((masks[f] >> l) & 1U) != 0;
    }
    const double worth = worth_of(cells, kept);
    if (worth > best_worth) {
      best_worth = worth;
      best = kept;
    }
    std::size_t f = 0;
    while (f < masks.size() && ++masks[f] == std::size_t{1} << cells.level_counts[f])
      masks[f++] = 1;
    if (f == masks.size()) return best;
  }
}

struct Level {
  std::size_t factor = 0;
  std::size_t level = 0;
};

// The level with the smallest share of its combinations filled; a level not recorded goes first.
Level emptiest(const Cells& cells, const Kept& kept) {
  Level worst;
  double worst_share = HUGE_VAL;
  for (std::size_t f = 0; f < kept.size(); ++f) {
    const double possible = combinations_of(kept) / static_cast<double>(kept_of(kept[f]));
    if (kept_of(kept[f]) < 2) continue;
    for (std::size_t l = 0; l < kept[f].size(); ++l) {
      if (!kept[f][l]) continue;
      const auto filled = std::ranges::count_if(
          cells.levels, [&](const auto& cell) { return cell[f] == l && is_inside(cell, kept); });
      double share = static_cast<double>(filled) / possible;
      if (cells.unknown[f] == l) share -= 1;
      if (share < worst_share) {
        worst_share = share;
        worst = {.factor = f, .level = l};
      }
    }
  }
  return worst;
}

std::optional<Kept> best_by_dropping(const Cells& cells) {
  Kept kept;
  for (const std::size_t count : cells.level_counts) kept.push_back(std::vector<bool>(count, true));
  while (worth_of(cells, kept) == 0) {
    if (factors_varied(kept) < 2) return std::nullopt;
    const Level drop = emptiest(cells, kept);
    kept[drop.factor][drop.level] = false;
  }
  return kept;
}

}  // namespace

std::optional<CrossedTable> largest_crossed_table(const Cells& cells) {
  double choices = 1;
  for (const std::size_t count : cells.level_counts) {
    choices *= std::exp2(static_cast<double>(count)) - 1;
  }
  constexpr double kMostChoices = 70000;
  const std::optional<Kept> kept =
      choices <= kMostChoices ? best_of_all(cells) : best_by_dropping(cells);
  if (!kept) return std::nullopt;
  CrossedTable table;
  for (const auto& levels : *kept) {
    table.levels.push_back({});
    for (std::size_t l = 0; l < levels.size(); ++l) {
      if (levels[l]) table.levels.back().push_back(l);
    }
  }
  for (std::size_t c = 0; c < cells.levels.size(); ++c) {
    if (is_inside(cells.levels[c], *kept)) table.cells.push_back(c);
  }
  return table;
}

}  // namespace keenfall::verdicts
