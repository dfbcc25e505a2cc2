# Maximum likelihood of the plain model without priors, by nlme (linearised about the runs' deviations): log half keenness
# and its standard error for each arm, and the scatters.
#
# Rscript with_nlme.R   writes nlme.csv
here <- dirname(normalizePath(sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE))))
source(file.path(here, "reading_trials.R"))
suppressMessages(library(nlme))

# The shape goes by its logit between 0.2 and 2, as the prior bounds it.
curve <- function(x, b0, half, q) {
  p <- 0.2 + 1.8 * plogis(q)
  u <- p * (log(pmax(x, 1e-300)) - half)
  b0 + ifelse(x > 0, log1p(exp(pmin(u, 700))), 0)
}

found <- NULL
for (name in names(all_trials())) {
  trial <- read_trial(all_trials()[[name]])
  at <- crude_starts(trial)
  arms <- length(trial$arms)
  data <- data.frame(ly = trial$ly, x = trial$x, run = factor(trial$run),
                     arm = factor(trial$rows$arm, levels = trial$arms))
  fit <- try(nlme(ly ~ curve(x, b0, half, q), data = data,
                  fixed = list(b0 ~ arm - 1, half ~ arm - 1, q ~ arm - 1),
                  random = list(run = pdDiag(b0 + half ~ 1)),
                  start = c(at$arm_start, at$arm_half, rep(-0.7, arms)), method = "ML",
                  control = nlmeControl(maxIter = 200, pnlsMaxIter = 30, msMaxIter = 300, tolerance = 1e-6)),
             silent = TRUE)
  if (inherits(fit, "try-error")) {
    cat(sprintf("%s: no fit (%s)\n", name, trimws(conditionMessage(attr(fit, "condition")))))
    next
  }
  scatter <- as.numeric(VarCorr(fit)[, "StdDev"])
  found <- rbind(found, data.frame(
    trial = name, what = c(sprintf("mu[%d]", seq_len(arms)), "s_b0", "s_tau", "sigma"),
    estimate = c(unname(fixef(fit)[arms + seq_len(arms)]), scatter),
    standard_error = c(unname(sqrt(diag(fit$varFix))[arms + seq_len(arms)]), NA, NA, NA)))
  cat(sprintf("%s: log likelihood %.3f\n", name, as.numeric(logLik(fit))))
}
keep(found, "nlme.csv")
