# Reference values of checks/plan_and_watch.csv: run lengths of control charts, grafts for an order.
# Rscript plan-and-watch.R > plan-and-watch.txt      (R 4.2.2, spc 0.6.7)
library(spc)
cat("normal_cusum: limit shift arl\n")
for (h in c(4, 5)) for (mu in c(0, .25, .5, .75, 1, 1.5, 2, 3))
  cat(h, mu, sprintf("%.10g", xcusum.arl(.5, h, mu, sided = "one", r = 100)), "\n")
cat("normal_cusum_two: limit shift arl\n")
for (h in c(4, 5)) for (mu in c(0, 1))
  cat(h, mu, sprintf("%.10g", xcusum.arl(.5, h, mu, sided = "two", r = 100)), "\n")
cat("normal_ewma: weight shift arl\n")
for (l in c(.1, .2)) for (mu in c(0, .5, 1))
  cat(l, mu, sprintf("%.10g", xewma.arl(l, 2.7, mu, sided = "two", r = 60)), "\n")
cat("bernoulli_cusum: score limit failing arl\n")
arl <- function(score, limit, p) {
  P <- matrix(0, limit, limit)
  for (s in 0:(limit - 1)) {
    P[s + 1, max(0, s - 1) + 1] <- P[s + 1, max(0, s - 1) + 1] + 1 - p
    if (s + score < limit) P[s + 1, s + score + 1] <- P[s + 1, s + score + 1] + p
  }
  solve(diag(limit) - P, rep(1, limit))[1]
}
for (score in c(2, 4)) for (limit in c(8, 12)) for (p in c(.1, .2, .3, .5))
  cat(score, limit, p, sprintf("%.8g", arl(score, limit, p)), "\n")
cat("grafts_for_order: trees take correlation assurance grafts\n")
atleast <- function(N, n, p, icc) {
  if (icc == 0) return(pbinom(N - 1, n, p, lower.tail = FALSE))
  a <- p * (1 - icc) / icc; b <- (1 - p) * (1 - icc) / icc; k <- N:n
  sum(exp(lchoose(n, k) + lbeta(a + k, b + n - k) - lbeta(a, b)))
}
for (N in c(20, 100)) for (p in c(.5, .75, .9)) for (icc in c(0, .01, .02, .05))
  for (g in c(.8, .9)) { n <- N; while (atleast(N, n, p, icc) < g) n <- n + 1
    cat(N, p, icc, g, n, "\n") }
