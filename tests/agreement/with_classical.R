# What other programs make of the same trials by classical means:
#   survival  survreg, log-logistic, of how long each run took to double: between two checkpoints, or longer than the last
#   lme4      lmer, REML: starts of the runs, scatter between runs and within
#   stats     power.t.test: power of a comparison of two arms with this trial's runs, and the runs for 80 %
#   emmeans   lm of each run's own log half keenness (nls) on blade and medium: main effect of the blade (crossed trials)
#
# Rscript with_classical.R   writes classical.csv
here <- dirname(normalizePath(sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE))))
source(file.path(here, "reading_trials.R"))
suppressMessages({
  library(survival)
  library(lme4)
  library(emmeans)
})

# The first checkpoint whose mean log reading stands at least log 2 above the first one's, and the one before it.
doubled_between <- function(trial) {
  t(sapply(seq_along(trial$runs), function(r) {
    mine <- trial$run == r
    seen <- tapply(trial$ly[mine], trial$x[mine], mean)
    cuts <- as.numeric(names(seen))
    over <- which(seen - seen[1] >= log(2))
    if (length(over)) c(cuts[over[1] - 1], cuts[over[1]]) else c(max(cuts), NA)
  }))
}

of_survival <- function(trial) {
  between <- doubled_between(trial)
  after <- ifelse(between[, 1] == 0, NA, between[, 1])
  arm <- factor(trial$arm_of_run)
  # Where the runs of every arm double between the same two checkpoints, or between neighbours, nothing holds the scale
  # off 0: survreg does not get there, or stops somewhere on flat ground, which its standard error shows.
  fit <- tryCatch(survreg(Surv(after, between[, 2], type = "interval2") ~ arm, dist = "loglogistic",
                          control = survreg.control(maxiter = 100, rel.tolerance = 1e-12)),
                  warning = function(unreached) NULL)
  if (is.null(fit) || !isTRUE(fit$var[nrow(fit$var), ncol(fit$var)] < 1)) return(NULL)
  data.frame(what = c("lasting_first_arm", sprintf("lasting_arm_%d", seq_along(trial$arms)[-1]), "lasting_scale"),
             value = c(unname(coef(fit)), fit$scale))
}

of_lme4 <- function(trial) {
  first <- data.frame(ly = trial$ly, run = factor(trial$run))[trial$x == 0, ]
  if (nrow(first) == nlevels(droplevels(first$run))) return(NULL)  # one reading a run tells no two scatters apart
  fit <- lmer(ly ~ 1 + (1 | run), data = first, REML = TRUE,
              control = lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-10)))
  scatter <- as.data.frame(VarCorr(fit))$sdcor
  data.frame(what = c("start_mean", "start_mean_error", "start_sd_between", "start_sd_within", "start_log_likelihood"),
             value = c(fixef(fit), sqrt(diag(as.matrix(vcov(fit)))), scatter, as.numeric(logLik(fit))))
}

of_power <- function(trial, truth) {
  design <- list(n = truth$runs[1], delta = log(1.5), sd = truth$run_scatter[1])
  data.frame(what = c("design_runs", "design_sd", "power", "runs_for_80_percent"),
             value = c(design$n, design$sd, do.call(power.t.test, design)$power,
                       power.t.test(delta = design$delta, sd = design$sd, power = 0.8, tol = 1e-10)$n))
}

own_half_keenness <- function(trial, at) {
  sapply(seq_along(trial$runs), function(r) {
    mine <- trial$run == r
    one <- data.frame(x = trial$x[mine], ly = trial$ly[mine])
    fit <- nls(ly ~ b0 + ifelse(x > 0, log1p(exp(exp(q) * (log(pmax(x, 1e-300)) - half))), 0), data = one,
               start = list(b0 = at$start[r], half = at$half[r], q = log(0.8)),
               control = nls.control(maxiter = 200, scaleOffset = 1, warnOnly = TRUE))
    if (fit$convInfo$isConv) coef(fit)[["half"]] else NA
  })
}

of_emmeans <- function(trial) {
  cells <- do.call(rbind, strsplit(trial$arms, " in "))
  if (length(unique(cells[, 2])) < 2) return(NULL)
  data <- data.frame(half = own_half_keenness(trial, crude_starts(trial)),
                     blade = factor(cells[trial$arm_of_run, 1]), medium = factor(cells[trial$arm_of_run, 2]))
  if (anyNA(data$half)) return(NULL)
  effect <- as.data.frame(contrast(emmeans(lm(half ~ blade * medium, data = data), "blade"), "trt.vs.ctrl1"))
  data.frame(what = c(rbind(sprintf("blade_effect_%d", seq_len(nrow(effect)) + 1),
                            sprintf("blade_effect_error_%d", seq_len(nrow(effect)) + 1))),
             value = c(rbind(effect$estimate, effect$SE)))
}

truth <- read.csv(file.path(here, "truth.csv"))
found <- NULL
for (name in names(all_trials())) {
  trial <- read_trial(all_trials()[[name]])
  rows <- rbind(of_survival(trial), of_lme4(trial), suppressMessages(of_emmeans(trial)))
  number <- suppressWarnings(as.integer(sub("trial_", "", name)))
  if (!is.na(number)) rows <- rbind(rows, of_power(trial, truth[truth$trial == number, ]))
  found <- rbind(found, data.frame(trial = name, rows))
}
keep(found, "classical.csv", digits = 10)
