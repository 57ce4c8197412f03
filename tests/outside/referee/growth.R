# SPDX-License-Identifier: GPL-3.0-or-later
# Growth curves (nls), the choice of a group's scale and curve (lme4, AICc), permutation of animals' slopes and the power
# of a t test: writes growth.csv (what,name,value) beside itself.
# Debian 12: r-base-core, r-cran-nlme, r-cran-lme4. Run: Rscript tests/outside/referee/growth.R
suppressMessages(library(lme4))
here <- dirname(sub("--file=", "", grep("--file=", commandArgs(FALSE), value = TRUE)))
out <- c(commandArgs(TRUE), here)[1]  # another folder may be named
table <- function(name) read.csv(file.path(here, "../data/r-tables", paste0(name, ".csv")), stringsAsFactors = TRUE)
rows <- list()
put <- function(what, name, value) rows[[length(rows) + 1]] <<- data.frame(what, name, value = sprintf("%.12g", value))
exact <- nls.control(tol = 1e-7, maxiter = 500, minFactor = 1e-12)
report <- function(what, fit) {
  s <- summary(fit)$coefficients
  for (i in seq_len(nrow(s))) { put(what, rownames(s)[i], s[i, 1]); put(what, paste0("se ", rownames(s)[i]), s[i, 2]) }
  put(what, "sigma", summary(fit)$sigma)
}
trees <- table("Orange"); pines <- table("Loblolly")
report("Orange logistic", nls(circumference ~ A / (1 + exp(-k * (age - ti))), trees, start = list(A = 190, k = 1 / 350, ti = 730), control = exact))
for (tree in 1:5)
  report(paste("Orange logistic", tree), nls(circumference ~ A / (1 + exp(-k * (age - ti))), trees[trees$Tree == tree, ],
         start = list(A = 190, k = 1 / 350, ti = 730), control = exact))
report("Orange gompertz", nls(circumference ~ A * exp(-b * exp(-k * age)), trees, start = list(A = 220, b = 2.5, k = 0.0015), control = exact))
report("Loblolly von-bertalanffy", nls(height ~ L * (1 - exp(-K * (age - t0))), pines, start = list(L = 100, K = 0.04, t0 = 1), control = exact))
report("Loblolly gompertz", nls(height ~ A * exp(-b * exp(-k * age)), pines, start = list(A = 65, b = 3, k = 0.13), control = exact))

# Scale and curve of a group by AICc of the untransformed values, by maximum likelihood.
tight <- lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-12, maxfun = 1e6), calc.derivs = FALSE,
                     check.conv.singular = "ignore")
choice <- function(what, y, age, animal) {
  curves <- list("straight" = age, "square-root" = sqrt(age), "logarithm" = log(age), "quadratic" = age)
  for (scale in c("length", "log-length")) for (curve in names(curves)) {
    d <- data.frame(y = if (scale == "length") y else log(y), u = as.numeric(scale(curves[[curve]])), animal = animal)
    f <- if (curve == "quadratic") y ~ u + I(u^2) + (1 + u | animal) else y ~ u + (1 + u | animal)
    m <- suppressWarnings(lmer(f, d, REML = FALSE, control = tight))
    k <- attr(logLik(m), "df"); n <- nrow(d)
    put(what, paste(scale, curve), -2 * as.numeric(logLik(m)) + 2 * k + 2 * k * (k + 1) / (n - k - 1) + if (scale == "length") 0 else 2 * sum(log(y)))
  }
}
choice("choice Loblolly", pines$height, pines$age, factor(pines$Seed))
choice("choice Orange", trees$circumference, trees$age, factor(trees$Tree))

# Exact permutation of the slopes of eight boys and eight girls, every split; difference of means.
children <- table("Orthodont")
slopes <- sapply(split(children, children$Subject), function(d) coef(lm(distance ~ age, d))[2])
boys <- paste0("M0", 1:8); girls <- paste0("F0", 1:8)
s <- slopes[paste0(c(boys, girls), ".age")]
splits <- combn(16, 8)
away <- abs(colSums(matrix(s[splits], nrow = 8)) - sum(s) / 2)
seen <- abs(sum(s[1:8]) - sum(s) / 2)
put("permutation children", "asExtreme", sum(away >= seen - 1e-9)); put("permutation children", "splits", ncol(splits))
# Chance of a two-sided t test at 5 % to find delta; both tails.
for (n in c(3, 5, 12)) for (delta in c(0.5, 1, 2))
  put("power", paste(n, delta), power.t.test(n = n, delta = delta, sd = 1, strict = TRUE)$power)
put("power", "n for 1.2 at 0.8", power.t.test(delta = 1.2, sd = 1, power = 0.8, strict = TRUE)$n)
write.csv(do.call(rbind, rows), file.path(out, "growth.csv"), row.names = FALSE, quote = FALSE)
