# Rscript fit.R lme4|glmmTMB FILE: fits the benchmark's model to the benchmark's records, equal rows
# joined, and prints: log-likelihood of single grafts, CPU seconds and wall seconds of the fit alone.
a <- commandArgs(TRUE)
suppressPackageStartupMessages({library(data.table); library(a[1], character.only = TRUE)})
d <- fread(a[2], showProgress = FALSE)
d[, storage_days := as.integer(graft_date) - as.integer(budwood_cut_date)]
levels_of <- list(bud_stage = c("dormant", "swelling", "flushed"), stock_condition = c("healthy", "weak"),
  cambium_match = c("both-sides", "one-side", "centred"), tool_hygiene = c("alcohol", "bleach", "none"),
  method = c("cleft", "side-veneer", "whip-and-tongue", "chip-bud"))
by <- c(names(levels_of), "storage_days", "cultivar", "rootstock", "grafter", "site", "season")
d <- d[, .(taken = sum(outcome == "taken"), n = .N), by = by]
for (v in names(levels_of)) set(d, j = v, value = factor(d[[v]], levels = levels_of[[v]]))
for (v in c("cultivar", "rootstock", "grafter", "site", "season")) set(d, j = v, value = factor(d[[v]]))
f <- cbind(taken, n - taken) ~ bud_stage + storage_days + stock_condition + cambium_match + tool_hygiene + method +
  (1 | cultivar) + (1 | rootstock) + (1 | cultivar:rootstock) + (1 | grafter) + (1 | site) + (1 | season)
t <- system.time(m <- suppressMessages(suppressWarnings(
  if (a[1] == "lme4") glmer(f, d, binomial) else glmmTMB(f, d, binomial))))
cat(sprintf("%.6f %.3f %.3f\n", as.numeric(logLik(m)) - sum(lchoose(d$n, d$taken)),
            t[["user.self"]] + t[["sys.self"]], t[["elapsed"]]))
