#pragma once
// The hand that swirls, and the wave that runs round in the flask with it. The hand holds the flask by its
// neck and leads its foot round in a circle.
//
// The wave is that of a liquid in a round vessel shaken upright in a circle, to its first mode: at the wall
// its crest stands A w^2 R / g |1 + 2 / (e^2 - 1) w^2 / (w1^2 - w^2)| above the level, e = 1.8412, w1^2 = (g
// e / R) tanh(e h / R) (Reclari et al., Phys. Fluids 26 (2014) 052104; from memory), the mode damped by a
// share of critical damping; no higher than the liquid is deep. R is that of the surface. A hand that goes
// round faster than kThrowsFrom throws drops out of the neck. From where on, and how much, are our own
// estimates: swirling well throws none, swirling as hard as one can about a drop a second. Left out: how
// high the neck is and how much liquid there is, that the wall leans in and the flask tilts, and liquid that
// is thrown against the wall and comes back.

namespace halfdrop {

struct BenchSpec;
struct BenchState;
struct FlaskSpec;

/// Where the hand and the wave are.
struct Slosh {
  double turns = 0.0;      ///< of the hand's circle, 0..1
  double reach_cm = 0.0;   ///< radius of that circle: the foot is so far out from under the neck
  double wave_cm = 0.0;    ///< crest above the level
  double beyond = 0.0;     ///< how far beyond kThrowsFrom the hand is, as a share of it
  double waits_cm3 = 0.0;  ///< broken loose; a drop is thrown when there is enough

  friend bool operator==(const Slosh&, const Slosh&) = default;
};

/// Radius of a hand's circle, and its rounds in a second when it swirls as hard as it can (our own
/// estimates).
inline constexpr double kReach_cm = 1.0;
inline constexpr double kRounds_per_s = 3.3;
/// The hand's acceleration A w^2 over gravity from which on drops are thrown.
inline constexpr double kThrowsFrom = 0.35;
/// What one thrown drop holds (our own estimate).
inline constexpr double kThrown_cm3 = 0.02;

/// Height of the crest above the level, cm, of the wave that a steady hand keeps up, however deep the liquid.
/// Precondition: there is liquid.
[[nodiscard]] double crest_cm(const FlaskSpec& flask, double volume_cm3, double swirl);

/// One tick: hand, wave, and what is thrown out.
void slosh(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop
