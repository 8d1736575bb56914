#!/usr/bin/env bash
# Runs clang-tidy over physics/ and game/ with the compile commands of BUILD; fails on any finding.
#   bash tests/support/tidy.sh BUILD [FILE...]
set -euo pipefail
build=$(cd "$1" && pwd)
shift
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
if [ $# -gt 0 ]; then
  files=("$@")
else
  mapfile -t files < <(find physics game -name '*.cpp' -not -path 'game/scenes/*' | sort)
fi
printf '%s\0' "${files[@]}" |
  xargs -0 -n 1 -P 2 clang-tidy-16 -p "$build" --quiet --warnings-as-errors='*'
