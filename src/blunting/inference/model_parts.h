// What of a ModelSpec the data at hand can carry, and where each parameter stands in the sampler's
// vector.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/model_spec.h"

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::blunting {

struct ModelParts {
  bool robust = false;
  bool checkpoint_error = false;
  bool shared_shape = false;
  bool scatter_by_medium = false;
  bool blocks = false;
  bool specimens = false;
  bool start_effect = false;
  bool order_drift = false;

  bool operator==(const ModelParts&) const = default;
};

// Each piece was cut with once: what pieces and runs scatter cannot be told apart, and need not be,
// since every run stands for a piece of its own.
[[nodiscard]] bool every_run_is_a_specimen(const BluntingData& data);

// A part is used where the spec asks for it and the data can tell it from the rest.
[[nodiscard]] ModelParts parts_for(const ModelSpec& spec, const BluntingData& data);

// Plain words, one per part: "robust readings", "a scatter of its own in each medium".
[[nodiscard]] std::vector<std::string> in_words(const ModelParts& parts);

// First index of each group of parameters; groups that a model lacks are empty.
struct ParameterLayout {
  std::size_t arms = 0;
  std::size_t media = 0;
  std::size_t scatters = 0;  // of runs and of starts: one, or one per medium
  std::size_t runs = 0;
  std::size_t block_count = 0;
  std::size_t specimen_count = 0;
  bool has_shape_level = false;
  bool has_checkpoint_scatter = false;
  bool has_start_effect = false;
  bool has_order_drift = false;

  std::size_t start_mean = 0;              // arms: beta
  std::size_t half_mean = 0;               // arms: mu
  std::size_t shape = 0;                   // arms
  std::size_t shape_mean = 0;              // media, if has_shape_level
  std::size_t log_shape_scatter = 0;       // 1, if has_shape_level
  std::size_t log_start_scatter = 0;       // scatters
  std::size_t log_run_scatter = 0;         // scatters
  std::size_t log_reading_scatter = 0;     // 1
  std::size_t log_checkpoint_scatter = 0;  // 1, if has_checkpoint_scatter
  std::size_t log_block_scatter = 0;       // 1, if block_count > 0
  std::size_t block = 0;                   // block_count
  std::size_t log_specimen_scatter = 0;    // 1, if specimen_count > 0
  std::size_t specimen = 0;                // specimen_count
  std::size_t start_effect = 0;            // 1, if has_start_effect; in prior sds
  std::size_t order_drift = 0;             // 1, if has_order_drift; in prior sds
  std::size_t run_start = 0;               // runs
  std::size_t run_half = 0;                // runs
  std::size_t dimension = 0;
};

[[nodiscard]] ParameterLayout layout_of(const ModelParts& parts, const BluntingData& data);

}  // namespace keenfall::blunting
