# The lines of some learners by ordinal::clm, for statistics_speed. Prints "clm CPU_S LEARNERS FAILED".
suppressMessages(library(ordinal))
folder <- commandArgs(TRUE)[1]
sizes <- scan(file.path(folder, "sizes.txt"), quiet = TRUE)
n <- sizes[1]
learners <- sizes[4]
x <- readBin(file.path(folder, "intensity.f64"), "double", n * learners)
y <- readBin(file.path(folder, "grade.u8"), "integer", n * learners, size = 1, signed = FALSE)
failed <- 0
begin <- proc.time()
for (i in seq_len(learners)) {
  at <- (i - 1) * n + seq_len(n)
  grade <- factor(y[at])
  intensity <- x[at]
  found <- tryCatch(suppressWarnings(coef(clm(grade ~ intensity, link = "probit"))), error = function(e) NULL)
  # A grade that was never read has no lines of its own; then there are fewer.
  failed <- failed + (is.null(found) || length(found) != 6)
}
took <- proc.time() - begin
cat("clm", took[["user.self"]] + took[["sys.self"]], learners, failed, "\n")
