#include "verdicts/media_compared.h"

#include "numerics/random.h"
#include "numerics/rank_agreement.h"
#include "numerics/summaries.h"
#include "verdicts/crossing.h"
#include "verdicts/simultaneous.h"
#include "verdicts/spread.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace keenfall::verdicts {

namespace {

using blunting::Draws;

constexpr std::size_t kMostInteractions = 60;

using Order = std::vector<std::size_t>;  // blades of the table, the longest-lasting first

// The table's log lasting: [medium][blade].
struct Table {
  std::vector<std::vector<std::size_t>> arms;
  std::vector<std::vector<Draws>> lasting;
  std::vector<std::size_t> left_out;

  [[nodiscard]] std::size_t blades() const { return arms.front().size(); }
  [[nodiscard]] std::size_t draws() const { return lasting.front().front().size(); }
};

Cells cells_of(const ArmsLasting& lasting) {
  struct BladeWithEdge {
    std::string blade;
    trials::EdgePreparation edge;

    bool operator==(const BladeWithEdge&) const = default;
  };
  std::vector<BladeWithEdge> blades;
  Cells cells;
  for (std::size_t a = 0; a < lasting.arms.size(); ++a) {
    const BladeWithEdge own{lasting.arms[a].blade, lasting.arms[a].edge};
    const auto found = std::ranges::find(blades, own);
    const auto place = static_cast<std::size_t>(found - blades.begin());
    if (found == blades.end()) blades.push_back(own);
    cells.levels.push_back({place, lasting.medium_of_arm[a]});
  }
  cells.level_counts = {blades.size(), lasting.media_count};
  cells.unknown.resize(2);
  return cells;
}

std::optional<Table> table_of(const ArmsLasting& lasting) {
  const Cells cells = cells_of(lasting);
  const std::optional<CrossedTable> crossed = largest_crossed_table(cells);
  if (!crossed) return std::nullopt;
  Table table;
  for (const std::size_t medium : crossed->levels[1]) {
    table.arms.push_back({});
    table.lasting.push_back({});
    for (const std::size_t blade : crossed->levels[0]) {
      const auto arm = static_cast<std::size_t>(
          std::ranges::find(cells.levels, std::vector<std::size_t>{blade, medium}) -
          cells.levels.begin());
      table.arms.back().push_back(arm);
      table.lasting.back().push_back(lasting.log_cuts[arm]);
    }
  }
  for (std::size_t a = 0; a < lasting.arms.size(); ++a) {
    if (std::ranges::count(crossed->cells, a) == 0) table.left_out.push_back(a);
  }
  return table;
}

Order order_in(const std::vector<Draws>& lasting, std::size_t draw) {
  Order order(lasting.size());
  std::iota(order.begin(), order.end(), 0);
  std::ranges::sort(order, [&](std::size_t i, std::size_t j) {
    return lasting[i][draw] != lasting[j][draw] ? lasting[i][draw] > lasting[j][draw] : i < j;
  });
  return order;
}

std::vector<Order> orders_of(const std::vector<Draws>& lasting) {
  std::vector<Order> orders;
  for (std::size_t d = 0; d < lasting.front().size(); ++d) orders.push_back(order_in(lasting, d));
  return orders;
}

// The order met most often, and in which share of the draws.
void put_most_probable(MediumOfTable& medium, const std::vector<Order>& orders) {
  std::map<Order, int> met;
  for (const Order& order : orders) ++met[order];
  const auto most =
      std::ranges::max_element(met, {}, [](const auto& entry) { return entry.second; });
  medium.order = most->first;
  medium.order_probability = most->second / static_cast<double>(orders.size());
}

double share_alike(const std::vector<Order>& one,
                   const std::vector<Order>& other,
                   bool only_first) {
  double alike = 0;
  for (std::size_t d = 0; d < one.size(); ++d) {
    if (only_first ? one[d].front() == other[d].front() : one[d] == other[d]) ++alike;
  }
  return alike / static_cast<double>(one.size());
}

Draws mean_of_blades(const std::vector<Draws>& lasting) {
  Draws mean(lasting.front().size());
  for (const Draws& blade : lasting) {
    for (std::size_t d = 0; d < mean.size(); ++d) {
      mean[d] += blade[d] / static_cast<double>(lasting.size());
    }
  }
  return mean;
}

Draws less(Draws from, const Draws& taken) {
  for (std::size_t d = 0; d < from.size(); ++d) from[d] -= taken[d];
  return from;
}

Draws logs_of(Draws draws) {
  for (double& draw : draws) draw = std::log(draw);
  return draws;
}

void put_media_and_pairs(AcrossMedia& across, const Table& table, base::Seed seed) {
  constexpr std::uint64_t kSpreadStream = 7100;  // apart from the sampler's
  numerics::RandomStream random(seed, kSpreadStream);
  std::vector<Draws> spreads;
  std::vector<std::vector<Order>> orders;
  for (std::size_t m = 0; m < table.arms.size(); ++m) {
    spreads.push_back(draws_of_spread(table.lasting[m], table.draws(), random));
    orders.push_back(orders_of(table.lasting[m]));
    across.media.push_back(
        {.arms = table.arms[m], .spread = numerics::interval_of(spreads.back())});
    put_most_probable(across.media.back(), orders.back());
  }
  for (std::size_t m = 0; m < table.arms.size(); ++m) {
    for (std::size_t n = m + 1; n < table.arms.size(); ++n) {
      const Draws lasting =
          less(mean_of_blades(table.lasting[n]), mean_of_blades(table.lasting[m]));
      const Draws spread = less(logs_of(spreads[n]), logs_of(spreads[m]));
      across.pairs.push_back({.first = m,
                              .second = n,
                              .lasting_ratio = numerics::exp_of(numerics::interval_of(lasting)),
                              .spread_ratio = numerics::exp_of(numerics::interval_of(spread)),
                              .probability_same_order = share_alike(orders[m], orders[n], false),
                              .probability_same_longest = share_alike(orders[m], orders[n], true)});
    }
  }
}

std::size_t pairs_among(std::size_t count) { return count * (count - 1) / 2; }

// Puts a and b so that a gains on b in the first medium; its log ratio comes out with it.
Draws log_interaction(MediaInteraction& interaction, const Table& table) {
  const auto gap = [&](std::size_t medium) {
    return less(table.lasting[medium][interaction.a], table.lasting[medium][interaction.b]);
  };
  Draws log_ratio = less(gap(interaction.first), gap(interaction.second));
  if (numerics::median_of(log_ratio) >= 0) return log_ratio;
  std::swap(interaction.a, interaction.b);
  for (double& draw : log_ratio) draw = -draw;
  return log_ratio;
}

void put_interactions(AcrossMedia& across, const Table& table, double margin) {
  const std::size_t count = pairs_among(table.blades()) * pairs_among(table.arms.size());
  if (count > kMostInteractions) {
    across.remarks.push_back(
        "There are " + std::to_string(count) +
        " pairs of blades and media, too many to hold one by one; the spreads and the orders tell "
        "how far the answer depends on the medium.");
    return;
  }
  std::vector<Draws> log_ratios;
  for (std::size_t m = 0; m < table.arms.size(); ++m) {
    for (std::size_t n = m + 1; n < table.arms.size(); ++n) {
      for (std::size_t i = 0; i < table.blades(); ++i) {
        for (std::size_t j = i + 1; j < table.blades(); ++j) {
          MediaInteraction interaction{.a = j, .b = i, .first = m, .second = n};
          log_ratios.push_back(log_interaction(interaction, table));
          across.interactions.push_back(interaction);
        }
      }
    }
  }
  const std::vector<RatioBounds> together = simultaneous_bounds(log_ratios);
  for (std::size_t i = 0; i < log_ratios.size(); ++i) {
    MediaInteraction& interaction = across.interactions[i];
    interaction.ratio = numerics::exp_of(numerics::interval_of(log_ratios[i]));
    interaction.simultaneous = together[i];
    interaction.verdict = verdict_on(together[i], margin);
    interaction.single_verdict = verdict_on(bounds_of(interaction.ratio), margin);
  }
}

OrderAgreement agreement_of(const Table& table, base::Seed seed) {
  std::vector<std::vector<double>> medians;
  for (const std::vector<Draws>& medium : table.lasting) {
    medians.push_back({});
    for (const Draws& blade : medium) medians.back().push_back(numerics::median_of(blade));
  }
  const numerics::RankAgreement found = numerics::rank_agreement(medians, {.seed = seed});
  return {.kendall_w = found.w,
          .p = found.p,
          .exact = found.exact,
          .monte_carlo_error = found.monte_carlo_error};
}

}  // namespace

std::string_view dependence_in_words(Verdict verdict) {
  switch (verdict) {
    case Verdict::longer_and_worth_having:
    case Verdict::shorter_by_enough_to_matter:
      return "depends on the medium, by enough to matter";
    case Verdict::longer:
    case Verdict::shorter:
      return "depends on the medium";
    case Verdict::longer_but_too_little_to_matter:
    case Verdict::shorter_but_too_little_to_matter:
      return "depends on the medium, but too little to matter";
    case Verdict::practically_the_same:
      return "practically the same in both media";
    case Verdict::not_settled:
      break;
  }
  return "not settled";
}

std::optional<AcrossMedia> compare_media(const ArmsLasting& lasting,
                                         double worth_it_margin,
                                         base::Seed seed) {
  if (lasting.media_count < 2) return std::nullopt;
  const std::optional<Table> table = table_of(lasting);
  if (!table) return std::nullopt;
  AcrossMedia across{
      .at = lasting.at, .arms_left_out = table->left_out, .remarks = lasting.remarks};
  put_media_and_pairs(across, *table, seed);
  put_interactions(across, *table, worth_it_margin);
  across.agreement = agreement_of(*table, seed);
  return across;
}

}  // namespace keenfall::verdicts
