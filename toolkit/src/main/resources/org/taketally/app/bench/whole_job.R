# Rscript whole_job.R FILE: the whole job on the benchmark's records as a careful user of R does it:
# read, count to patterns, fit, test the rootstock by a second fit, pairs of rootstocks on the scale
# of takes, cultivars with their errors, and a fit without each other column. Prints CPU seconds.
suppressMessages({library(data.table); library(glmmTMB); library(emmeans)})
start <- proc.time(); seconds <- function(a, b) sum((b - a)[1:2])
d <- fread(commandArgs(TRUE)[1], showProgress = FALSE)
d[, storage_days := as.integer(as.IDate(graft_date)) - as.integer(as.IDate(budwood_cut_date))]
adjusted <- c("bud_stage", "storage_days", "stock_condition", "cambium_match", "tool_hygiene", "method")
g <- d[, .(taken = sum(outcome == "taken"), n = .N),
       by = c(adjusted, "cultivar", "rootstock", "grafter", "site", "season")]
g[, pairing := interaction(cultivar, rootstock, drop = TRUE)]
g[, season := factor(season)]
quiet <- function(x) suppressMessages(suppressWarnings(x))
f <- cbind(taken, n - taken) ~ bud_stage + storage_days + stock_condition + cambium_match + tool_hygiene +
  method + rootstock + (1 | cultivar) + (1 | pairing) + (1 | grafter) + (1 | site) + (1 | season)
m <- quiet(glmmTMB(f, data = g, family = binomial)); fitted <- proc.time()
test <- anova(quiet(update(m, . ~ . - rootstock)), m); tested <- proc.time()
pairs <- quiet(pairs(regrid(emmeans(m, "rootstock", type = "response", weights = "proportional"))))
compared <- proc.time()
cultivars <- as.data.frame(ranef(m, condVar = TRUE)); ranked <- proc.time()
for (v in adjusted) quiet(update(m, as.formula(paste(". ~ . -", v))))
cat(sprintf("fit %.1f, rootstock test %.1f, pairs %.1f, cultivars %.1f, drop-one %.1f\n",
            seconds(start, fitted), seconds(fitted, tested), seconds(tested, compared),
            seconds(compared, ranked), seconds(ranked, proc.time())))
