#pragma once
// What eyes with a colour-vision deficiency make of a colour.

#include <array>
#include <string_view>

#include "physics/light/colour.h"

namespace halfdrop {

/// Normal vision, and vision without long-, middle- or short-wave cones.
enum class Vision { normal, protan, deutan, tritan };
inline constexpr std::array kVisions{Vision::normal, Vision::protan, Vision::deutan, Vision::tritan};

[[nodiscard]] std::string_view name_of(Vision vision);

/// The colour that a normal eye would have to be shown to see what this eye sees: matrices of Machado,
/// Oliveira and Fernandes, IEEE Trans. Vis. Comput. Graph. 15 (2009) 1291, severity 1.0, in linear sRGB,
/// unclipped. Milder forms, which are commoner, lie between these and normal vision.
[[nodiscard]] Xyz seen_by(Vision vision, const Xyz& colour);

}  // namespace halfdrop
