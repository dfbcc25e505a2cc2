#include "planning/suggested_checkpoints.h"

#include "base/plain_number.h"
#include "planning/assumptions.h"
#include "planning/checkpoints.h"

#include <utility>

namespace keenfall::planning {

base::Result<SuggestedCheckpoints> suggested_checkpoints(const CheckpointsAsked& asked) {
  const std::string growing(why_growing_steps());
  if (!asked.half_keenness_cuts) {
    return SuggestedCheckpoints{
        .cuts = asked.gritty ? gritty_checkpoints() : doubling_checkpoints(),
        .why = growing + (asked.gritty
                              ? " These are dense, as is common for stock that carries grit."
                              : " These double and add one, as is common where nothing is known "
                                "beforehand.")};
  }
  CheckpointNeeds needs{.half_keenness_cuts = *asked.half_keenness_cuts,
                        .whole_cuts = asked.whole_cuts};
  if (asked.stop_level) needs.stop_level = *asked.stop_level;
  if (asked.gritty) needs.run_log_sd = usual_run_scatter(Care::gritty_stock).usual;
  auto cuts = fewest_checkpoints(needs);
  if (!cuts) return base::failed(std::move(cuts.error()));
  return SuggestedCheckpoints{
      .cuts = *std::move(cuts),
      .why = growing +
             " These are the fewest with two either side of half keenness wherever it lies "
             "between half and twice the " +
             base::with_figures(needs.half_keenness_cuts, 2) + " expected."};
}

}  // namespace keenfall::planning
