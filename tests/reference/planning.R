# What two samples of normal logs can tell, by base R alone, for src/planning/two_sample_chances_test.cpp. Run:
#   Rscript tests/reference/planning.R
#
# Each arm has n runs whose logs scatter by `sd`; intervals are t intervals of the log ratio with the pooled
# scatter (2n - 2 degrees of freedom).

half_width <- function(n, sd) exp(qt(0.975, 2 * n - 2) * sd * sqrt(2 / n))
cat("half-width of the 95 % interval, as a factor\n")
for (n in c(2, 3, 4, 5, 6, 8, 12, 20)) cat(n, round(sapply(c(.1, .15, .2, .25, .3, .4), half_width, n = n), 3), "\n")

cat("power of the two-sided 5 % t test (strict: either side)\n")
power <- function(n, sd, ratio) power.t.test(n = n, delta = log(ratio), sd = sd, strict = TRUE)$power
for (n in c(2, 3, 4, 6, 10, 20)) for (ratio in c(1.25, 1.5, 2, 3)) cat(n, 0.2, ratio, sprintf("%.5f", power(n, 0.2, ratio)), "\n")
for (n in c(3, 6, 10)) cat(n, 0.3, 1.5, sprintf("%.5f", power(n, 0.3, 1.5)), "\n")

cat("fewest runs for a power of 80 %\n")
for (ratio in c(1.15, 1.25, 1.5, 2)) cat(ratio, sapply(c(.1, .15, .2, .25, .3, .4), function(sd)
  which(sapply(2:200, power, sd = sd, ratio = ratio) >= 0.8)[1] + 1), "\n")

# Two one-sided 5 % t tests (Schuirmann 1987): the 90 % interval lies inside 1/M..M. Integrated over the scatter
# that is seen.
same <- function(n, sd, ratio, margin) {
  df <- 2 * n - 2; se <- sd * sqrt(2 / n)
  inside <- function(q) {
    room <- log(margin) - qt(0.95, df) * se * sqrt(q / df)
    ifelse(room > 0, pnorm((room - log(ratio)) / se) - pnorm((-room - log(ratio)) / se), 0) * dchisq(q, df)
  }
  most <- df * (log(margin) / (qt(0.95, df) * se))^2
  integrate(inside, 0, min(most, qchisq(1 - 1e-12, df)), rel.tol = 1e-9)$value
}
cat("chance that the 90 % interval lies inside 1/M..M\n")
for (n in c(3, 6, 10, 20)) for (margin in c(1.25, 1.5)) for (ratio in c(1, 1.2)) cat(n, 0.2, ratio, margin, sprintf("%.5f", same(n, 0.2, ratio, margin)), "\n")
cat("fewest runs for 80 % at equality\n")
for (margin in c(1.25, 1.33, 1.5)) cat(margin, sapply(c(.1, .15, .2, .25, .3, .4), function(sd)
  which(sapply(2:200, same, sd = sd, ratio = 1, margin = margin) >= 0.8)[1] + 1), "\n")
