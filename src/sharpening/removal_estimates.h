// Where the constants of removal may lie, for one steel on one stone.
//
// The first group belongs to the model and to the steel, the second to the stone. Values, ranges
// and sources are in the tables of materials and stones; those of the model are here.
#pragma once

#include "materials/microstructure.h"
#include "materials/uncertain_constant.h"
#include "numerics/random.h"
#include "sharpening/counted_strokes.h"
#include "sharpening/removal.h"
#include "sharpening/stones.h"

#include <vector>

namespace keenfall::sharpening {

enum class BelongsTo { model, steel, stone };

struct RemovalEstimate {
  double RemovalConstants::*member = nullptr;
  BelongsTo belongs_to = BelongsTo::model;
  materials::UncertainConstant constant;
};

// k0 where nothing was counted.
[[nodiscard]] Estimate model_wear();

// Every constant, in one order for all steels and stones.
[[nodiscard]] std::vector<RemovalEstimate> removal_estimates(const materials::Microstructure& steel,
                                                             const Stone& stone);

// The same for a stone on which passes were counted: k0 is not drawn but follows from the count,
// which is uncertain in its stead, as is how alike the strokes of another day are.
[[nodiscard]] std::vector<RemovalEstimate> with_count(std::vector<RemovalEstimate> constants,
                                                      const CountedStrokes& counted);

// All at their typical figures.
[[nodiscard]] RemovalConstants typical_constants(const std::vector<RemovalEstimate>& constants);

// Each drawn evenly, by ratio, from its range, independently: those of model and steel by `shared`,
// those of the stone by `of_stone`. So stones that share a seed are compared under one steel.
[[nodiscard]] RemovalConstants drawn_constants(const std::vector<RemovalEstimate>& constants,
                                               numerics::RandomStream& shared,
                                               numerics::RandomStream& of_stone);

}  // namespace keenfall::sharpening
