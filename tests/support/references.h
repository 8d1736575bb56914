#pragma once
// Checks against what Debian packages of other people compute or print.

#include <doctest/doctest.h>

#include <cstdlib>
#include <string>
#include <string_view>

namespace halfdrop::test {

/// Whether a reference is there to compare with. If it is not, says so; that is a failure where
/// HALFDROP_REFERENCES is "required" in the environment, as tests/run.sh has it.
inline bool has_reference(bool is_there, const std::string& package) {
  if (is_there) return true;
  const char* const wanted = std::getenv("HALFDROP_REFERENCES");
  const std::string absent = "not compared: Debian's " + package + " is not installed or does not run";
  if (wanted != nullptr && std::string_view(wanted) == "required")
    FAIL_CHECK(absent);
  else
    MESSAGE(absent);
  return false;
}

}  // namespace halfdrop::test
