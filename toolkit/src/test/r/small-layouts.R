# Reference fits of 50 small layouts by lme4 and glmmTMB at tight tolerance.
#   Rscript small-layouts.R small-layouts.csv small-layouts-fits.csv
# in:  layout,cultivar,rootstock,grafter,storage_days,grafts,takes (written by SmallLayoutsReferenceTest)
# out: layout,model,package,log_likelihood (of counts),term,value; empty value where it can't be had
suppressMessages({library(lme4); library(glmmTMB)})
args <- commandArgs(TRUE)
d <- read.csv(args[1], stringsAsFactors = TRUE)
d$pairing <- interaction(d$cultivar, d$rootstock, drop = TRUE)
models <- list(
  "cultivar grafter" = cbind(takes, grafts - takes) ~ storage_days + (1 | cultivar) + (1 | grafter),
  "cultivar pairing" = cbind(takes, grafts - takes) ~ storage_days + (1 | cultivar) + (1 | pairing))
out <- list()
add <- function(...) out[[length(out) + 1]] <<- data.frame(...)
keep <- function(layout, model, package, ll, fixed, sds) {
  value <- c(fixed, sds)
  add(layout = layout, model = model, package = package, log_likelihood = sprintf("%.10g", ll),
      term = c(names(fixed), paste0("sd ", names(sds))), value = sprintf("%.10g", value))
}
best <- function(fits, value) {
  fits <- Filter(Negate(is.null), fits)
  if (length(fits) == 0) NULL else fits[[which.max(sapply(fits, value))]]
}
quiet <- function(expr) tryCatch(suppressMessages(suppressWarnings(expr)), error = function(e) NULL)
for (layout in unique(d$layout)) {
  rows <- droplevels(d[d$layout == layout, ])
  for (model in names(models)) {
    start <- list(c(0.5, 0.5), c(1.5, 0.01), c(0.01, 1.5))
    tight <- glmerControl(optimizer = "bobyqa", tolPwrss = 1e-13, calc.derivs = FALSE,
      check.nobs.vs.nlev = "ignore", check.nobs.vs.nRE = "ignore", check.nlev.gtreq.5 = "ignore",
      optCtrl = list(rhobeg = 0.2, rhoend = 1e-9, maxfun = 1e5))
    fits <- lapply(start, function(theta)
      quiet(glmer(models[[model]], rows, binomial, control = tight, start = list(theta = theta))))
    f <- best(fits, function(f) as.numeric(logLik(f)))
    if (!is.null(f)) {
      sds <- sapply(VarCorr(f), function(v) attr(v, "stddev"))
      keep(layout, model, "lme4", as.numeric(logLik(f)), fixef(f), setNames(sds, names(VarCorr(f))))
    }
    tight <- glmmTMBControl(optCtrl = list(iter.max = 1e4, eval.max = 1e4, rel.tol = 1e-14, x.tol = 1e-12))
    fits <- lapply(start, function(theta)
      quiet(glmmTMB(models[[model]], rows, family = binomial, control = tight,
                    start = list(theta = log(theta + 1e-3)))))
    fits <- Filter(function(f) !is.null(f) && is.finite(-f$fit$objective), fits)
    f <- best(fits, function(f) -f$fit$objective)
    if (!is.null(f)) {
      sds <- sapply(VarCorr(f)$cond, function(v) attr(v, "stddev"))
      keep(layout, model, "glmmTMB", -f$fit$objective, fixef(f)$cond, setNames(sds, names(VarCorr(f)$cond)))
    }
  }
}
write.csv(do.call(rbind, out), args[2], row.names = FALSE, quote = FALSE)
cat(R.version.string, "lme4", as.character(packageVersion("lme4")), "glmmTMB", as.character(packageVersion("glmmTMB")), "\n")
