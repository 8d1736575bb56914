#pragma once

#include <cstdint>
#include <string>

#include "physics/light/spectrum.h"

namespace halfdrop {

struct Xyz {
  double x = 0, y = 0, z = 0;  ///< relative to a perfect white under D65: y = 1
};
struct Lab {
  double l = 100, a = 0, b = 0;
};
struct Rgb {
  double r = 1, g = 1, b = 1;  ///< linear light, sRGB primaries, 0..1
};

/// CIE XYZ of light that left D65, met `reflectance` and crossed the (decadic) absorbance once: for light
/// that goes down and up again the caller doubles it (Beer-Lambert; no scattering, no fluorescence).
Xyz seen_through(const Spectrum& reflectance, const Spectrum& absorbance);
/// CIELAB relative to the D65 white of our own tables.
Lab to_lab(const Xyz& xyz);
/// Linear sRGB (IEC 61966-2-1), scaled so that the white of our own tables is 1, 1, 1; outside 0 to 1 where
/// the screen cannot show it. And back again.
Rgb unclipped_rgb(const Xyz& xyz);
Xyz xyz_of(const Rgb& linear);
/// Linear sRGB, scaled so that the white of our own tables is exactly neutral, then clipped
/// towards grey of the same luminance so that hue stays.
Rgb to_rgb(const Xyz& xyz);
/// sRGB-encoded "#rrggbb".
std::string to_hex(const Rgb& rgb);
/// sRGB transfer of one linear component to 0..255, before and after it is rounded to a whole number.
double exact_code(double linear);
std::uint8_t encode(double linear);
/// CIEDE2000 colour difference, kL = kC = kH = 1 (Sharma, Wu and Dalal 2005).
double ciede2000(const Lab& one, const Lab& other);

}  // namespace halfdrop
