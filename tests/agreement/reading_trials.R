# What every script here needs: the trials with arms and runs numbered in the order in which they first appear.
agreement_folder <- function() {
  file <- sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE))
  if (length(file)) dirname(normalizePath(file)) else "."
}

read_trial <- function(file) {
  rows <- read.csv(file, stringsAsFactors = FALSE)
  rows$arm <- paste(rows$blade, rows$medium, sep = " in ")
  rows$run <- paste(rows$run, rows$arm, sep = " of ")  # arms may name their runs alike
  arms <- unique(rows$arm)
  runs <- unique(rows$run)
  list(rows = rows, arms = arms, runs = runs, x = rows$cuts, ly = log(rows$reading),
       run = match(rows$run, runs), arm_of_run = match(rows$arm[match(runs, rows$run)], arms),
       # The centres of the priors, as docs/methods/blunting-model.md has them.
       centre_start = mean(log(rows$reading[rows$cuts == 0])),
       centre_half_keenness = mean(log(rows$cuts[rows$cuts > 0])))
}

# The twenty trials, and first the reference trial that the tests already hold against Stan.
all_trials <- function() {
  here <- agreement_folder()
  fresh <- file.path(here, sprintf("trials/trial_%02d.csv", 1:20))
  c(setNames(fresh, sprintf("trial_%02d", 1:20)),
    reference = file.path(here, "../reference/two_blades_two_media.csv"))
}

# Where to begin: each run's first mean, and the first checkpoint that stands at twice it.
crude_starts <- function(trial) {
  start <- half <- numeric(length(trial$runs))
  for (r in seq_along(trial$runs)) {
    mine <- trial$run == r
    seen <- tapply(trial$ly[mine], trial$x[mine], median)
    cuts <- as.numeric(names(seen))
    start[r] <- seen[1]
    doubled <- which(seen - seen[1] > log(2))
    half[r] <- log(if (length(doubled)) max(cuts[doubled[1]], 0.5) else 1.5 * max(cuts))
  }
  list(start = start, half = half, arm_start = as.numeric(tapply(start, trial$arm_of_run, mean)),
       arm_half = as.numeric(tapply(half, trial$arm_of_run, mean)))
}

keep <- function(table, name, digits = 7) {
  numbers <- sapply(table, is.numeric)
  table[numbers] <- lapply(table[numbers], signif, digits)
  write.csv(table, file.path(agreement_folder(), name), row.names = FALSE, quote = FALSE)
}
