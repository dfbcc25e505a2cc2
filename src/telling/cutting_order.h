// Where each run stands in the order of cutting, as a picture places it.
//
// Orders that are told throughout the trial are taken as they are. Orders that begin anew (each
// day, each block) follow each other block by block, blocks as the table has them first.
#pragma once

#include "verdicts/judgement.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::telling {

struct BlockInOrder {
  std::string name;
  int first = 1;  // places of its first and last run
  int last = 1;

  bool operator==(const BlockInOrder&) const = default;
};

struct CuttingOrder {
  std::vector<std::optional<int>> places;  // as Judgement::runs; absent: no order was recorded
  std::vector<BlockInOrder> blocks;        // empty where there is one alone, or they were mixed
  bool begins_anew = false;
};

[[nodiscard]] CuttingOrder cutting_order(const verdicts::Judgement& judgement);

// "order of cutting", "order of cutting, block after block".
[[nodiscard]] std::string order_words(const CuttingOrder& order);

}  // namespace keenfall::telling
