# Makes the wanted values of src/numerics/chain_diagnostics_test.cpp with the R package posterior
# (chains anyone can remake: sums of sines). Run: Rscript tests/reference/chain_diagnostics.R
suppressMessages(library(posterior))
show <- function(x) cat(sprintf("%.12f %.12f %.12f\n", rhat(x), ess_bulk(x), ess_tail(x)))
waves <- function(n, slow) sapply(1:4, function(c) {
  i <- 1:n
  sin(0.7 * i * c) + slow * sin(0.05 * i + c) + 0.1 * c * cos(i^2 * 0.013)
})
show(waves(200, 0.3))
show(waves(1000, 2))
show(waves(501, 1) + rep(c(0, 0, 0, 0.4), each = 501))
cat(as.character(packageVersion("posterior")), R.version.string, "\n")
