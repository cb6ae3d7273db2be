#!/bin/sh
# Checks layout and lint of every source file; run after a dev build. `sh tests/tidy.sh fix` rewrites the layout.
set -eu
cd "$(dirname "$0")/.."

sources=$(git ls-files 'sim/*.?pp' 'engine/*.?pp' 'tests/*.?pp')
if [ "${1:-}" = fix ]; then
  echo "$sources" | xargs clang-format-14 -i
  exit 0
fi
echo "$sources" | xargs clang-format-14 --dry-run --Werror
git ls-files 'sim/*.cpp' 'engine/*.cpp' |
  xargs -P 2 -n 4 clang-tidy-14 --quiet --extra-arg=-Wno-unknown-warning-option -p "${MATULA_BUILD:-build/dev}"
