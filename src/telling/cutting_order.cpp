#include "telling/cutting_order.h"

#include <algorithm>
#include <cstddef>
#include <set>

namespace keenfall::telling {

namespace {

using verdicts::RunResult;

struct Placed {
  std::size_t run = 0;    // index into Judgement::runs
  std::size_t block = 0;  // by first appearance
  int order = 0;
};

std::vector<Placed> runs_with_an_order(const std::vector<RunResult>& runs) {
  std::vector<std::string> blocks;
  std::vector<Placed> placed;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (!runs[i].order) continue;
    auto block = std::ranges::find(blocks, runs[i].block);
    if (block == blocks.end()) block = blocks.insert(blocks.end(), runs[i].block);
    placed.push_back({.run = i,
                      .block = static_cast<std::size_t>(block - blocks.begin()),
                      .order = *runs[i].order});
  }
  return placed;
}

// Rising places: one entry each time another block begins, so a mixed block has several.
std::vector<BlockInOrder> stretches(const std::vector<RunResult>& runs,
                                    const std::vector<Placed>& placed,
                                    const std::vector<std::optional<int>>& places) {
  std::vector<BlockInOrder> found;
  for (const Placed& entry : placed) {
    const std::string& block = runs[entry.run].block;
    const int place = *places[entry.run];
    if (found.empty() || found.back().name != block) {
      found.push_back({.name = block, .first = place, .last = place});
    }
    found.back().last = place;
  }
  return found;
}

}  // namespace

CuttingOrder cutting_order(const verdicts::Judgement& judgement) {
  const std::vector<RunResult>& runs = judgement.runs;
  CuttingOrder order{.places = std::vector<std::optional<int>>(runs.size())};
  std::vector<Placed> placed = runs_with_an_order(runs);
  std::set<int> orders;
  for (const Placed& entry : placed) orders.insert(entry.order);
  order.begins_anew = orders.size() < placed.size();
  std::ranges::stable_sort(placed, [&order](const Placed& left, const Placed& right) {
    if (order.begins_anew && left.block != right.block) return left.block < right.block;
    return left.order < right.order;
  });
  for (std::size_t i = 0; i < placed.size(); ++i) {
    order.places[placed[i].run] = order.begins_anew ? static_cast<int>(i) + 1 : placed[i].order;
  }
  order.blocks = stretches(runs, placed, order.places);
  std::set<std::string> names;
  for (const BlockInOrder& block : order.blocks) names.insert(block.name);
  if (names.size() < 2 || names.size() < order.blocks.size()) order.blocks.clear();
  return order;
}

std::string order_words(const CuttingOrder& order) {
  return order.begins_anew && !order.blocks.empty() ? "order of cutting, block after block"
                                                    : "order of cutting";
}

}  // namespace keenfall::telling
