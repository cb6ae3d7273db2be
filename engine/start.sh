#!/bin/sh
# Sets up, builds and opens the bench. Without a display it plays the worked example off-screen instead, and leaves its
# pictures and its scored report in build/worked-example.
set -eu
cd "$(dirname "$0")/.."

sh engine/setup.sh
cmake --preset release >/dev/null
cmake --build --preset release --target matula -- -j2
matula=build/release/matula

if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  exec "$matula" "$@"
fi

echo "No display: playing the worked example."
out=build/worked-example
mkdir -p "$out"
case=scenarios/first_case.toml
steps=scenarios/first_case.steps.jsonl
"$matula" picture "$case" "$steps" -o "$out/bench.png" --size 1280x800
"$matula" play "$case" "$steps" >"$out/report.txt"
"$matula" play "$case" "$steps" --json >"$out/report.json"
echo "Picture of the bench:  $PWD/$out/bench.png"
echo "Scored report:         $PWD/$out/report.txt  (as data: report.json)"
