# The plain model by TMB: maximum likelihood without priors, and the mode with them, both with the runs' deviations
# integrated out by Laplace's approximation. Log half keenness with its standard error for each arm, and the scatters.
#
# Rscript with_tmb.R   writes tmb.csv
here <- dirname(normalizePath(sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE))))
source(file.path(here, "reading_trials.R"))
suppressMessages(library(TMB))
workshop <- tempfile("tmb")
dir.create(workshop)
file.copy(file.path(here, "plain_tmb.cpp"), workshop)
compile(file.path(workshop, "plain_tmb.cpp"), flags = "-O1")
dyn.load(dynlib(file.path(workshop, "plain_tmb")))

fitted <- function(trial, with_priors) {
  at <- crude_starts(trial)
  objective <- MakeADFun(
    list(log_cuts = log(pmax(trial$x, 1e-9)), is_start = as.integer(trial$x == 0), log_reading = trial$ly,
         run = trial$run - 1L, arm_of_run = trial$arm_of_run - 1L, centre_start = trial$centre_start,
         centre_half_keenness = trial$centre_half_keenness, with_priors = with_priors),
    list(beta0 = at$arm_start, mu = at$arm_half, q = rep(-0.7, length(trial$arms)), log_s_b0 = log(0.1),
         log_s_tau = log(0.3), log_sigma = log(0.1), run_start = at$start, run_half = at$half),
    random = c("run_start", "run_half"), DLL = "plain_tmb", silent = TRUE)
  best <- nlminb(objective$par, objective$fn, objective$gr,
                 control = list(eval.max = 4000, iter.max = 2000, rel.tol = 1e-12))
  list(best = best, report = sdreport(objective))
}

found <- NULL
for (name in names(all_trials())) {
  trial <- read_trial(all_trials()[[name]])
  for (with_priors in 0:1) {
    fit <- fitted(trial, with_priors)
    fixed <- summary(fit$report, "fixed")
    mu <- fixed[rownames(fixed) == "mu", , drop = FALSE]
    scatters <- summary(fit$report, "report")
    found <- rbind(found, data.frame(
      trial = name, priors = with_priors,
      what = c(sprintf("mu[%d]", seq_along(trial$arms)), rownames(scatters)),
      estimate = c(mu[, 1], scatters[, 1]), standard_error = c(mu[, 2], scatters[, 2])))
    cat(sprintf("%s, %s priors: %s, minus log %.3f\n", name, c("without", "with")[with_priors + 1],
                fit$best$message, fit$best$objective))
  }
}
keep(found, "tmb.csv")
