# The random cases of statistics_cases by vcd and ordinal. Exit 77: one of them is missing.
for (package in c("vcd", "ordinal")) {
  if (!suppressWarnings(suppressMessages(require(package, character.only = TRUE, quietly = TRUE)))) {
    cat("skipped: no R package", package, "\n")
    quit(status = 77)
  }
}
worst <- c()
failed <- FALSE
close_to <- function(what, ours, theirs, within) {
  off <- max(abs(ours - theirs))
  worst[what] <<- max(worst[what], off, na.rm = TRUE)
  if (!isTRUE(off <= within)) {
    cat(what, ": ours", ours, "theirs", theirs, "\n")
    failed <<- TRUE
  }
}
for (row in system2(commandArgs(TRUE)[1], stdout = TRUE)) {
  halves <- strsplit(row, " =", fixed = TRUE)[[1]]
  words <- strsplit(halves[1], " ")[[1]]
  ours <- scan(text = halves[2], quiet = TRUE)
  data <- suppressWarnings(as.numeric(words[-1]))
  if (words[1] == "kappa") {
    table <- matrix(data[-1], data[1], byrow = TRUE)
    linear <- Kappa(table, weights = "Equal-Spacing")
    quadratic <- Kappa(table, weights = "Fleiss-Cohen")
    close_to("kappa, vcd", ours, c(linear$Unweighted, linear$Weighted, quadratic$Weighted), 1e-10)
  } else if (words[1] == "likely") {
    x <- data[-1][c(TRUE, FALSE)]
    y <- factor(data[-1][c(FALSE, TRUE)], levels = 0:5)
    if (any(table(y) == 0)) next # clm would drop the lines of a grade nobody gave.
    found <- clm(y ~ x, link = "probit", control = clm.control(gradTol = 1e-9))
    spread <- 1 / coef(found)[["x"]]
    close_to("lines, ordinal", ours[1:6], c(found$alpha * spread, spread), 1e-5)
    close_to("log likelihood, ordinal", ours[7], as.numeric(logLik(found)), 1e-8)
  }
}
print(signif(worst, 2))
quit(status = if (failed || length(worst) < 3) 1 else 0)
