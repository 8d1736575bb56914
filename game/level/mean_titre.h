#pragma once

namespace halfdrop {

/// The one cell of the working that is not worked out from factors: the mean of the titres the player ticked.
inline constexpr const char* kMeanTitre = "calculation/mean titre";

}  // namespace halfdrop
