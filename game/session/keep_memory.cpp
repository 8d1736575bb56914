#include "game/session/keep_memory.h"

#if defined(__GLIBC__) || __has_include(<malloc.h>)
#include <malloc.h>
#endif

namespace halfdrop {

void keep_freed_memory() {
#ifdef M_TRIM_THRESHOLD
  mallopt(M_TRIM_THRESHOLD, 64 << 20);
#endif
}

}  // namespace halfdrop
