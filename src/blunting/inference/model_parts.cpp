#include "blunting/inference/model_parts.h"

#include <algorithm>

namespace keenfall::blunting {

namespace {

// Fewer repeats than this cannot tell the spot that was read from the reading itself.
constexpr double kRepeatsForCheckpointError = 8;
// Fewer runs beyond the first of each arm cannot show what a start or the order does.
constexpr std::size_t kSpareRunsForCovariates = 3;

}  // namespace

bool every_run_is_a_specimen(const BluntingData& data) {
  return data.specimen_count == data.runs.size() &&
         std::ranges::all_of(data.runs,
                             [](const RunData& run) { return run.specimen.has_value(); });
}

ModelParts parts_for(const ModelSpec& spec, const BluntingData& data) {
  return {.robust = spec.errors == ReadingErrors::robust,
          .checkpoint_error = spec.checkpoint_error &&
                              data.repeat_degrees_of_freedom >= kRepeatsForCheckpointError &&
                              data.repeat_sum_of_squares > 0,
          .shared_shape = spec.shared_shape,
          .scatter_by_medium = spec.scatter_by_medium && data.media.size() > 1,
          .blocks = spec.blocks && data.block_count > 1,
          .specimens = spec.specimens && data.specimen_count > 1 && !every_run_is_a_specimen(data),
          .start_effect =
              spec.start_effect && data.runs.size() >= data.arms.size() + kSpareRunsForCovariates,
          .order_drift = spec.order_drift && data.has_order &&
                         data.runs.size() >= data.arms.size() + kSpareRunsForCovariates};
}

std::vector<std::string> in_words(const ModelParts& parts) {
  std::vector<std::string> words;
  words.push_back(parts.robust ? "robust readings" : "Gaussian readings");
  if (parts.checkpoint_error) words.push_back("an error of the spot that was read");
  words.push_back(parts.shared_shape ? "shapes shared within a medium" : "a shape for each arm");
  words.push_back(parts.scatter_by_medium ? "a run scatter for each medium" : "one run scatter");
  if (parts.blocks) words.push_back("blocks");
  if (parts.specimens) words.push_back("specimens");
  if (parts.start_effect) words.push_back("an effect of each run's own start");
  if (parts.order_drift) words.push_back("a drift with the order of cutting");
  return words;
}

ParameterLayout layout_of(const ModelParts& parts, const BluntingData& data) {
  ParameterLayout layout{.arms = data.arms.size(),
                         .media = data.media.size(),
                         .scatters = parts.scatter_by_medium ? data.media.size() : 1,
                         .runs = data.runs.size(),
                         .block_count = parts.blocks ? data.block_count : 0,
                         .specimen_count = parts.specimens ? data.specimen_count : 0,
                         .has_shape_level = parts.shared_shape,
                         .has_checkpoint_scatter = parts.checkpoint_error,
                         .has_start_effect = parts.start_effect,
                         .has_order_drift = parts.order_drift};
  const auto take = [&layout](std::size_t count) {
    const std::size_t first = layout.dimension;
    layout.dimension += count;
    return first;
  };
  layout.start_mean = take(layout.arms);
  layout.half_mean = take(layout.arms);
  layout.shape = take(layout.arms);
  layout.shape_mean = take(layout.has_shape_level ? layout.media : 0);
  layout.log_shape_scatter = take(layout.has_shape_level ? 1 : 0);
  layout.log_start_scatter = take(layout.scatters);
  layout.log_run_scatter = take(layout.scatters);
  layout.log_reading_scatter = take(1);
  layout.log_checkpoint_scatter = take(layout.has_checkpoint_scatter ? 1 : 0);
  layout.log_block_scatter = take(layout.block_count > 0 ? 1 : 0);
  layout.block = take(layout.block_count);
  layout.log_specimen_scatter = take(layout.specimen_count > 0 ? 1 : 0);
  layout.specimen = take(layout.specimen_count);
  layout.start_effect = take(layout.has_start_effect ? 1 : 0);
  layout.order_drift = take(layout.has_order_drift ? 1 : 0);
  layout.run_start = take(layout.runs);
  layout.run_half = take(layout.runs);
  return layout;
}

}  // namespace keenfall::blunting
