# Posteriors of the plain model by NUTS in rstan: means, sds, quantiles and effective sizes of every parameter, and of the
# log ratios of half keenness and of cuts to three times the start, first arm against each other arm of its medium.
#
# Rscript with_rstan.R   writes rstan.csv (some minutes)
here <- dirname(normalizePath(sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE))))
source(file.path(here, "reading_trials.R"))
source(file.path(here, "plain_in_stan.R"))
suppressMessages(library(rstan))
rstan_options(boost_lib = "/usr/include")
model <- stan_model(file.path(here, "plain.stan"))

draws_of <- function(trial) {
  at <- crude_starts(trial)
  begin <- lapply(1:4, function(chain) start_for_stan(trial, at, 100 + chain))
  sampling(model, chains = 4, cores = 1, warmup = 1000, iter = 2000, seed = 4711, refresh = 0, init = begin,
           pars = c("beta0", "mu", "p", "s_b0", "s_tau", "sigma"),
           control = list(adapt_delta = 0.95, max_treedepth = 12), data = data_for_stan(trial))
}

summary_of <- function(chains, what) {
  data.frame(what, mean = mean(chains), sd = sd(chains), lo95 = unname(quantile(chains, 0.025)),
             hi95 = unname(quantile(chains, 0.975)), ess_bulk = ess_bulk(chains), ess_tail = ess_tail(chains),
             rhat = Rhat(chains))
}

found <- NULL
for (name in names(all_trials())) {
  trial <- read_trial(all_trials()[[name]])
  fit <- draws_of(trial)
  all <- as.array(fit)
  of <- function(parameter) all[, , parameter]
  rows <- NULL
  for (parameter in setdiff(dimnames(all)[[3]], "lp__")) rows <- rbind(rows, summary_of(of(parameter), parameter))
  medium <- sub(".* in ", "", trial$arms)
  for (a in seq_along(trial$arms)) for (b in seq_along(trial$arms)) if (a < b && medium[a] == medium[b]) {
    half <- of(sprintf("mu[%d]", b)) - of(sprintf("mu[%d]", a))
    level <- half + log(2) / of(sprintf("p[%d]", b)) - log(2) / of(sprintf("p[%d]", a))
    rows <- rbind(rows, summary_of(half, sprintf("half_keenness[%d:%d]", b, a)),
                  summary_of(level, sprintf("cuts_to_3[%d:%d]", b, a)))
  }
  divergent <- sum(sapply(get_sampler_params(fit, inc_warmup = FALSE), function(one) sum(one[, "divergent__"])))
  cat(sprintf("%s: %d readings, smallest bulk size %.0f, largest R-hat %.4f, %d divergent, %.1f CPU-s\n", name,
              nrow(trial$rows), min(rows$ess_bulk), max(rows$rhat), divergent, sum(get_elapsed_time(fit))))
  found <- rbind(found, data.frame(trial = name, rows))
}
keep(found, "rstan.csv")
