# Ranks of the twelve hospitals of the OpenBUGS manual's example Surgical (logit-normal, tau ~ Gamma(0.001, 0.001)),
# by exact sampling: mean and spread from a grid of their posterior, each hospital from its own one-dimensional grid.
# Run: Rscript toolkit/src/test/r/surgical-ranks.R > toolkit/src/test/r/surgical-ranks.txt   (about a minute)
d <- read.csv("toolkit/src/test/resources/checks/surgical.csv")
r <- d$deaths; n <- d$operations; hospitals <- nrow(d)
set.seed(1)
draws <- 600000
mu <- seq(-3.5, -1.6, length = 120)
sigma <- exp(seq(log(0.01), log(2.5), length = 140))
z <- seq(-6, 6, length = 401)
logWeights <- function(i, k, j) { eta <- mu[k] + sigma[j] * z; r[i] * eta - n[i] * log1p(exp(eta)) - z^2 / 2 }
logPosterior <- matrix(0, length(mu), length(sigma))
for (j in seq_along(sigma)) for (k in seq_along(mu)) for (i in seq_len(hospitals)) {
  w <- logWeights(i, k, j)
  logPosterior[k, j] <- logPosterior[k, j] + max(w) + log(sum(exp(w - max(w))))
}
tau <- 1 / sigma^2
logPosterior <- sweep(logPosterior, 2, dgamma(tau, .001, .001, log = TRUE) + log(2 * tau), "+")
cell <- sample(length(logPosterior), draws, TRUE, as.vector(exp(logPosterior - max(logPosterior))))
effect <- matrix(0, draws, hospitals)
for (rows in split(seq_len(draws), cell)) {
  k <- (cell[rows[1]] - 1) %% length(mu) + 1
  j <- (cell[rows[1]] - 1) %/% length(mu) + 1
  for (i in seq_len(hospitals)) {
    w <- logWeights(i, k, j)
    step <- z[2] - z[1]
    effect[rows, i] <- mu[k] + sigma[j] * (sample(z, length(rows), TRUE, exp(w - max(w))) + runif(length(rows), -step / 2, step / 2))
  }
}
rank <- t(apply(effect, 1, rank, ties.method = "first"))
print(data.frame(hospital = d$hospital, mean = round(colMeans(rank), 3), low = apply(rank, 2, quantile, .025, type = 1),
                 high = apply(rank, 2, quantile, .975, type = 1), six_or_better = round(colMeans(rank <= 6), 4)), row.names = FALSE)
