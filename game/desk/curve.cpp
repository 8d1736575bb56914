#include "game/desk/titration_curve.h"

#include <array>
#include <charconv>
#include <cmath>
#include <ostream>

#include "game/desk/commands.h"

namespace halfdrop::desk {

namespace {

std::string fixed(double value, int decimals) {
  std::array<char, 64> text{};
  const auto result =
      std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, decimals);
  return {text.data(), result.ptr};
}

/// Shortest: "12.5", "0".
std::string plain(double value) {
  std::array<char, 64> text{};
  const auto result = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
  return {text.data(), result.ptr};
}

}  // namespace

int print_curve(const CurveOptions& options, Streams streams) {
  const auto curve = curve_from(options);
  if (!curve) {
    const CurveFault& fault = curve.error();
    if (!fault.option.empty()) return wrong_argument(fault.option, fault.message, streams);
    return report(fault.faults, streams);
  }
  streams.out << "volume_cm3,pH,colour\n";
  for (const double volume_cm3 : curve->volumes_cm3) {
    const CurvePoint point = point_at(*curve, volume_cm3);
    streams.out << plain(volume_cm3) << ',' << fixed(point.ph, 4) << ',' << point.colour << '\n';
  }
  return kDone;
}

}  // namespace halfdrop::desk
