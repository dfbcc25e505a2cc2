# Twenty invented trials of the plain model, made by R's own random numbers: no code of Keenfall's has touched them.
# They differ in arms, runs, checkpoints, repeats, scatters and shapes; some runs stop at three times their start.
#
# Rscript fresh_trials.R   writes trials/trial_01.csv ... trial_20.csv beside this file, and truth.csv
folder <- function() {
  file <- sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE))
  if (length(file)) dirname(normalizePath(file)) else "."
}

set.seed(20261127, kind = "Mersenne-Twister", normal.kind = "Inversion", sample.kind = "Rejection")
checkpoints <- list(c(0, 2, 5, 10, 20, 40, 80), c(0, 1, 3, 7, 15, 31, 63, 127), c(0, 4, 12, 30, 70))
truth <- NULL

one_trial <- function(number) {
  media <- if (number %% 3 == 0) c("new", "uplifted") else "new"
  blades <- if (number %% 4 == 0) c("A", "B", "C") else c("A", "B")
  runs <- sample(c(3, 4, 6, 8), 1)
  cuts <- checkpoints[[sample(3, 1)]]
  repeats <- sample(3, 1)
  start_scatter <- runif(1, 0.04, 0.15)
  run_scatter <- runif(1, 0.15, 0.40)
  reading_scatter <- runif(1, 0.04, 0.12)
  rows <- NULL
  for (medium in media) for (blade in blades) {
    start <- exp(rnorm(1, 0, 0.1))
    half_keenness <- exp(runif(1, log(8), log(60))) / ifelse(medium == "uplifted", 3, 1)
    shape <- runif(1, 0.5, 1.1)
    truth <<- rbind(truth, data.frame(trial = number, blade, medium, runs, start, half_keenness, shape,
                                      start_scatter, run_scatter, reading_scatter))
    for (run in seq_len(runs)) {
      own_start <- start * exp(rnorm(1, 0, start_scatter))
      own_half <- half_keenness * exp(rnorm(1, 0, run_scatter))
      curve <- own_start * (1 + (cuts / own_half)^shape)
      stopped <- which(curve > 3 * own_start)
      seen <- if (number %% 2 == 0 && length(stopped)) seq_len(min(stopped)) else seq_along(cuts)
      for (k in seen) {
        readings <- curve[k] * exp(rnorm(repeats, 0, reading_scatter))
        rows <- rbind(rows, data.frame(blade, medium, run = paste0(blade, "-", medium, "-", run),
                                       cuts = cuts[k], kind = "thread_push", unit = "N",
                                       "repeat" = seq_len(repeats), reading = signif(readings, 5),
                                       check.names = FALSE))
      }
    }
  }
  rows
}

dir.create(file.path(folder(), "trials"), showWarnings = FALSE)
for (number in 1:20) {
  write.csv(one_trial(number), file.path(folder(), sprintf("trials/trial_%02d.csv", number)),
            row.names = FALSE, quote = FALSE)
}
write.csv(format(truth, digits = 6, trim = TRUE), file.path(folder(), "truth.csv"), row.names = FALSE, quote = FALSE)
