#pragma once
// How often a test that draws at random, or plays whole levels, does it again.

#include <cstdlib>

#ifdef __has_feature
#if __has_feature(address_sanitizer)
#define HALFDROP_IN_A_SANITIZED_BUILD 1
#endif
#endif
#ifdef __SANITIZE_ADDRESS__
#define HALFDROP_IN_A_SANITIZED_BUILD 1
#endif

namespace halfdrop::test {

#ifdef HALFDROP_IN_A_SANITIZED_BUILD
inline constexpr bool kSanitized = true;
#else
inline constexpr bool kSanitized = false;
#endif

/// `usual`; `longer` when HALFDROP_LONG is in the environment (tests/run.sh --long); a fifth of it in a
/// sanitized build, which is five times slower and looks for other faults than a wrong figure.
inline int rounds(int usual, int longer) {
  if (std::getenv("HALFDROP_LONG") != nullptr) return longer;
  return kSanitized ? (usual + 4) / 5 : usual;
}

}  // namespace halfdrop::test
