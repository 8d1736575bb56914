#pragma once

#include <string_view>

namespace halfdrop {

/// The cells of the working that are not worked out from factors: the mean of the titres the player ticked,
/// and that of their first titres where a flask has two endpoints.
inline constexpr const char* kMeanTitre = "calculation/mean titre";
inline constexpr const char* kMeanFirstTitre = "calculation/mean first titre";

[[nodiscard]] inline bool is_mean(std::string_view cell) {
  return cell == kMeanTitre || cell == kMeanFirstTitre;
}

}  // namespace halfdrop
