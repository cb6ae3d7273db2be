#!/bin/sh
# Runs the commands of DEVELOPERS.md as a developer would, in the build folder given. Configuring and building are left to
# the caller: only the blocks that do not start with cmake run here.
set -eu
build=$1
cd "$(dirname "$0")/../.."

script=$(awk '/^```sh$/ {on = 1; next} /^```$/ {on = 0} on && !/^cmake/ && !/^ctest/' DEVELOPERS.md | sed "s,build/dev,$build,g")
[ -n "$script" ] || { echo "DEVELOPERS.md holds no commands" >&2; exit 1; }
echo "$script" | while IFS= read -r line; do
  echo "+ $line"
  sh -c "$line" >/dev/null || { echo "failed: $line" >&2; exit 1; }
done
