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
if grep -rnE '#include "sim/(specimen|reaction)/|#include "engine/(scenario/scenario|scenario/specimen|practice/|desk/(exhibit|practice_impl|desk_impl|exam_run)|reception/(book|bottles|day|delivery|facts|judge))' engine/render engine/window; then
  complain "engine/render and engine/window must not see the specimen's truth."
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
