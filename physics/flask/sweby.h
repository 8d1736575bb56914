#pragma once
// How far the value at a face may go from the upstream one towards that of second order, so that nothing
// leaves the range of its neighbours: at most twice the step upstream over the step across (Sweby, SIAM J.
// Numer. Anal. 21 (1984) 995). To be held between 0 and 1.

#include "physics/flask/wide.h"

namespace halfdrop {

/// Where there is no step at all, 1: `tiny` is far below the square of a step that counts.
template <typename Many, typename One>
HALFDROP_INLINE Many sweby_ratio(const Many& upstream, const Many& across, One tiny) {
  return (One{2} * upstream * across + tiny) / (across * across + tiny);
}

}  // namespace halfdrop
