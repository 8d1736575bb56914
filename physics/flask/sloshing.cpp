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
/// Share of critical damping (our own estimate: leaning walls, shallow liquid, crests that curl).
constexpr double kDamping = 0.3;
constexpr double kHandFollows_s = 0.15, kWaveFollows_s = 0.4;  ///< our own estimates
/// Thrown for each gravity beyond breaking (our own estimate: a drop or two each second).
constexpr double kThrows_cm3_s = 0.035;
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

void throw_out(BenchState& state) {
  Slosh& slosh = state.slosh;
  slosh.waits_cm3 += kThrows_cm3_s * slosh.breaks * kSecondsPerTick;
  if (slosh.waits_cm3 < kThrown_cm3) return;
  slosh.waits_cm3 -= kThrown_cm3;
  take_out(state, Account::bench_top, volume_quanta(kThrown_cm3));
}

}  // namespace

Wave wave_of(const FlaskSpec& flask, double volume_cm3, double swirl) {
  const double gravity_cm_s2 = 100.0 * kGravity_m_s2;
  const double radius_cm = std::sqrt(surface_cm2(flask, volume_cm3) / kPi);
  const double depth_cm = liquid_depth_cm(flask, volume_cm3);
  const double hand_rad_s = 2.0 * kPi * kRounds_per_s * swirl;
  const double own2 = gravity_cm_s2 * kFirstRoot / radius_cm * tanh_of(kFirstRoot * depth_cm / radius_cm);
  const double ratio = hand_rad_s * hand_rad_s / own2;
  const double off = 1.0 - ratio, damped = 2.0 * kDamping;
  const double answer = ratio / std::sqrt(off * off + damped * damped * ratio);
  const double crest_cm = kReach_cm * hand_rad_s * hand_rad_s * radius_cm / gravity_cm_s2 *
                          (1.0 + 2.0 / (kFirstRoot * kFirstRoot - 1.0) * answer);
  return {crest_cm, crest_cm * hand_rad_s * hand_rad_s / gravity_cm_s2};
}

void slosh(const BenchSpec& spec, BenchState& state) {
  Slosh& slosh = state.slosh;
  const double swirl = state.hands.swirl;
  if (swirl <= 0.0 && slosh == Slosh{}) return;
  slosh.turns += kRounds_per_s * swirl * kSecondsPerTick;
  if (slosh.turns >= 1.0) slosh.turns -= 1.0;
  slosh.reach_cm = towards(slosh.reach_cm, swirl > 0.0 ? kReach_cm : 0.0, kHandFollows_s);
  const double volume_cm3 = flask_liquid(state.ledger).volume_cm3();
  Wave wave;
  const double depth_cm = liquid_depth_cm(spec.flask, volume_cm3);
  if (swirl > 0.0 && depth_cm > kWets_cm) wave = wave_of(spec.flask, volume_cm3, swirl);
  // A wave that breaks grows no higher, nor one whose trough bares the bottom.
  const double stands_cm = std::min(wave.crest_cm / std::max(wave.over_gravity, 1.0), depth_cm);
  slosh.wave_cm = towards(slosh.wave_cm, stands_cm, kWaveFollows_s);
  slosh.breaks = towards(slosh.breaks, std::max(wave.over_gravity - 1.0, 0.0), kWaveFollows_s);
  if (slosh.breaks > 0.0) throw_out(state);
  if (swirl <= 0.0 && slosh.wave_cm < kStill_cm && slosh.reach_cm < kStill_cm) slosh = Slosh{};
}

}  // namespace halfdrop
