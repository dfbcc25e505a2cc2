# The peer of a large judged trial: what is usually done with so many runs. Each run's curve by itself by
# least squares (nls), then the runs' log half keenness by one mixed model (R's nlme): arms fixed, blocks
# within media random. What it does less: benchmarks/README.md.
#
# Rscript two_stage.R TABLE.csv prints, one "name number" a line: seconds of processor time without reading
# the table, runs whose curve was found, and the standard deviation of log half keenness between runs.
suppressMessages(library(nlme))
table <- read.csv(commandArgs(trailingOnly = TRUE)[1], colClasses = "character")
table$y <- log(as.numeric(table$reading))
table$x <- pmax(log(as.numeric(table$cuts)), -20)  # 0 cuts: a term of 1e-5 of the start and less
table$id <- paste(table$blade, table$medium, table$run, sep = "\t")

half_keenness_of <- function(run) {
  tryCatch(coef(nls(y ~ b0 + log1p(exp(exp(p) * (x - tau))), data = run,
                    start = list(b0 = min(run$y), tau = mean(run$x[run$x > -20]), p = log(0.8)),
                    control = nls.control(maxiter = 200)))[["tau"]],
           error = function(failure) NA)
}
began <- proc.time()
runs <- table[!duplicated(table$id), ]
runs$tau <- sapply(split(table, factor(table$id, levels = runs$id)), half_keenness_of)
found <- subset(runs, !is.na(tau))
found$arm <- factor(paste(found$blade, found$medium))
found$place <- factor(paste(found$medium, found$block))
fit <- lme(tau ~ arm - 1, random = ~ 1 | place, data = found)
spent <- proc.time() - began
cat("fit_cpu_s", spent[["user.self"]] + spent[["sys.self"]], "\n")
cat("runs", nrow(found), "\n")
cat("run_scatter", fit$sigma, "\n")
