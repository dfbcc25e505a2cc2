// The blades of a trial compared across the media they were cut in (across_media.h has the values).
//
// A blade here is a blade with its edge, a medium is a medium with its method; the table is the
// largest in which every such blade was cut in every such medium. All from the joint posterior of
// the blades that were cut with. Interactions are found up to 60; above that the spreads and orders
// say it. Method page: docs/methods/media-compared.md
#pragma once

#include "base/seed.h"
#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "verdicts/judgement.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::verdicts {

struct AtAcross {
  At at;
  std::vector<std::string> remarks;
};

// Where statements across families are made: where all the families are compared, else at the
// bluntest of the common readings, else at half keenness; with a remark in either case.
[[nodiscard]] AtAcross compared_at_across(const blunting::BluntingData& data,
                                          const std::vector<Comparison>& comparisons);

// Nothing where no two blades were cut in the same two media.
[[nodiscard]] std::optional<AcrossMedia> compare_media(const blunting::BluntingData& data,
                                                       const blunting::BluntingFit& fit,
                                                       const AtAcross& where,
                                                       double worth_it_margin,
                                                       base::Seed seed);

}  // namespace keenfall::verdicts
