#pragma once
// Several numbers reckoned with at once, the same bits whatever the processor has: each of them is added,
// multiplied and rounded by itself, and nothing is contracted.

#include <cstring>

namespace halfdrop {

/// g++ and clang++ both know how; a processor without registers so wide does it in halves.
using Wide = double __attribute__((vector_size(32)));
using WideFloat = float __attribute__((vector_size(32)));
inline constexpr std::size_t kWide = 4, kWideFloat = 8;

// Functions so marked are compiled for wider registers too, and the right one is chosen when the program
// starts. Not under sanitizers, which are not awake then.
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && !defined(HALFDROP_SANITIZED)
#define HALFDROP_WIDER __attribute__((target_clones("avx2", "default")))
#else
#define HALFDROP_WIDER
#endif

#define HALFDROP_INLINE inline __attribute__((always_inline))

/// No alignment is asked for.
template <typename Many, typename One>
HALFDROP_INLINE Many wide_at(const One* from) {
  Many many;
  std::memcpy(&many, from, sizeof many);
  return many;
}
template <typename Many, typename One>
HALFDROP_INLINE void put(const Many& many, One* to) {
  std::memcpy(to, &many, sizeof many);
}
template <typename Many>
HALFDROP_INLINE Many larger_of(const Many& a, const Many& b) {
  return a > b ? a : b;
}
template <typename Many>
HALFDROP_INLINE Many smaller_of(const Many& a, const Many& b) {
  return a < b ? a : b;
}

}  // namespace halfdrop
