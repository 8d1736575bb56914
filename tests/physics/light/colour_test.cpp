#include "physics/light/colour.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "physics/random.h"
#include "physics/units.h"
#include "tests/support/near.h"

using halfdrop::ciede2000;
using halfdrop::Lab;
using halfdrop::Rgb;
using halfdrop::Spectrum;
using halfdrop::Xyz;

namespace {

Spectrum flat(double value) {
  Spectrum spectrum;
  spectrum.fill(value);
  return spectrum;
}

Xyz white() { return halfdrop::seen_through(flat(1.0), flat(0.0)); }

/// CIE 15's definition turned round, relative to the white of our tables.
Xyz from_lab(const Lab& lab) {
  const auto inverse = [](double f) {
    return f > 6.0 / 29.0 ? f * f * f : 3.0 * 36.0 / 841.0 * (f - 4.0 / 29.0);
  };
  const double fy = (lab.l + 16.0) / 116.0;
  return {white().x * inverse(fy + lab.a / 500.0), inverse(fy), white().z * inverse(fy - lab.b / 200.0)};
}

double hue(const Rgb& c) { return std::atan2(std::sqrt(3.0) * (c.g - c.b), 2.0 * c.r - c.g - c.b); }

}  // namespace

// Source: Sharma, Wu and Dalal, Color Res. Appl. 30 (2005) 21, Table 1.
TEST_CASE("CIEDE2000 gives the published differences") {
  struct Pair {
    Lab one, other;
    double difference;
  };
  const Pair pairs[] = {
      {{50, 2.6772, -79.7751}, {50, 0, -82.7485}, 2.0425},
      {{50, -1.3802, -84.2814}, {50, 0, -82.7485}, 1.0000},
      {{50, 0, 0}, {50, -1, 2}, 2.3669},
      {{50, 2.49, -0.001}, {50, -2.49, 0.0009}, 7.1792},
      {{50, 2.49, -0.001}, {50, -2.49, 0.0011}, 7.2195},
      {{50, -0.001, 2.49}, {50, 0.0009, -2.49}, 4.8045},
      {{50, -0.001, 2.49}, {50, 0.0011, -2.49}, 4.7461},
      {{50, 2.5, 0}, {73, 25, -18}, 27.1492},
      {{50, 2.5, 0}, {61, -5, 29}, 22.8977},
      {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, 1.2644},
      {{22.7233, 20.0904, -46.6940}, {23.0331, 14.9730, -42.5619}, 2.0373},
      {{2.0776, 0.0795, -1.1350}, {0.9033, -0.0636, -0.5514}, 0.9082},
  };
  for (const Pair& pair : pairs) {
    CHECK_NEAR(ciede2000(pair.one, pair.other), pair.difference, 0.00005);
    CHECK_NEAR(ciede2000(pair.other, pair.one), pair.difference, 0.00005);
  }
  CHECK(ciede2000({40, 10, 20}, {40, 10, 20}) == 0.0);
}

// Source: CIELAB (D65) of the sRGB primaries as the library colorjs.io 0.7.1 gives them, its "lab-d65".
TEST_CASE("the CIELAB values of the screen's primaries lead back to the primaries") {
  struct Primary {
    Lab lab;
    Rgb rgb;
    const char* hex;
  };
  const Primary primaries[] = {{{53.2371, 80.0901, 67.2033}, {1, 0, 0}, "#ff0000"},
                               {{87.7355, -86.1816, 83.1866}, {0, 1, 0}, "#00ff00"},
                               {{32.3009, 79.1953, -107.8555}, {0, 0, 1}, "#0000ff"}};
  for (const Primary& primary : primaries) {
    const Rgb rgb = to_rgb(from_lab(primary.lab));
    CHECK_NEAR(rgb.r, primary.rgb.r, 0.002);
    CHECK_NEAR(rgb.g, primary.rgb.g, 0.002);
    CHECK_NEAR(rgb.b, primary.rgb.b, 0.002);
    const Lab back = to_lab(from_lab(primary.lab));
    CHECK_NEAR(back.l, primary.lab.l, 1e-9);
    CHECK_NEAR(back.a, primary.lab.a, 1e-9);
    CHECK_NEAR(back.b, primary.lab.b, 1e-9);
  }
}

// Source: IEC 61966-2-1: middle grey code 188 is linear 0.5029 (from memory), the straight piece ends at
// 0.0031308.
TEST_CASE("the screen's transfer curve has its known points") {
  CHECK(halfdrop::encode(0.0) == 0);
  CHECK(halfdrop::encode(1.0) == 255);
  CHECK(halfdrop::encode(0.5029) == 188);
  CHECK(halfdrop::encode(0.0031308) == 10);
  CHECK(halfdrop::encode(-0.5) == 0);
  CHECK(halfdrop::encode(1.5) == 255);
  CHECK(halfdrop::to_hex({1.0, 0.5029, 0.0}) == "#ffbc00");
}

TEST_CASE("a perfect white is white, and greys are exactly neutral") {
  CHECK_NEAR(white().y, 1.0, 1e-12);
  const Lab lab = to_lab(white());
  CHECK_NEAR(lab.l, 100.0, 1e-9);
  CHECK_NEAR(lab.a, 0.0, 1e-9);
  CHECK_NEAR(lab.b, 0.0, 1e-9);
  CHECK(halfdrop::to_hex(to_rgb(white())) == "#ffffff");
  const Rgb grey = to_rgb(halfdrop::seen_through(flat(0.5), flat(0.0)));
  CHECK_NEAR(grey.r, 0.5, 1e-12);
  CHECK_NEAR(grey.g, 0.5, 1e-12);
  CHECK_NEAR(grey.b, 0.5, 1e-12);
}

// Beer-Lambert: an absorbance of log10 2 at every wavelength halves the light.
TEST_CASE("a grey filter of absorbance 0.30103 lets half the light through") {
  CHECK_NEAR(halfdrop::seen_through(flat(1.0), flat(0.301029995663981)).y, 0.5, 1e-12);
}

TEST_CASE("a colour beyond the screen keeps its hue and lightness when clipped") {
  halfdrop::Random random{9};
  double worst_hue = 0.0, worst_luminance = 0.0;
  int beyond = 0;
  for (int i = 0; i < 20000; ++i) {
    const Xyz xyz{random.uniform(0.0, 0.95), random.uniform(0.02, 0.95), random.uniform(0.0, 1.08)};
    const Rgb rgb = to_rgb(xyz);
    REQUIRE(std::min({rgb.r, rgb.g, rgb.b}) >= 0.0);
    REQUIRE(std::max({rgb.r, rgb.g, rgb.b}) <= 1.0);
    // The matrix of IEC 61966-2-1, unclipped.
    const Rgb raw{3.2406 * xyz.x - 1.5372 * xyz.y - 0.4986 * xyz.z,
                  -0.9689 * xyz.x + 1.8758 * xyz.y + 0.0415 * xyz.z,
                  0.0557 * xyz.x - 0.2040 * xyz.y + 1.0570 * xyz.z};
    if (std::min({raw.r, raw.g, raw.b}) > -0.01 && std::max({raw.r, raw.g, raw.b}) < 1.01) continue;
    ++beyond;
    worst_luminance =
        std::max(worst_luminance, std::abs(0.2126 * rgb.r + 0.7152 * rgb.g + 0.0722 * rgb.b - xyz.y));
    const double chroma = std::hypot(std::sqrt(3.0) * (rgb.g - rgb.b), 2.0 * rgb.r - rgb.g - rgb.b);
    if (chroma > 0.05)
      worst_hue = std::max(worst_hue, std::abs(std::remainder(hue(rgb) - hue(raw), 2.0 * halfdrop::kPi)));
  }
  CHECK(beyond > 1000);
  CHECK(worst_hue < 0.02);  // radians; the scaling to our own white is what is left
  CHECK(worst_luminance < 0.01);
}
