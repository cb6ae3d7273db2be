#!/bin/sh
# Keeps the walls of the house: who may include whom, and what may stand at the top level.
set -eu
cd "$(dirname "$0")/../.."
failed=0

complain() {
  echo "$1" >&2
  failed=1
}

if grep -rnE '#include "engine/' sim; then
  complain "sim/ must not include engine/."
fi
if grep -rnE '#include <(filesystem|fstream|chrono|random|thread|iostream)>' sim; then
  complain "sim/ is pure: no files, clocks, threads or library random numbers."
fi
if grep -rnE '#include "sim/(specimen|reaction)/|#include "engine/(scenario/scenario|scenario/specimen|practice/|classroom/(recording|charge|line_words)|desk/(exhibit|practice_impl|desk_impl|exam_run)|reception/(book|bottles|day|delivery|facts|judge))' engine/render engine/window; then
  complain "engine/render and engine/window must not see the specimen's truth."
fi
# The author's own screens see the truth, through what drafting hands out; no learner's screen does, and what it hands out
# brings no part of the truth's own types along.
if grep -rnE '#include "engine/(author|drafting)/' engine/window engine/render |
  grep -vE '^engine/window/author_[a-z]+\.[ch]pp:[0-9]+:#include "engine/drafting/(studio|row|seen|store)\.hpp"'; then
  complain "Only the screens named author_* work with engine/drafting, and through its studio alone."
fi
if grep -nE '#include "(sim/(specimen|reaction)|engine/(author|scenario/(scenario|specimen)))' \
  engine/drafting/studio.hpp engine/drafting/row.hpp engine/drafting/seen.hpp engine/drafting/store.hpp; then
  complain "What engine/drafting shows to the window must not bring the specimen's truth along."
fi
if grep -rlE '#include "engine/window/author_view' engine/window | grep -vE '^engine/window/author_'; then
  complain "No learner's screen may look into the author's."
fi
if grep -rnE '#include "engine/(scenario|sitting|examination|desk|command)/' engine/seal | grep -v scenario/problem; then
  complain "engine/seal closes and signs; what it closes is no concern of it."
fi
if grep -rniE 'tamper-?proof|cheat-?proof' sim engine docs assets; then
  complain "Nothing here is tamper-proof: say what is detected."
fi
if grep -rnE 'STB_[A-Z_]+_IMPLEMENTATION' sim engine tests --include=*.cpp --include=*.hpp; then
  complain "Library code comes from packages."
fi

extra=$(git ls-files 2>/dev/null | sed 's,/.*,,' | sort -u |
  grep -vxE 'CMakeLists.txt|README.md|DEVELOPERS.md|LICENSE|CMakePresets.json|sim|scenarios|assets|engine|tests|docs|\..*' || true)
[ -z "$extra" ] || complain "Not at the top level: $extra"

exit $failed
