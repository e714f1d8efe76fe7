# Regenerates tests/golden/cases/agreement/outside.json: random tables with the values that R packages give for them.
# Debian 12: R 4.2.2, vcd 1.4-11 (Kappa), psych 2.2.9 (ICC), eRm 1.0-2 (RM, person.parameter).
#   Rscript tests/golden/agreement/make-outside.R > tests/golden/cases/agreement/outside.json
suppressMessages({ library(vcd); library(psych); library(eRm) })
set.seed(20260101)

num <- function(x) paste0("[", paste(ifelse(is.na(x), "null", format(x, digits = 12, trim = TRUE)), collapse = ", "), "]")
rows <- function(m) paste0("[", paste(apply(m, 1, num), collapse = ", "), "]")

make_kappa <- function(q, n) {
  shares <- matrix(runif(q * q), q); diag(shares) <- diag(shares) + q / 2
  m <- matrix(rmultinom(1, n, shares), q)
  linear <- Kappa(m, weights = "Equal-Spacing"); square <- Kappa(m, weights = "Fleiss-Cohen")
  sprintf('{ "table": %s, "unweighted": %s, "linear": %s, "quadratic": %s }', rows(m),
          num(linear$Unweighted), num(linear$Weighted), num(square$Weighted))
}

make_icc <- function(n, k) {
  m <- matrix(sample(0:9, n * k, replace = TRUE), n) %/% 2 + rep(sample(0:5, n, replace = TRUE), k)
  r <- suppressWarnings(ICC(m, lmer = FALSE))$results
  sprintf('{ "scores": %s, "results": %s }', rows(m),
          rows(as.matrix(r[, c("ICC", "lower bound", "upper bound")])))
}

make_rasch <- function(persons, items, missing) {
  easiness <- rnorm(items); ability <- rnorm(persons)
  x <- matrix(rbinom(persons * items, 1, plogis(outer(ability, easiness, "+"))), persons)
  # Answers are missing by design: two forms, each without its own last or first items.
  if (missing > 0) {
    odd <- seq(1, persons, 2)
    x[odd, seq_len(missing)] <- NA
    x[-odd, items - seq_len(missing) + 1] <- NA
  }
  fit <- RM(x, sum0 = TRUE)
  sprintf('{ "answers": %s,\n      "easiness": %s, "errors": %s, "logLikelihood": %s }', rows(x),
          num(unname(fit$betapar)), num(fit$se.beta), format(fit$loglik, digits = 12))
}

cat('{\n  "made": "R 4.2.2 with vcd 1.4-11, psych 2.2.9, eRm 1.0-2; see make-outside.R",\n')
cat('  "kappa": [\n    ', paste(mapply(make_kappa, c(2, 3, 5, 10, 4, 6), c(30, 60, 200, 1000, 25, 500)), collapse = ",\n    "), "\n  ],\n", sep = "")
cat('  "icc": [\n    ', paste(mapply(make_icc, c(5, 10, 20, 8, 40), c(2, 3, 4, 6, 2)), collapse = ",\n    "), "\n  ],\n", sep = "")
cat('  "rasch": [\n    ', paste(mapply(make_rasch, c(100, 200, 300), c(6, 8, 10), c(0, 0, 3)), collapse = ",\n    "), "\n  ]\n}\n", sep = "")
