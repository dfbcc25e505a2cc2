# What a sampler in Stan needs to fit the plain model: its data, and where a chain begins. reading_trials.R comes first.

# The data block of plain.stan.
data_for_stan <- function(trial) {
  list(readings = nrow(trial$rows), runs = length(trial$runs), arms = length(trial$arms), run = trial$run,
       arm_of_run = trial$arm_of_run, cuts = trial$x, log_reading = trial$ly,
       centre_start = trial$centre_start, centre_half_keenness = trial$centre_half_keenness)
}

# A start of a chain about the crude one of the trial (crude_starts), the same for the same seed.
start_for_stan <- function(trial, at, seed) {
  arms <- length(trial$arms)
  set.seed(seed)
  list(beta0 = as.array(at$arm_start + rnorm(arms, 0, 0.1)), mu = as.array(at$arm_half + rnorm(arms, 0, 0.2)),
       p = as.array(runif(arms, 0.5, 1.2)), s_b0 = runif(1, 0.05, 0.2), s_tau = runif(1, 0.1, 0.5),
       sigma = runif(1, 0.05, 0.2), unit_start = rnorm(length(trial$runs), 0, 0.5),
       unit_half = rnorm(length(trial$runs), 0, 0.5))
}
