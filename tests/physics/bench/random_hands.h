#pragma once
// A pair of hands that does anything at all, by a seed: for what must hold whatever is done.

#include <cmath>

#include "physics/bench/bench.h"
#include "physics/random.h"

namespace halfdrop::test {

class RandomHands {
 public:
  explicit RandomHands(std::uint64_t seed) : random_{seed} {}

  /// Now and then does a deed that can be done, now and then moves a hand.
  const Hands& act(const BenchSpec& spec, BenchState& state) {
    if (below(40) == 0) {
      const auto deed = static_cast<Deed>(below(kDeeds));
      if (!check(spec, state, deed)) apply(spec, state, deed);
    }
    if (below(12) == 0) move_a_hand();
    return hands_;
  }

 private:
  int below(int n) { return static_cast<int>(random_.uniform() * n); }
  /// Anything between, and the ends quite often.
  double within(double low, double high) {
    const int end = below(6);
    return end == 0 ? low : end == 1 ? high : random_.uniform(low, high);
  }
  void move_a_hand() {
    switch (below(10)) {
      case 0:
        hands_.tap = within(0.0, 1.0);
        break;
      case 1:
        hands_.eye_mm = within(kEyeLowest_mm, kEyeHighest_mm);
        break;
      case 2:
        hands_.flask_x_cm =
            below(2) == 0 ? random_.uniform(-3.0, 3.0) : within(-kFlaskReach_cm, kFlaskReach_cm);
        break;
      case 3:
        hands_.flask_y_cm = within(0.0, kFlaskLift_cm);
        break;
      case 4:
        hands_.swirl = within(0.0, 1.0);
        break;
      case 5:
        hands_.wash = within(0.0, 1.0);
        break;
      case 6:
        hands_.pour = within(0.0, 1.0);
        break;
      case 7:
        hands_.valve = within(-1.0, 1.0);
        break;
      case 8:
        hands_.tip = within(0.0, 1.0);
        break;
      case 9:
        hands_.fill = within(0.0, 1.0);
        break;
      default:
        break;
    }
  }

  Random random_;
  Hands hands_;
};

}  // namespace halfdrop::test
