// Which statistical model is fitted: one value names curve, likelihood, grouping and priors.
//
//   log y(r,k,j) = log b(x_k; run r) + u(r,k) + e(r,k,j)
//   log b0(r)  ~ N(beta(arm), s_start(medium))
//   log tau(r) ~ N(mu(arm) + block x medium + specimen + covariates, s_run(medium))
//   covariates = lambda (log b0(r) - beta(arm)) + drift x place in the order of cutting
//   log p(arm) ~ N(m(medium), s_shape)            when shapes are shared, else priors of their own
//
// Prior centres of beta and mu come from the data unless the plan fixed them. Scales are
// half-normal. Method page: docs/methods/blunting-model.md
#pragma once

#include <optional>
#include <string>

namespace keenfall::blunting {

enum class ReadingErrors {
  gaussian,
  robust  // Student's t with 4 degrees of freedom about each checkpoint
};

struct PriorScales {
  double log_start_sd = 1.5;        // beta about its centre
  double log_half_keenness_sd = 2;  // mu about its centre
  double shape_centre = 0.8;        // median of p
  double log_shape_sd = 0.5;        // of log p (plain) or of its mean in a medium
  double start_scatter = 0.25;      // half-normal scale of s_start
  double run_scatter = 0.5;         // of s_run
  double reading_scatter = 0.3;     // of one log reading
  double specimen_scatter = 0.25;   // half-normal scale: of log tau between specimens of one blade
  // Scatters that are never quite zero but seldom well known: log-normal, by median and log sd.
  double checkpoint_scatter = 0.025;  // of u, the log of the spot that was read
  double shape_scatter = 0.06;        // of log p between arms of one medium
  double block_scatter = 0.08;        // of log tau between blocks
  double log_scatter_sd = 0.7;
  // Normal about none: what a run's own start does to its half keenness (log by log), and how much
  // log tau drifts from the first run of the trial to the last.
  double start_effect = 0.8;
  double order_drift = 0.2;

  bool operator==(const PriorScales&) const = default;
};

// Set by a plan, in natural logs; absent: the data's own (see blunting_data.h).
struct PriorCentres {
  double log_start = 0;
  double log_half_keenness = 0;

  bool operator==(const PriorCentres&) const = default;
};

struct ModelSpec {
  std::string name = "default";
  ReadingErrors errors = ReadingErrors::robust;
  bool checkpoint_error = true;   // where repeats let it be told from reading error
  bool shared_shape = true;       // arms of one medium share the shape's distribution
  bool scatter_by_medium = true;  // scatters of runs and of starts of their own in each medium
  bool blocks = true;             // where blocks hold more than one arm
  bool specimens = true;          // where a blade has several
  bool start_effect = true;       // where arms have several runs
  bool order_drift = true;        // where the order of cutting is known of every run
  PriorScales priors;
  std::optional<PriorCentres> centres;

  bool operator==(const ModelSpec&) const = default;
};

[[nodiscard]] ModelSpec default_model();

// The simplest model, for agreement with other software: Gaussian errors, one scatter, no grouping,
// shapes with separate priors truncated to 0.2..2.
[[nodiscard]] ModelSpec plain_model();

}  // namespace keenfall::blunting
