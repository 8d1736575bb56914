#include "physics/burette/pendant_drop.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "physics/burette/tap.h"
#include "physics/units.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

// Water at 20 C. Source: IAPWS R1-76(2014) and IAPWS-95.
constexpr double kDensity_kg_m3 = 998.2065;
constexpr double kTension_n_m = 0.0727361;

// Source: Harkins and Brown's correction for r/V^(1/3) = 0.30, 0.40 ... 1.20 (Adamson's table, from
// memory).
constexpr std::array<double, 10> kHarkinsBrown = {.7256, .6828, .6515, .6250, .6093,
                                                  .6000, .5998, .6098, .6280, .6535};

double harkins_brown(double x) {
  const double place = (x - 0.3) / 0.1;
  const auto i = static_cast<std::size_t>(place);
  const double share = place - std::floor(place);
  return kHarkinsBrown[i] * (1.0 - share) + kHarkinsBrown[i + 1] * share;
}

double water_drop_cm3(double tip_mm) { return drop_volume_cm3(tip_mm, kDensity_kg_m3, kTension_n_m); }

}  // namespace

// Source: water at 20 C from tips of 2.0, 2.5 and 3.0 mm (derived from Heertjes' fit).
TEST_CASE("drops of water from tips of 2 to 3 mm have the volumes worked out for them") {
  CHECK_NEAR(water_drop_cm3(2.0), 0.0341, 0.00005);
  CHECK_NEAR(water_drop_cm3(2.5), 0.0409, 0.00005);
  CHECK_NEAR(water_drop_cm3(3.0), 0.0475, 0.0001);
}

TEST_CASE("a drop weighs what Tate's law with Harkins and Brown's table lets hang, within 2 %") {
  for (double tip_mm = 2.0; tip_mm <= 4.0; tip_mm += 0.1) {
    const double volume_cm3 = water_drop_cm3(tip_mm);
    const double radius_cm = tip_mm / 20.0;
    const double factor = harkins_brown(radius_cm / std::cbrt(volume_cm3));
    const double hangs_cm3 =
        2.0 * kPi * radius_cm * 1e-2 * kTension_n_m * factor / (kDensity_kg_m3 * kGravity_m_s2) * 1e6;
    CHECK_NEAR(volume_cm3 / hangs_cm3, 1.0, 0.02);
  }
}

// Source: common practice, "20 drops to the cm3" (from memory; by the fit: 3.1 mm).
TEST_CASE("twenty drops make a cm3 from a tip of about 3.1 mm") {
  CHECK_NEAR(1.0 / water_drop_cm3(3.1), 20.4, 0.5);
}

TEST_CASE("wider tips and stronger surfaces let larger drops hang") {
  double before = 0.0;
  for (double tip_mm = 1.5; tip_mm <= 4.0; tip_mm += 0.05) {
    CHECK(water_drop_cm3(tip_mm) > before);
    before = water_drop_cm3(tip_mm);
  }
  CHECK(drop_volume_cm3(3.0, kDensity_kg_m3, 0.060) < water_drop_cm3(3.0));
}

// Source: Clanet and Lasheras 1999, worked out for water at 20 C from tubes of inner/outer 1.0/2.0, 1.0/1.0
// and 0.8/2.0 mm: critical Weber numbers 4.27, 2.56 and 5.70, so 0.438, 0.339 and 0.362 cm3/s (closed form
// from memory).
TEST_CASE("dripping turns into a stream at the flow of the Weber criterion") {
  const LiquidFlow water{kDensity_kg_m3, 1.0016e-3, kTension_n_m};
  CHECK_NEAR(stream_from_cm3_s({1.0, 2.0}, water), 0.438, 0.001);
  CHECK_NEAR(stream_from_cm3_s({1.0, 1.0}, water), 0.339, 0.001);
  CHECK_NEAR(stream_from_cm3_s({0.8, 2.0}, water), 0.362, 0.001);
}

// Source: Rayleigh's drops of a stream are 1.89 of its diameters wide (textbook; follows from the wave
// of 4.508).
TEST_CASE("a stream breaks into drops of nearly twice its width") {
  const double width_mm = 10.0 * std::cbrt(6.0 / kPi * stream_drop_cm3({0.7, 3.0}));
  CHECK_NEAR(width_mm / 0.7, 1.89, 0.005);
}

// By hand: sqrt(998.2 kg/m3 x 0.0475 cm3 / 0.07274 N/m).
TEST_CASE("a drop of water from a tip of 3 mm necks for a fortieth of a second") {
  const LiquidFlow water{kDensity_kg_m3, 1.0016e-3, kTension_n_m};
  CHECK_NEAR(necking_s(0.0475, water), 0.02553, 1e-5);
}

}  // namespace halfdrop
