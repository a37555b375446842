# Reference values of ProfilesTest: R 4.2.2, lme4 1.1-31, glmmTMB 1.1.5.
suppressMessages({library(lme4); library(glmmTMB)})
m <- glmer(cbind(incidence, size - incidence) ~ period + (1 | herd), cbpp, binomial,
           control = glmerControl(optimizer = "bobyqa", tolPwrss = 1e-12, optCtrl = list(rhoend = 1e-9)))
print(confint(m, method = "profile", devtol = 1e-6), digits = 8)
data(VerbAgg)
v <- VerbAgg
write.csv(data.frame(id = v$id, item = as.integer(v$item), anger = v$Anger, gender = v$Gender, btype = v$btype,
                     situ = v$situ, yes = as.integer(v$r2 == "Y")), "verbagg.csv", row.names = FALSE, quote = FALSE)
f <- glmmTMB(r2 ~ Anger + Gender + btype + situ + (1 | id) + (1 | item), VerbAgg, binomial)
print(logLik(f), digits = 10); print(fixef(f)$cond, digits = 8); print(VarCorr(f), digits = 8)
