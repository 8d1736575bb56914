#!/usr/bin/env bash
# Installs what is missing, builds Halfdrop and opens the bench. Where there is no display it performs a level
# off-screen instead and leaves pictures, the attempt and the marks in .out/.
#   bash game/play.sh [--no-install] [LEVEL and other arguments of halfdrop]
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
# shellcheck source=game/setup.sh
source "$root/game/setup.sh"

# True when an X server answers to DISPLAY; a local one has a socket, one far away is taken at its word.
has_display() {
  local display=${DISPLAY:-}
  [ -n "$display" ] || return 1
  [[ $display =~ ^(unix)?:([0-9]+)(\.[0-9]+)?$ ]] || return 0
  [ -S "/tmp/.X11-unix/X${BASH_REMATCH[2]}" ] || grep -qs "@/tmp/.X11-unix/X${BASH_REMATCH[2]}\$" /proc/net/unix
}

off_screen() { xvfb-run -a -s "-screen 0 1920x1080x24" "$@"; }

# The tick of the last line of an attempt, in whole seconds.
length_in_seconds() {
  local tick
  tick=$(tail -n 1 "$1" | sed -n 's/.*"tick": *\([0-9]*\).*/\1/p')
  say $((${tick:?the attempt has no end} / 240))
}

demonstrate() {
  local out=$root/.out attempt seconds percent at size
  attempt=$out/demonstration.jsonl
  mkdir -p "$out" && rm -f "$out"/bench-*.png
  say "There is no display here: performing a level off-screen."
  "$programs/halfdrop-desk" perform "$root/levels/01-spirit-vinegar.json" --seed 7 --out "$attempt"
  "$programs/halfdrop-desk" mark "$attempt" >"$out/marks.txt"
  "$programs/halfdrop-desk" mark "$attempt" --json >"$out/marks.json"
  seconds=$(length_in_seconds "$attempt")
  for percent in 10 35 60 85 100; do
    at=$((seconds * percent / 100))
    for size in 1280x720 1920x1080; do
      off_screen "$programs/halfdrop" --picture "$out/bench-${at}s-$size.png" "$attempt" --at "$at" --size "$size"
    done
  done
  say "In $out:"
  say "  demonstration.jsonl   the attempt: every movement of the hands"
  say "  marks.txt, marks.json its marks, with the titres and where their errors came from"
  say "  bench-*.png           the bench at five moments, in two sizes"
}

install=yes
if [ "${1:-}" = --no-install ]; then
  install=no
  shift
fi
needed=("${play_packages[@]}")
has_display || needed+=("${off_screen_packages[@]}")
provide "$install" "${needed[@]}" || exit 1

programs=$root/.build/play
build "$root" "$programs" -DCMAKE_BUILD_TYPE=Release -DHALFDROP_TESTS=OFF

if has_display; then
  exec "$programs/halfdrop" "$@"
elif [ "${1:-}" = --picture ]; then
  off_screen "$programs/halfdrop" "$@"
else
  [ $# -eq 0 ] || complain "Left aside, for want of a display: $*"
  demonstrate
fi
