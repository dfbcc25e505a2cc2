# Do the start and the half keenness of a run go together in the milling data (cast iron)?
# Maximum likelihood by nlme, readings above zero, one shape, a start and a half keenness for each
# condition; run deviations of the two independent, then correlated. Intervals of the ratio of times to
# 0.3 mm: delta method, t with 4 degrees of freedom (8 runs less 4 conditions).
# Quoted in docs/walkthroughs/milling.md. Run at the root of the repository:
#   Rscript tests/reference/milling_starts.R
#
#   independent: log likelihood 51.70; 1 against 4: 2.27 (0.55 to 9.42)
#   correlated:  log likelihood 64.40, correlation 0.983; 1 against 4: 2.27 (1.80 to 2.86)
library(nlme)

data <- subset(read.csv("examples/milling/milling_flank_wear.csv"),
               material == "cast_iron" & vb_mm > 0)
data$y <- log(data$vb_mm)
data$x <- log(data$time_min)
data$condition <- factor(data$condition)
data$edge <- factor(paste(data$condition, data$insert_set))

curve <- function(b0, tau, p, x) b0 + log1p(exp(exp(p) * (x - tau)))
times <- function(b) b[5:8] + log(0.3 / exp(b[1:4]) - 1) / exp(b[9])

for (together in c(FALSE, TRUE)) {
  deviations <- if (together) pdSymm(b0 + tau ~ 1) else pdDiag(b0 + tau ~ 1)
  fit <- nlme(y ~ curve(b0, tau, p, x), data = data,
              fixed = list(b0 ~ condition - 1, tau ~ condition - 1, p ~ 1),
              random = list(edge = deviations),
              start = c(rep(log(0.07), 4), log(c(25, 19, 4.5, 15)), log(1.4)),
              control = nlmeControl(maxIter = 200, msMaxIter = 200, pnlsTol = 0.01))
  b <- fixef(fit)
  slopes <- sapply(1:9, function(i) {
    step <- replace(numeric(9), i, 1e-5)
    (times(b + step) - times(b - step)) / 2e-5
  })
  spread <- slopes %*% vcov(fit) %*% t(slopes)
  error <- sqrt(spread[1, 1] + spread[4, 4] - 2 * spread[1, 4])
  ratio <- exp(times(b)[1] - times(b)[4] + c(0, -1, 1) * qt(0.975, 4) * error)
  cat(if (together) "correlated: " else "independent:", "log likelihood", as.numeric(logLik(fit)),
      "; 1 against 4:", ratio, "\n")
  print(VarCorr(fit))
}
