#!/usr/bin/env bash
# Installs what is missing, builds Halfdrop and runs its tests.
#   bash tests/run.sh [--no-install] [--quick | --long]
# --quick: g++ only. --long: also whole plays in every way, half the tick, window and whole attempts in the sanitized
# build, larger property tests, the same bits at other optimisations, benchmarks, and clang-tidy.
set -uo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
# shellcheck source=game/setup.sh
source "$root/game/setup.sh"
# shellcheck source=tests/support/count.sh
source "$root/tests/support/count.sh"

install=yes extent=usual
for argument in "$@"; do
  case $argument in
    --no-install) install=no ;;
    --quick | --long) extent=${argument#--} ;;
    *)
      complain "usage: bash tests/run.sh [--no-install] [--quick | --long]"
      exit 2
      ;;
  esac
done

needed=("${play_packages[@]}" "${off_screen_packages[@]}" "${test_packages[@]}")
[ "$extent" = long ] && needed+=("${long_test_packages[@]}")
provide "$install" "${needed[@]}" || exit 1
[ "$extent" = long ] && export HALFDROP_LONG=1
# Reference packages are installed by now, where packages can be: a test that misses one fails.
command -v dpkg-query >/dev/null && export HALFDROP_REFERENCES=required

builds=$root/.build
performed=$root/.out/performed
rm -rf "$performed" && mkdir -p "$performed"
# The first level with a coarser flask: sanitized, the whole one takes minutes.
level=$performed/01-spirit-vinegar.json
sed '1s/{/{ "flask": { "fineness": 0.25 },/' "$root/levels/01-spirit-vinegar.json" >"$level"

# build_and_test FOLDER CMAKE_OPTION...: one build and the tests in it, on a display of their own.
build_and_test() {
  local folder=$builds/$1
  shift
  count "build of ${folder##*/}" build "$root" "$folder" "$@" || return
  count_ctest xvfb-run -a -s "-screen 0 1920x1080x24" \
    ctest --test-dir "$folder" -C "$extent" -j2 --no-tests=error --output-on-failure --progress
}

# perform BUILD NAME: the same level and seed performed by that build's desk, to compare.
perform() {
  "$builds/$1/halfdrop-desk" perform "$level" --seed 7 --out "$performed/$2.jsonl"
}

same_attempt() { cmp "$performed/$1.jsonl" "$performed/$2.jsonl"; }

# The formatter's own check; what it would change is printed.
formatted() {
  (cd "$root" && find game physics tests -name '*.cpp' -o -name '*.h' | xargs clang-format-14 --dry-run --Werror)
}

stage "the form of the code"
count "clang-format would change nothing" formatted

stage "g++: build and tests"
long_tests=OFF
[ "$extent" = long ] && long_tests=ON
build_and_test test -DCMAKE_BUILD_TYPE=Release -DHALFDROP_LONG_TESTS=$long_tests

stage "g++: the same attempt twice"
count "perform on g++" perform test g++
count "perform on g++ again" perform test g++-again
count "g++ twice: the same bytes, state hash included" same_attempt g++ g++-again

if [ "$extent" != quick ]; then
  sanitized_window=OFF but=" but the window's and attempts by the hundred"  # minutes each: only with --long
  [ "$extent" = long ] && sanitized_window=ON but=
  stage "clang++ with AddressSanitizer, UndefinedBehaviorSanitizer and asserts: build and every test$but"
  build_and_test sanitize -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_COMPILER=clang++-16 -DHALFDROP_SANITIZE=ON \
    -DCMAKE_CXX_FLAGS_DEBUG="-O1 -gline-tables-only -D_GLIBCXX_ASSERTIONS" -DHALFDROP_WINDOW=$sanitized_window

  stage "clang++ against g++"
  count "perform on clang++" perform sanitize clang++
  count "g++ -O3 and clang++ -O1: the same bytes, state hash included" same_attempt g++ clang++
fi

if [ "$extent" = long ]; then
  # same_bytes_from BUILD CXX FLAGS: no precompiled headers here, so a missing include shows.
  same_bytes_from() {
    stage "$1 against g++ -O3"
    count "build of $1" build "$root" "$builds/$1" -DCMAKE_BUILD_TYPE=Release -DCMAKE_CXX_COMPILER="$2" \
      -DCMAKE_CXX_FLAGS_RELEASE="$3 -DNDEBUG" -DHALFDROP_TESTS=OFF -DHALFDROP_PRECOMPILE=OFF
    count "perform on $1" perform "$1" "$1"
    count "$1: the same bytes, state hash included" same_attempt g++ "$1"
  }
  same_bytes_from g++-O0 g++ -O0
  same_bytes_from g++-O2 g++ -O2
  same_bytes_from clang++-O3 clang++-16 -O3

  stage "benchmarks"
  count "benchmarks of pH and colour" "$builds/test/halfdrop_benchmarks"

  stage "clang-tidy"
  count "clang-tidy finds nothing" bash "$root/tests/support/tidy.sh" "$builds/clang++-O3"
fi

stage "Sources of the published checks"
bash "$root/tests/support/list_sources.sh"

finish
