# Shared by game/play.sh and tests/run.sh: which Debian packages are needed, how they get here, how we build.
# shellcheck shell=bash disable=SC2034

play_packages=(g++ cmake ninja-build libsfml-dev libx11-dev libbox2d-dev nlohmann-json3-dev libcli11-dev
               libexpected-dev fonts-lato fonts-dejavu-core)
off_screen_packages=(xvfb xauth)
test_packages=(doctest-dev clang-format-14 clang-16 libclang-rt-16-dev python3 python3-iapws xdotool
               colord-data libbenchmark-dev)
long_test_packages=(clang-tidy-16)

say() { printf '%s\n' "$*"; }
complain() { printf '%s\n' "$*" >&2; }

# missing_packages NAME...: prints those that are not installed.
missing_packages() {
  local name
  for name in "$@"; do
    [ "$(dpkg-query -W -f '${db:Status-Status}' "$name" 2>/dev/null)" = installed ] || printf '%s\n' "$name"
  done
}

# as_root COMMAND...: runs it as root; status 126 if there is no way to become root.
as_root() {
  if [ "$(id -u)" -eq 0 ]; then
    "$@"
  elif command -v sudo >/dev/null; then
    sudo "$@"
  else
    return 126
  fi
}

# provide INSTALL NAME...: installs what is missing; with INSTALL=no it only prints the list. Fails if anything stays
# missing.
provide() {
  local install=$1 missing by_hand
  shift
  if ! command -v dpkg-query >/dev/null; then
    complain "This is not a Debian machine, so nothing was checked or installed. Halfdrop needs what Debian 12 calls:"
    complain "  $*"
    return 0
  fi
  mapfile -t missing < <(missing_packages "$@")
  [ ${#missing[@]} -gt 0 ] || return 0
  by_hand="apt-get update && apt-get install --no-install-recommends ${missing[*]}"
  if [ "$install" = no ]; then
    say "Missing packages: ${missing[*]}"
    say "As root:  $by_hand"
    return 1
  fi
  say "Installing ${missing[*]}"
  if ! { as_root apt-get update -q &&
         as_root env DEBIAN_FRONTEND=noninteractive apt-get install -qy --no-install-recommends "${missing[@]}"; }; then
    complain "These packages could not be installed: ${missing[*]}"
    complain "As root:  $by_hand"
    return 1
  fi
}

# build ROOT FOLDER CMAKE_OPTION...: configures and builds everything in FOLDER, with ccache where there is one.
build() {
  local root=$1 folder=$2 launcher=()
  shift 2
  if command -v ccache >/dev/null; then
    launcher=(-DCMAKE_CXX_COMPILER_LAUNCHER=ccache)
    export CCACHE_SLOPPINESS=pch_defines,time_macros  # what it asks for to keep what precompiled headers went into
  fi
  mkdir -p "$folder" || return 1
  if ! cmake -S "$root" -B "$folder" -G Ninja -DHALFDROP_PRECOMPILE=ON "${launcher[@]}" "$@" >"$folder/configure.log" 2>&1; then
    cat "$folder/configure.log" >&2
    return 1
  fi
  NINJA_STATUS="[%f/%t, %es] " cmake --build "$folder"
}
