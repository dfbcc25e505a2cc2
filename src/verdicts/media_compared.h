// The blades of a trial compared across the media they were cut in (across_media.h has the values).
//
// A blade here is a blade with its edge, a medium is a medium with its method; the table is the
// largest in which every such blade was cut in every such medium. All from the joint posterior of
// the blades that were cut with. Interactions are found up to 60; above that the spreads and orders
// say it. Method page: docs/methods/media-compared.md
#pragma once

#include "base/seed.h"
#include "verdicts/arms_lasting.h"

#include <optional>

namespace keenfall::verdicts {

// Nothing where no two blades were cut in the same two media.
[[nodiscard]] std::optional<AcrossMedia> compare_media(const ArmsLasting& lasting,
                                                       double worth_it_margin,
                                                       base::Seed seed);

}  // namespace keenfall::verdicts
