#!/bin/sh
# Marks a blind reading: mark.sh KEY ANSWERS. KEY has lines "picture concentration grade", ANSWERS lines "picture grade".
# Prints the table of truth against answer, the share exactly right, right by grade, and the quadratic weighted kappa
# (Cohen 1968, disagreement (i-j)^2).
set -eu
awk '
  BEGIN { n = split("negative trace 1+ 2+ 3+ 4+", word, " "); for (i = 1; i <= n; i++) at[word[i]] = i }
  NR == FNR { truth[$1] = $3; next }
  $1 in truth {
    if (!($2 in at)) { print "unknown grade: " $0 > "/dev/stderr"; bad = 1; exit 1 }
    t = at[truth[$1]]; a = at[$2]; count[t, a]++; row[t]++; col[a]++; all++; if (t == a) right++
  }
  END {
    if (bad) exit 1
    printf "truth\\read"; for (i = 1; i <= n; i++) printf "\t%s", word[i]; print ""
    for (i = 1; i <= n; i++) {
      printf "%s", word[i]; for (j = 1; j <= n; j++) printf "\t%d", count[i, j]
      if (row[i]) printf "\t%d of %d", count[i, i], row[i]; print ""
    }
    for (i = 1; i <= n; i++) for (j = 1; j <= n; j++) {
      d = (i - j) ^ 2; seen += d * count[i, j]; chance += d * row[i] * col[j] / all
    }
    printf "exactly right: %d of %d (%.0f %%)\nquadratic weighted kappa: %.3f\n", right, all, 100 * right / all, 1 - seen / chance
  }' "$1" "$2"
