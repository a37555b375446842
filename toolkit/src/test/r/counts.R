# Reference values for the tests of answers.counts. R 4.2.2 with its own packages stats and survival.
# Run: Rscript toolkit/src/test/r/counts.R > toolkit/src/test/r/counts.txt
options(digits = 15)
show <- function(name, ...) cat(name, format(c(...), digits = 15), sep = "\n  ", fill = FALSE, "\n")

# one rate
show("wilson 41/50", prop.test(41, 50, correct = FALSE)$conf.int)
show("wilson with continuity 41/50", prop.test(41, 50)$conf.int)
show("clopper-pearson 41/50", binom.test(41, 50)$conf.int)
show("jeffreys 41/50", qbeta(c(.025, .975), 41.5, 9.5))

# two rates: the score interval with both rates fitted by a plain one-dimensional search
score <- function(x1, n1, x2, n2, delta, scaled) {
  ll <- function(p2) dbinom(x1, n1, p2 + delta, log = TRUE) + dbinom(x2, n2, p2, log = TRUE)
  p2 <- optimize(ll, c(max(0, -delta) + 1e-12, min(1, 1 - delta) - 1e-12), maximum = TRUE, tol = 1e-12)$maximum
  p1 <- p2 + delta
  v <- p1 * (1 - p1) / n1 + p2 * (1 - p2) / n2
  if (scaled) v <- v * (n1 + n2) / (n1 + n2 - 1)
  (x1 / n1 - x2 / n2 - delta) / sqrt(v)
}
limits <- function(x1, n1, x2, n2, scaled) {
  d <- x1 / n1 - x2 / n2; z <- qnorm(.975)
  c(uniroot(function(t) score(x1, n1, x2, n2, t, scaled) - z, c(-1 + 1e-9, d), tol = 1e-12)$root,
    uniroot(function(t) score(x1, n1, x2, n2, t, scaled) + z, c(d, 1 - 1e-9), tol = 1e-12)$root)
}
show("mee 41/50 - 33/48", limits(41, 50, 33, 48, FALSE))
show("miettinen-nurminen 41/50 - 33/48", limits(41, 50, 33, 48, TRUE))
wilson <- function(x, n) prop.test(x, n, correct = FALSE)$conf.int
show("newcombe 41/50 - 33/48", local({
  a <- wilson(41, 50); b <- wilson(33, 48); d <- 41 / 50 - 33 / 48
  c(d - sqrt((41 / 50 - a[1])^2 + (b[2] - 33 / 48)^2), d + sqrt((a[2] - 41 / 50)^2 + (33 / 48 - b[1])^2))
}))
show("agresti-caffo 41/50 - 33/48", local({
  p <- c(42 / 52, 34 / 50); s <- sqrt(sum(p * (1 - p) / c(52, 50)))
  p[1] - p[2] + c(-1, 1) * qnorm(.975) * s
}))

# strata, two of them without information
t3 <- array(c(12, 5, 8, 15,  7, 9, 3, 11,  4, 6, 0, 0,  0, 0, 3, 9,  2, 1, 6, 8), c(2, 2, 5))
m <- mantelhaen.test(t3[, , c(1, 2, 5)], correct = FALSE)
show("mantel-haenszel of three of five strata", m$statistic, m$p.value, m$estimate, m$conf.int)

# two- and three-way tables
x <- rbind(c(12, 3, 0), c(5, 9, 4)); k <- suppressWarnings(chisq.test(x, correct = FALSE))
show("chisq.test of 2 x 3", k$statistic, k$p.value, 2 * sum((x * log(x / k$expected))[x > 0]))
show("fisher.test of 12/20 and 5/20", fisher.test(rbind(c(12, 8), c(5, 15)))$p.value)
y <- aperm(array(c(12, 8, 3, 9, 0, 7, 5, 15, 9, 11, 4, 2), c(2, 3, 2)), c(3, 2, 1)) # row, column, layer
alike <- loglin(y, list(c(1, 2), c(1, 3), c(2, 3)), eps = 1e-13, iter = 10000, print = FALSE)
apart <- loglin(y, list(1, 2, 3), eps = 1e-13, print = FALSE)
show("loglin without three-way: lr, pearson, df; independence: lr, df", alike$lrt, alike$pearson, alike$df, apart$lrt, apart$df)

# survival after the take: 3 rootstocks within 2 cultivars; day, lost, grafts
library(survival)
w <- read.table(header = TRUE, text = "
stock cultivar day lost grafts
A Orrin 60 1 3
A Orrin 120 1 1
A Orrin 120 0 4
A Orrin 360 0 12
B Orrin 60 1 1
B Orrin 200 0 2
B Orrin 360 1 1
B Orrin 360 0 9
C Orrin 60 1 6
C Orrin 120 1 5
C Orrin 360 0 3
A Talla 60 1 2
A Talla 360 0 10
B Talla 120 1 4
B Talla 360 0 8
C Talla 90 1 3
C Talla 360 0 7
")
long <- w[rep(seq_len(nrow(w)), w$grafts), ]
show("log-rank, 3 stocks", survdiff(Surv(day, lost) ~ stock, long)$chisq)
d <- survdiff(Surv(day, lost) ~ stock + strata(cultivar), long)
show("stratified log-rank, expected", d$chisq, rowSums(d$exp))
show("Peto-Peto stratified", survdiff(Surv(day, lost) ~ stock + strata(cultivar), long, rho = 1)$chisq)
s <- summary(survfit(Surv(day, lost) ~ 1, long, conf.type = "log-log"))
show("all: alive, se, lower, upper at 60 90 120 360", s$surv, s$std.err, s$lower, s$upper)
c2 <- survfit(Surv(day, lost) ~ 1, long[long$stock == "C", ], conf.type = "log-log")
show("stock C: median, lower, upper", quantile(c2, 0.5)$quantile, quantile(c2, 0.5)$lower, quantile(c2, 0.5)$upper)
two <- long[long$stock != "B", ]; two$first <- as.numeric(two$stock == "C")
for (ties in c("breslow", "efron", "exact")) {
  m <- coxph(Surv(day, lost) ~ first + strata(cultivar), two, ties = ties, control = coxph.control(eps = 1e-12))
  show(paste("Cox, C against A within cultivars,", ties), coef(m), sqrt(vcov(m)))
}
show("7 losses in 520 days: exact Poisson limits per day", poisson.test(7, 520)$conf.int)

# grouped-time hazard of the same grafts: periods end at days 60, 120, 360; C and B against A, Talla against Orrin
ends <- c(60, 120, 360)
pp <- do.call(rbind, lapply(seq_len(nrow(w)), function(i) {
  last <- findInterval(w$day[i], ends, left.open = TRUE) + 1          # period in which the day lies
  whole <- if (w$lost[i] == 1) last else sum(ends <= w$day[i])       # periods gone through whole
  if (whole == 0) return(NULL)
  data.frame(w[i, c("stock", "cultivar", "grafts")], period = seq_len(whole), lost = c(rep(0, whole - 1), w$lost[i]))
}))
m <- glm(lost ~ 0 + factor(period) + stock + cultivar, binomial("cloglog"), pp, weights = grafts, epsilon = 1e-14, maxit = 100)
ll <- function(theta) { e <- as.vector(model.matrix(m) %*% theta); sum(pp$grafts * ifelse(pp$lost == 1, log(-expm1(-exp(e))), -exp(e))) }
h <- optimHess(coef(m), ll, control = list(ndeps = rep(1e-4, length(coef(m)))))
show("cloglog B, C, Talla; observed-information se; log likelihood", coef(m)[4:6], sqrt(diag(solve(-h)))[4:6], ll(coef(m)))
