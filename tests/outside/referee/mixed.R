# SPDX-License-Identifier: GPL-3.0-or-later
# Mixed models by lme4, lmerTest and nlme: writes mixed.csv (what,name,value) beside itself.
# Debian 12: r-base-core, r-cran-nlme, r-cran-lme4, r-cran-lmertest. Run: Rscript tests/outside/referee/mixed.R
suppressMessages({library(lme4); library(lmerTest); library(nlme)})
here <- dirname(sub("--file=", "", grep("--file=", commandArgs(FALSE), value = TRUE)))
out <- c(commandArgs(TRUE), here)[1]  # another folder may be named
table <- function(name) read.csv(file.path(here, "../data/r-tables", paste0(name, ".csv")), stringsAsFactors = TRUE)
rows <- list()
put <- function(what, name, value) rows[[length(rows) + 1]] <<- data.frame(what, name, value = sprintf("%.12g", value))
# Digits beyond the defaults, so that a difference is ours and not the optimiser's.
tight <- lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-12, maxfun = 1e6), calc.derivs = FALSE,
                     check.conv.singular = "ignore")
report <- function(what, model) {
  put(what, "logLik", as.numeric(logLik(model)))
  put(what, "residual", sigma(model))
  G <- VarCorr(model)[[1]]
  put(what, "G00", G[1, 1])
  if (nrow(G) == 2) { put(what, "G01", G[1, 2]); put(what, "G11", G[2, 2]) }
  V <- as.matrix(vcov(model))
  b <- fixef(model)
  for (i in seq_along(b)) {
    put(what, paste0("beta", i), b[i])
    put(what, paste0("se", i), sqrt(V[i, i]))
  }
}
satterthwaite <- function(what, model) {
  s <- coef(summary(model, ddf = "Satterthwaite"))
  for (i in seq_len(nrow(s))) {
    put(what, paste0("df", i), s[i, "df"]); put(what, paste0("t", i), s[i, "t value"]); put(what, paste0("p", i), s[i, "Pr(>|t|)"])
  }
}
both <- function(what, formula, data) {
  reml <- lmer(formula, data, control = tight)
  report(paste0(what, " reml"), reml)
  satterthwaite(paste0(what, " reml"), reml)
  report(paste0(what, " ml"), lmer(formula, data, REML = FALSE, control = tight))
  invisible(reml)
}
chicks <- table("ChickWeight"); chicks$Diet <- factor(chicks$Diet); chicks$Chick <- factor(chicks$Chick)
children <- table("Orthodont"); children$Sex <- factor(children$Sex, levels = c("Male", "Female"))
pines <- table("Loblolly"); pines$Seed <- factor(pines$Seed)
trees <- table("Orange"); trees$Tree <- factor(trees$Tree)

fed <- both("chicks", weight ~ Time * Diet + (1 + Time | Chick), chicks)
f <- anova(fed, ddf = "Satterthwaite")["Time:Diet", ]
put("chicks reml", "F", f[["F value"]]); put("chicks reml", "Fdf", f[["DenDF"]]); put("chicks reml", "Fp", f[["Pr(>F)"]])
first <- rownames(ranef(fed)$Chick)
for (k in c("1", "18", "50")) {
  put("chicks blup", paste0("b0 ", k), ranef(fed)$Chick[k, 1]); put("chicks blup", paste0("b1 ", k), ranef(fed)$Chick[k, 2])
}
both("chicks log", log(weight) ~ Time * Diet + (1 + Time | Chick), chicks)
both("children", distance ~ age * Sex + (1 + age | Subject), children)
both("children intercept", distance ~ age * Sex + (1 | Subject), children)
both("pines root", height ~ sqrt(age) + (1 | Seed), pines)
both("pines root slope", height ~ sqrt(age) + (1 + sqrt(age) | Seed), pines)
both("pines log", height ~ log(age) + (1 | Seed), pines)
both("trees", circumference ~ age + (1 + age | Tree), trees)
# Weights: the variance of a value is sigma^2/weight.
children$w <- 1 / (children$age / 8)^2
w <- lmer(distance ~ age * Sex + (1 + age | Subject), children, weights = w, control = tight)
report("children weighted reml", w); satterthwaite("children weighted reml", w)
report("children weighted ml", lmer(distance ~ age * Sex + (1 + age | Subject), children, weights = w, REML = FALSE, control = tight))
# A second program: nlme's own likelihood, by its own optimiser.
n <- lme(distance ~ age * Sex, random = ~ age | Subject, children,
         control = lmeControl(opt = "optim", tolerance = 1e-12, msTol = 1e-12, niterEM = 200, reltol = 1e-14))
put("nlme children", "logLik", as.numeric(logLik(n)))
put("nlme children", "residual", n$sigma)
for (i in 1:4) { put("nlme children", paste0("beta", i), fixef(n)[i]); put("nlme children", paste0("se", i), sqrt(vcov(n)[i, i])) }
write.csv(do.call(rbind, rows), file.path(out, "mixed.csv"), row.names = FALSE, quote = FALSE)
