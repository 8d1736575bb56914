#include "physics/burette/tap.h"

#include <algorithm>
#include <cmath>

#include "physics/bench/bench_spec.h"
#include "physics/elementary.h"
#include "physics/units.h"

namespace halfdrop {

namespace {

/// Losses of a passage beside friction, in velocity heads: entrance and exit of a short sharp-edged one
/// (White, Fluid Mechanics: 0.5 + 1; from memory), and of a capillary, whose profile becomes a parabola: 2 m,
/// m about 1.12 (Hagenbach's term; White has m 1.1 to 1.2). It has after 0.056 Re diameters (laminar entrance
/// length, from memory); in between our own straight line.
constexpr double kShortLoss = 1.5;
constexpr double kCapillaryLoss = 2.24;
constexpr double kEntrance = 0.056;

/// Fanning's factor times Reynolds number of laminar flow: a round bore, and a right isosceles triangle (Shah
/// and London, Laminar Flow Forced Convection in Ducts, 1978; from memory).
constexpr double kRoundFriction = 16.0;
constexpr double kTriangleFriction = 13.15;

/// p = linear Q + square Q^2, SI.
struct Resistance {
  double linear = 0.0;
  double square = 0.0;
};

struct Passage {
  double area_mm2, hydraulic_mm, length_mm;
  double friction = kRoundFriction, loss = kShortLoss;
};

Resistance resistance_of(const Passage& passage, const LiquidFlow& liquid) {
  const double area_m2 = passage.area_mm2 * 1e-6;
  const double hydraulic_m = passage.hydraulic_mm * 1e-3;
  Resistance r;
  r.linear = 2.0 * passage.friction * liquid.viscosity_pa_s * passage.length_mm * 1e-3 /
             (hydraulic_m * hydraulic_m * area_m2);
  r.square = passage.loss * liquid.density_kg_m3 / (2.0 * area_m2 * area_m2);
  return r;
}

constexpr double kSmallest_mm2 = 1e-9;

/// Groove and overlapping bores at one end of the plug, side by side.
class SideBySide {
 public:
  void add(const Resistance& r) {
    viscous_ += 1.0 / r.linear;
    kinetic_ += 1.0 / std::sqrt(r.square);
  }
  [[nodiscard]] bool open() const { return viscous_ > 0.0; }
  [[nodiscard]] Resistance resistance() const { return {1.0 / viscous_, 1.0 / (kinetic_ * kinetic_)}; }

 private:
  double viscous_ = 0.0;
  double kinetic_ = 0.0;
};

SideBySide end_of_plug(const TapSpec& tap, const LiquidFlow& liquid, double position) {
  SideBySide end;
  const Opening opening = tap_opening(tap, position);
  if (opening.area_mm2 > kSmallest_mm2) {
    end.add(resistance_of({opening.area_mm2, opening.hydraulic_mm, tap.channel_mm}, liquid));
  }
  const Groove groove = groove_opening(tap, position);
  const double area_mm2 = groove.deep_mm * groove.deep_mm;
  if (area_mm2 > kSmallest_mm2) {
    // 4 area / perimeter of a right-angled V: its lid is twice as wide as it is deep.
    const double hydraulic_mm = 4.0 * groove.deep_mm / (2.0 * std::sqrt(2.0) + 2.0);
    end.add(resistance_of({area_mm2, hydraulic_mm, groove.length_mm, kTriangleFriction}, liquid));
  }
  return end;
}

/// m3/s: the root of square Q^2 + linear Q = p, written so that it does not cancel where friction rules.
double flow_through(const Resistance& r, double pressure_pa) {
  return 2.0 * pressure_pa / (r.linear + std::sqrt(r.linear * r.linear + 4.0 * r.square * pressure_pa));
}

/// Losses of a round bore by how far its profile gets at about this flow.
double capillary_loss(const Passage& bore, const LiquidFlow& liquid, double flow_m3_s) {
  const double reynolds =
      4.0 * liquid.density_kg_m3 * flow_m3_s / (kPi * liquid.viscosity_pa_s * bore.hydraulic_mm * 1e-3);
  const double entrance_mm = kEntrance * reynolds * bore.hydraulic_mm;
  const double developed = bore.length_mm < entrance_mm ? bore.length_mm / entrance_mm : 1.0;
  return kShortLoss + (kCapillaryLoss - kShortLoss) * developed;
}

/// Share of a bore's or the groove's width that grease leaves open.
double clear_of_grease(const TapSpec& tap) { return 1.0 - tap.grease_in_bore; }

/// Distance between the axes of plug's and barrel's bore, along the plug's rim.
double bores_apart_mm(const TapSpec& tap, double position) {
  return (1.0 - std::clamp(position, 0.0, 1.0)) * kPi / 2.0 * tap.plug_mm / 2.0;
}

}  // namespace

Opening tap_opening(const TapSpec& tap, double position) {
  const double radius = clear_of_grease(tap) * tap.bore_mm / 2.0;
  const double apart = bores_apart_mm(tap, position);
  Opening opening;
  if (apart >= 2.0 * radius) return opening;
  const double half_angle = elementary::acos(apart / (2.0 * radius));
  const double lens =
      2.0 * radius * radius * half_angle - 0.5 * apart * std::sqrt(4.0 * radius * radius - apart * apart);
  if (lens <= 0.0) return opening;
  opening.area_mm2 = lens;
  opening.hydraulic_mm = 4.0 * lens / (4.0 * radius * half_angle);
  return opening;
}

Groove groove_opening(const TapSpec& tap, double position) {
  const double reach_mm = tap.groove_degrees / 180.0 * kPi * tap.plug_mm / 2.0;
  // From the groove's tip to the barrel's edge; past the groove's root the bore itself is open.
  const double in_mm = std::min(tap.bore_mm + reach_mm - bores_apart_mm(tap, position), reach_mm);
  if (reach_mm <= 0.0 || in_mm <= 0.0 || tap.groove_deep_mm <= 0.0) return {};
  const double share = in_mm / reach_mm;
  // Friction goes as depth^-4 (area times hydraulic diameter squared): the integral of (in / x)^4 from here
  // to the root is in/3 (1 - share^3). The edge itself is taken as long as it is deep.
  const double deep_mm = clear_of_grease(tap) * tap.groove_deep_mm * share;
  return {deep_mm, in_mm / 3.0 * (1.0 - share * share * share) + deep_mm};
}

double flow_cm3_s(const TapSpec& tap, const LiquidFlow& liquid, double position, double head_mm,
                  double narrow_wet) {
  const SideBySide end = end_of_plug(tap, liquid, position);
  if (!end.open() || head_mm <= 0.0) return 0.0;
  const double capillary_pa = 2.0 * liquid.surface_tension_n_m / (tap.tip_outer_mm * 0.5e-3);
  const double pressure_pa = liquid.density_kg_m3 * kGravity_m_s2 * head_mm * 1e-3 - capillary_pa;
  if (pressure_pa <= 0.0) return 0.0;
  const Resistance plug = end.resistance();
  Passage bore{kPi * tap.jet_bore_mm * tap.jet_bore_mm / 4.0, tap.jet_bore_mm,
               narrow_wet * tap.jet_narrow_mm};
  const auto flow_m3_s = [&] {
    Resistance all{2.0 * plug.linear, 2.0 * plug.square};
    if (narrow_wet > 0.0) {
      const Resistance jet = resistance_of(bore, liquid);
      all.linear += jet.linear;
      all.square += jet.square;
    }
    return flow_through(all, pressure_pa);
  };
  bore.loss = capillary_loss(bore, liquid, flow_m3_s());
  return flow_m3_s() * 1e6;
}

}  // namespace halfdrop
