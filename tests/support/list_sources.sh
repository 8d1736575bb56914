#!/usr/bin/env bash
# Lists each "// Source:" of the tests once, with the files that check against it.
cd "$(dirname "${BASH_SOURCE[0]}")/../.." || exit 1
grep -rnoE --include='*.cpp' --include='*.h' --include='*.py' '(//|#) Source: .*' tests |
  sed -E 's/^([^:]+):[0-9]+:(\/\/|#) Source: */\1\t/' |
  awk -F '\t' '!($2 in files) { order[++n] = $2 }
               index(" " files[$2] " ", " " $1 " ") == 0 { files[$2] = files[$2] " " $1 }
               END { for (i = 1; i <= n; i++) printf "%s\n   %s\n", order[i], files[order[i]] }'
