# Constants for repeated looks at accumulating normal data (Pocock 1977): one bound c on |Z| at each of K
# equally spaced looks such that the chance of ever crossing is 5 % (or 10 %), by numerical integration of
# the partial sums (Armitage, McPherson & Rowe 1969). Used by src/verdicts/planned_looks_test.cpp. Run:
#   Rscript tests/reference/looks.R
#
#   5 %, 2 looks: 2.178   3: 2.289   4: 2.361   5: 2.413
#   10 %, 2 looks: 1.875  3: 1.992   4: 2.067   5: 2.122
#   unadjusted 1.96 at 3 looks: ever crossed in 0.107; at 10 looks: 0.193
ever_crossed <- function(bound, looks, points = 2001) {
  sum_at <- function(k) seq(-bound * sqrt(k), bound * sqrt(k), length.out = points)
  density <- dnorm(sum_at(1))
  inside <- NULL
  for (k in 1:looks) {
    s <- sum_at(k)
    step <- s[2] - s[1]
    weight <- step * c(0.5, rep(1, points - 2), 0.5)
    inside <- sum(density * weight)
    if (k < looks) {
      density <- as.vector(outer(sum_at(k + 1), s, function(a, b) dnorm(a - b)) %*% (density * weight))
    }
  }
  1 - inside
}
for (alpha in c(0.05, 0.10)) for (looks in 2:5) {
  bound <- uniroot(function(b) ever_crossed(b, looks) - alpha, c(1.5, 3), tol = 1e-6)$root
  cat(alpha, looks, round(bound, 3), "\n")
}
cat(ever_crossed(qnorm(0.975), 3), ever_crossed(qnorm(0.975), 10), "\n")
