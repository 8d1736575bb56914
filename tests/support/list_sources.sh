#!/usr/bin/env bash
# Lists the sources that the tests check against: each comment that says "Source:", to its end, under its file.
cd "$(dirname "${BASH_SOURCE[0]}")/../.." || exit 1
find tests \( -name '*.cpp' -o -name '*.h' -o -name '*.py' \) -print0 | sort -z | xargs -0 awk '
  function flush() {
    if (text == "") return
    if (file != listed) print file
    listed = file
    print "    " text
    text = ""
  }
  FNR == 1 { flush(); file = FILENAME }
  /^[ \t]*(\/\/+|#) .*Source: / { flush(); sub(/^.*Source: */, ""); text = $0; next }
  text != "" && /^[ \t]*(\/\/+|#) / { sub(/^[ \t]*(\/\/+|#) */, ""); text = text " " $0; next }
  { flush() }
  END { flush() }'
