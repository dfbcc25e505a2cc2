# The peer of a judged trial: one nonlinear mixed-effects fit of the same readings by maximum likelihood,
# with R's nlme. A log-logistic curve; a start and a half keenness for each arm, a shape for each medium;
# run deviations of start and half keenness. What it does less: benchmarks/README.md.
#
# Rscript mixed_model.R TABLE.csv BLADE OVER MEDIUM prints, one "name number" a line: seconds of processor
# time for the fit alone, readings used, and how many times as long BLADE lasts as OVER in MEDIUM.
suppressMessages(library(nlme))
asked <- commandArgs(trailingOnly = TRUE)
table <- read.csv(asked[1], colClasses = "character")
for (column in c("struck", "voided")) if (is.null(table[[column]])) table[[column]] <- ""
data <- subset(table, struck == "" & voided == "" & reading != "")
data$y <- log(as.numeric(data$reading))
data$x <- pmax(log(as.numeric(data$cuts)), -20)  # 0 cuts: a term of 1e-5 of the start and less
data$medium <- factor(data$medium)
data$arm <- factor(paste(data$blade, data$medium, sep = " in "))
data$run <- factor(paste(data$arm, data$run))

curve <- function(b0, tau, p, x) b0 + log1p(exp(exp(p) * (x - tau)))
arms <- levels(data$arm)
late <- sapply(arms, function(a) mean(data$x[data$arm == a & data$x > -20]))
first <- sapply(arms, function(a) mean(data$y[data$arm == a & data$x == -20]))
fit_once <- function() {
  nlme(y ~ curve(b0, tau, p, x), data = data,
       fixed = list(b0 ~ arm - 1, tau ~ arm - 1, p ~ medium - 1),
       random = list(run = pdDiag(b0 + tau ~ 1)),
       start = c(first, late, rep(log(0.8), nlevels(data$medium))),
       control = nlmeControl(maxIter = 200, msMaxIter = 200, returnObject = FALSE))
}
began <- proc.time()
fit <- fit_once()
spent <- proc.time() - began
tau <- fixef(fit)[length(arms) + seq_along(arms)]
names(tau) <- arms
ratio <- exp(tau[paste(asked[2], asked[4], sep = " in ")] - tau[paste(asked[3], asked[4], sep = " in ")])
cat("fit_cpu_s", spent[["user.self"]] + spent[["sys.self"]], "\n")
cat("readings", nrow(data), "\n")
cat("ratio", unname(ratio), "\n")
