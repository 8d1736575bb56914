#pragma once
// The hand that swirls, and the wave that runs round in the flask with it. The hand holds the flask by its
// neck and leads its foot round in a circle.
//
// The wave is that of a liquid in a round vessel shaken in a circle, to first order: at the wall its crest
// stands A w^2 R / g (1 + 2 / (e^2 - 1) w^2 / (w1^2 - w^2)) above the level, e = 1.8412, w1^2 = (g e / R)
// tanh(e h / R) (Reclari et al., Phys. Fluids 26 (2014) 052104; from memory), damped as stated. Where its
// crest would fall faster than freely the wave breaks and throws drops out of the neck. R is that of the
// surface; that the wall leans in is left out, and so is liquid that is thrown against it and comes back.

namespace halfdrop {

struct BenchSpec;
struct BenchState;
struct FlaskSpec;

/// Where the hand and the wave are.
struct Slosh {
  double turns = 0.0;      ///< of the hand's circle, 0..1
  double reach_cm = 0.0;   ///< radius of that circle: the foot is so far out from under the neck
  double wave_cm = 0.0;    ///< crest above the level
  double breaks = 0.0;     ///< how far beyond breaking: crest's acceleration over gravity less 1
  double waits_cm3 = 0.0;  ///< broken loose; a drop is thrown when there is enough

  friend bool operator==(const Slosh&, const Slosh&) = default;
};

/// Radius of a hand's circle, and its rounds in a second when it swirls as hard as it can (our own
/// estimates).
inline constexpr double kReach_cm = 1.0;
inline constexpr double kRounds_per_s = 3.3;
/// What one thrown drop holds (our own estimate).
inline constexpr double kThrown_cm3 = 0.02;

/// A wave by its crest above the level, and its crest's acceleration over gravity.
struct Wave {
  double crest_cm = 0.0;
  double over_gravity = 0.0;
};
/// The wave that a steady hand keeps up, as if it did not break. Precondition: there is liquid.
[[nodiscard]] Wave wave_of(const FlaskSpec& flask, double volume_cm3, double swirl);

/// One tick: hand, wave, and what is thrown out.
void slosh(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop
