#!/bin/sh
# Every source file is laid out as .clang-format says; `sh tests/tidy.sh fix` does it.
set -eu
cd "$(dirname "$0")/../.."
find sim engine tests -name '*.?pp' -print0 | xargs -0 clang-format-14 --dry-run --Werror
