# For tests/run.sh: headings with times, and one count of everything that passed or failed.
# shellcheck shell=bash

passed=0 failed=0 failures=() stage_name='' stage_start=0

end_stage() {
  [ -z "$stage_name" ] || printf -- '-- %s: %d s\n' "$stage_name" $((SECONDS - stage_start))
}

# stage NAME: ends the stage before with its time and prints a heading.
stage() {
  end_stage
  stage_name=$1 stage_start=$SECONDS
  printf '\n== %s ==\n' "$stage_name"
}

fail() {
  failed=$((failed + ${2:-1}))
  failures+=("$stage_name: $1")
}

# count NAME COMMAND...: one check, passed if the command succeeds.
count() {
  local name=$1
  shift
  if "$@"; then
    passed=$((passed + 1))
    printf 'passed: %s\n' "$name"
  else
    fail "$name"
    printf 'FAILED: %s\n' "$name"
    return 1
  fi
}

# count_ctest COMMAND...: adds the counts ctest reports; a ctest that reports none, or fails without saying so, is a
# failure.
count_ctest() {
  local log status summary bad total
  log=$(mktemp)
  "$@" 2>&1 | tee "$log"
  status=${PIPESTATUS[0]}
  summary=$(grep -oE '[0-9]+ tests failed out of [0-9]+' "$log" | tail -n 1)
  mapfile -t -O "${#failures[@]}" failures < <(
    sed -n '/^The following tests FAILED:/,/^Errors while/{s|^[[:space:]]*[0-9]* - |'"$stage_name"': |p}' "$log")
  rm -f "$log"
  if [ -z "$summary" ]; then
    fail "ctest reported no tests"
    return
  fi
  read -r bad _ _ _ _ total <<<"$summary"
  passed=$((passed + total - bad))
  failed=$((failed + bad))
  [ "$status" -eq 0 ] || [ "$bad" -gt 0 ] || fail "ctest ended with status $status"
}

# finish: what failed, then the count; status 0 only if all passed.
finish() {
  end_stage
  local failure
  printf '\n'
  for failure in "${failures[@]}"; do printf 'FAILED in %s\n' "$failure"; done
  printf '%d passed, %d failed\n' "$passed" "$failed"
  [ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
  exit
}
