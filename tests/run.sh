#!/bin/sh
# Sets up, builds and runs every test. Exits non-zero on any failure. `sh tests/run.sh asan` runs them under sanitizers.
set -eu
cd "$(dirname "$0")/.."

sh engine/setup.sh
preset=${1:-dev}
cmake --preset "$preset" >/dev/null
cmake --build --preset "$preset" -- -j2
ctest --test-dir "build/$preset" --output-on-failure -j2
