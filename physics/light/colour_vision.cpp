#include "physics/light/colour_vision.h"

#include <cassert>

namespace halfdrop {
namespace {

using Vector = std::array<double, 3>;
using Matrix = std::array<Vector, 3>;

constexpr Matrix kProtan{
    {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix kDeutan{
    {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}};
constexpr Matrix kTritan{
    {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}};

Vector times(const Matrix& m, const Vector& v) {
  const auto row = [&](std::size_t i) { return m[i][0] * v[0] + m[i][1] * v[1] + m[i][2] * v[2]; };
  return {row(0), row(1), row(2)};
}

const Matrix& matrix_of(Vision vision) {
  assert(vision != Vision::normal);
  if (vision == Vision::protan) return kProtan;
  return vision == Vision::deutan ? kDeutan : kTritan;
}

}  // namespace

std::string_view name_of(Vision vision) {
  constexpr std::array<std::string_view, 4> kNames{"normal", "protan", "deutan", "tritan"};
  return kNames[static_cast<std::size_t>(vision)];
}

Xyz seen_by(Vision vision, const Xyz& colour) {
  if (vision == Vision::normal) return colour;
  const Rgb rgb = unclipped_rgb(colour);
  const Vector seen = times(matrix_of(vision), {rgb.r, rgb.g, rgb.b});
  return xyz_of({seen[0], seen[1], seen[2]});
}

}  // namespace halfdrop
