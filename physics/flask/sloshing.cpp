#include "physics/flask/sloshing.h"

#include <algorithm>
#include <cmath>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/elementary.h"
#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"

namespace halfdrop {

namespace {

constexpr double kFirstRoot = 1.8412;  ///< of the first Bessel function's slope: the wave that runs round
/// Of critical damping (our own estimate: leaning walls, shallow liquid, crests that curl).
constexpr double kDamping = 0.3;
constexpr double kHandFollows_s = 0.15, kWaveFollows_s = 0.4;  ///< our own estimates
/// Thrown when the hand is twice as fast as kThrowsFrom, as its acceleration goes.
constexpr double kThrows_cm3_s = 0.07;
constexpr double kStill_cm = 1e-3;
/// Shallower liquid than this only wets the bottom: no wave runs in it.
constexpr double kWets_cm = 0.3;

double tanh_of(double x) {
  const double e = elementary::exp(-2.0 * x);
  return (1.0 - e) / (1.0 + e);
}

double towards(double value, double wanted, double takes_s) {
  return value + (wanted - value) * kSecondsPerTick / (takes_s + kSecondsPerTick);
}

double hand_rad_s(double swirl) { return 2.0 * kPi * kRounds_per_s * swirl; }

void throw_out(BenchState& state) {
  Slosh& slosh = state.slosh;
  slosh.waits_cm3 += kThrows_cm3_s * slosh.beyond * kSecondsPerTick;
  if (slosh.waits_cm3 < kThrown_cm3) return;
  slosh.waits_cm3 -= kThrown_cm3;
  take_out(state, Account::bench_top, volume_quanta(kThrown_cm3));
}

}  // namespace

double crest_cm(const FlaskSpec& flask, double volume_cm3, double swirl) {
  const double gravity_cm_s2 = 100.0 * kGravity_m_s2;
  const double radius_cm = std::sqrt(surface_cm2(flask, volume_cm3) / kPi);
  const double depth_cm = liquid_depth_cm(flask, volume_cm3);
  const double hand2 = hand_rad_s(swirl) * hand_rad_s(swirl);
  const double own2 = gravity_cm_s2 * kFirstRoot / radius_cm * tanh_of(kFirstRoot * depth_cm / radius_cm);
  // 1 + strength ratio / (1 - ratio + 2 i damping sqrt(ratio)), its two parts.
  const double ratio = hand2 / own2, strength = 2.0 / (kFirstRoot * kFirstRoot - 1.0);
  const double in_step = 1.0 - ratio, behind = 2.0 * kDamping * std::sqrt(ratio);
  const double size = in_step * in_step + behind * behind;
  const double real = 1.0 + strength * ratio * in_step / size, imaginary = strength * ratio * behind / size;
  return kReach_cm * hand2 * radius_cm / gravity_cm_s2 * std::sqrt(real * real + imaginary * imaginary);
}

void slosh(const BenchSpec& spec, BenchState& state) {
  Slosh& slosh = state.slosh;
  const double swirl = state.hands.swirl;
  if (swirl <= 0.0 && slosh == Slosh{}) return;
  slosh.turns += kRounds_per_s * swirl * kSecondsPerTick;
  if (slosh.turns >= 1.0) slosh.turns -= 1.0;
  slosh.reach_cm = towards(slosh.reach_cm, swirl > 0.0 ? kReach_cm : 0.0, kHandFollows_s);
  const double volume_cm3 = flask_liquid(state.ledger).volume_cm3();
  const double depth_cm = liquid_depth_cm(spec.flask, volume_cm3);
  const bool runs = swirl > 0.0 && depth_cm > kWets_cm;
  const double stands_cm = runs ? std::min(crest_cm(spec.flask, volume_cm3, swirl), depth_cm) : 0.0;
  slosh.wave_cm = towards(slosh.wave_cm, stands_cm, kWaveFollows_s);
  const double pulls =
      kReach_cm * hand_rad_s(swirl) * hand_rad_s(swirl) / (100.0 * kGravity_m_s2 * kThrowsFrom);
  slosh.beyond = runs ? towards(slosh.beyond, std::max(pulls - 1.0, 0.0), kWaveFollows_s) : 0.0;
  if (!runs) slosh.waits_cm3 = 0.0;
  if (slosh.beyond > 0.0) throw_out(state);
  if (swirl <= 0.0 && slosh.wave_cm < kStill_cm && slosh.reach_cm < kStill_cm) slosh = Slosh{};
}

}  // namespace halfdrop
