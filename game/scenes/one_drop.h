#pragma once
// One drop near the endpoint, let fall twice into the same flask: swirled, and not.

#include <array>
#include <string>

#include "game/session/session.h"
#include "game/session/view.h"

namespace halfdrop {

/// Seconds after the drop met the liquid.
inline constexpr std::array<double, 6> kDropMoments_s{0.0, 0.2, 0.5, 1.0, 2.0, 5.0};
using DropViews = std::array<View, kDropMoments_s.size()>;

struct OneDrop {
  Session bench;  ///< before the tap is opened for the drop
  DropViews swirled, still;
};

/// The last drop of the first accurate run, faultlessly performed, that fell whole and alone and after which
/// the flask, once mixed, shows no colour yet. Before it falls again the liquid is swirled until it is even,
/// and for the still one left until it has come to rest. Or why there is no such drop, as a sentence.
[[nodiscard]] tl::expected<OneDrop, std::string> one_drop_twice(const Level& level, std::uint64_t seed);

}  // namespace halfdrop
