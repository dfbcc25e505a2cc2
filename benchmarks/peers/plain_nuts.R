# The peer of the full engine: rstan's NUTS on the plain model, with the same data and priors, by its own defaults
# (4 chains, as many draws kept as warmed up with). What it does less: benchmarks/README.md.
#
# Rscript plain_nuts.R TABLE.csv MODEL.stan SEED CACHE OURS CHAINS prints, one "name number" a line: seconds of processor
# time of the sampling, warm-up included, but not of compiling the model, which is done once and kept in CACHE; the smallest
# bulk effective size, by rstan's ess_bulk, of arms, scatters and both levels of every run; divergences; the same size of
# Keenfall's draws in OURS, and how far their means lie from rstan's: root mean square in Monte-Carlo errors, 1 by chance.
#
# OURS: doubles, draws of a chain x CHAINS x quantities: of each run the arm's start, half keenness and shape, then the
# run's own start and half keenness; at last the scatters of starts, of half keenness and of readings.
here <- dirname(normalizePath(sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE))))
agreement <- file.path(here, "../../tests/agreement")
source(file.path(agreement, "reading_trials.R"))
source(file.path(agreement, "plain_in_stan.R"))
suppressMessages(library(rstan))
rstan_options(boost_lib = "/usr/include", auto_write = TRUE)  # auto_write keeps the compiled model beside the text
asked <- commandArgs(trailingOnly = TRUE)
seed <- as.integer(asked[3])
chains <- 4

compiled <- function(file, cache) {
  kept <- file.path(cache, basename(file))
  dir.create(cache, showWarnings = FALSE, recursive = TRUE)
  if (!file.exists(kept) || !identical(readLines(kept), readLines(file))) file.copy(file, kept, overwrite = TRUE)
  suppressWarnings(suppressMessages(stan_model(kept)))
}

# Either model takes from a start what it has parameters for.
start_of <- function(trial, at, seed) {
  start <- start_for_stan(trial, at, seed)
  start$run_start <- start$beta0[trial$arm_of_run] + start$s_b0 * start$unit_start
  start$run_half <- start$mu[trial$arm_of_run] + start$s_tau * start$unit_half
  start
}

# Draws x chains x quantities, in the order of OURS.
in_our_order <- function(all, trial) {
  of <- function(name, index) all[, , sprintf("%s[%d]", name, index)]
  level <- function(name, run) {
    if (paste0("run_", name, "[1]") %in% dimnames(all)[[3]]) return(of(paste0("run_", name), run))
    arm <- c(start = "beta0", half = "mu")[[name]]
    scatter <- c(start = "s_b0", half = "s_tau")[[name]]
    of(arm, trial$arm_of_run[run]) + all[, , scatter] * of(paste0("unit_", name), run)
  }
  each <- list()
  for (run in seq_along(trial$runs)) {
    arm <- trial$arm_of_run[run]
    each <- c(each, list(of("beta0", arm), of("mu", arm), of("p", arm), level("start", run), level("half", run)))
  }
  c(each, lapply(c("s_b0", "s_tau", "sigma"), function(name) all[, , name]))
}

trial <- read_trial(asked[1])
model <- compiled(asked[2], asked[4])
at <- crude_starts(trial)
begin <- lapply(seq_len(chains), function(chain) start_of(trial, at, chains * seed + chain))
began <- proc.time()
fit <- suppressMessages(suppressWarnings(
  sampling(model, chains = chains, cores = 1, seed = seed, refresh = 0, init = begin, data = data_for_stan(trial))))
spent <- proc.time() - began
theirs <- in_our_order(as.array(fit), trial)
# An arm's numbers stand with each of its runs: once is enough.
distinct <- c(rbind(matrix(rep(!duplicated(trial$arm_of_run), 3), 3, byrow = TRUE), TRUE, TRUE), TRUE, TRUE, TRUE)
theirs <- theirs[distinct]
sizes <- sapply(theirs, ess_bulk)
divergent <- sapply(get_sampler_params(fit, inc_warmup = FALSE), function(one) sum(one[, "divergent__"]))
cat("fit_cpu_s", spent[["user.self"]] + spent[["sys.self"]], "\n")
cat("ess_bulk_min", min(sizes), "\n")
cat("divergences", sum(divergent), "\n")
our_chains <- as.integer(asked[6])
numbers <- readBin(asked[5], "double", file.size(asked[5]) / 8)
ours <- array(numbers, c(length(numbers) / our_chains / length(distinct), our_chains, length(distinct)))[, , distinct]
our_sizes <- apply(ours, 3, ess_bulk)
error <- sapply(theirs, sd) * sqrt(1 / sizes + 1 / our_sizes)
cat("ours_ess_bulk_min", min(our_sizes), "\n")
cat("departure", sqrt(mean(((sapply(theirs, mean) - apply(ours, 3, mean)) / error)^2)), "\n")
