#include "game/demonstrator/moves.h"

#include <algorithm>
#include <cmath>

namespace halfdrop {

namespace {

constexpr double kAside_cm = 26.0;
/// The jet then stands 2 mm from the wall: a drop touches it.
constexpr double kLeans_cm = 1.2;
constexpr double kToLookAt_cm = 5.0;
constexpr double kTapStep = 0.01;
/// How long it waits at each step for a drop to show.
constexpr double kGingerly_s = 2.0;
constexpr double kFinestTapStep = 0.0025;
/// Single drops: slow enough to shut the tap between two of them.
constexpr double kDrip_per_s = 0.5;
constexpr double kNothingHangs = 0.01;
/// A reading from an eye this far off level is off by less than 0.04 cm3: good enough while it runs.
constexpr double kNearLevel_mm = 20.0;
/// The clamps, lowered so far that the rim is well below a standing eye, and the time that takes.
constexpr double kLowered_mm = -290.0, kRaises_s = 2.0;

int nearest_five(double seen_cm3) {
  const double twentieths = std::round(seen_cm3 * 100.0) / 5.0;
  return static_cast<int>(std::floor(twentieths + 0.5)) * 5;
}

}  // namespace

void Moves::level_eye(double above_mm) {
  for (int tries = 0; tries < 5; ++tries) {
    const double off_mm = bench_.look().eye_above_level_mm - above_mm;
    if (std::fabs(off_mm) < 0.25) return;
    bench_.hold(&HandsChange::eye_mm,
                std::clamp(bench_.hands().eye_mm - off_mm, kEyeLowest_mm, kEyeHighest_mm));
    bench_.wait(0.8);
  }
}

void Moves::look_from(double eye_mm) {
  bench_.hold(&HandsChange::eye_mm, eye_mm);
  bench_.wait(0.8);
}

void Moves::follow_meniscus(const Senses& seen) {
  if (std::fabs(seen.eye_above_level_mm) < kNearLevel_mm) return;
  // Ahead of it, so that the meniscus falls into view.
  const double ahead_mm = seen.eye_above_level_mm + kNearLevel_mm / 2.0;
  bench_.hold(&HandsChange::eye_mm,
              std::clamp(bench_.hands().eye_mm - ahead_mm, kEyeLowest_mm, kEyeHighest_mm));
}

int Moves::read_hundredths() const { return nearest_five(bench_.look().reading_cm3); }

int Moves::read_top_hundredths() const { return nearest_five(bench_.look().edge_cm3); }

void Moves::open_tap_to(double drops_per_s) {
  double position = drips_at_;
  bool opening = false;
  bool runs = false;
  const auto right = [&](const Senses& seen) {
    runs = runs || seen.drops_per_s > 0.0;
    const double step = runs && drops_per_s <= 4.0 * kDrip_per_s ? kFinestTapStep : kTapStep;
    if (!opening && seen.drops_per_s > 2.0 * drops_per_s && position > step) {
      position -= step;
    } else if (seen.drops_per_s < drops_per_s && position < 1.0) {
      opening = true;
      position = std::min(1.0, position + step);
    } else {
      return true;
    }
    bench_.hold(&HandsChange::tap, position);
    return false;
  };
  bench_.hold(&HandsChange::tap, position);
  bench_.watch_until(right, 30.0);
}

void Moves::open_tap_gingerly() {
  for (double position = kTapStep; position < 1.0; position += kTapStep) {
    bench_.hold(&HandsChange::tap, position);
    if (bench_.watch_until([](const Senses& seen) { return seen.hanging_share > 0.0; }, kGingerly_s)) return;
  }
}

void Moves::one_drop() {
  double hung = bench_.look().hanging_share;
  open_tap_to(kDrip_per_s);
  drips_at_ = bench_.hands().tap;
  const auto fell = [&](const Senses& seen) {
    const bool falls = seen.falling > 0 || seen.hanging_share < hung;
    hung = seen.hanging_share;
    return falls;
  };
  bench_.watch_until(fell, 20.0);
  shut_tap();
}

void Moves::begin_drop(double share, double drops_per_s) {
  open_tap_to(drops_per_s);
  drips_at_ = bench_.hands().tap;
  bench_.watch_until([share](const Senses& seen) { return seen.hanging_share >= share; }, 20.0);
  shut_tap();
}

void Moves::half_drop() {
  begin_drop(0.5, kDrip_per_s);
  touch_off();
}

void Moves::touch_off() {
  const Senses seen = bench_.look();
  if (seen.hanging_share < kNothingHangs) return;
  bench_.act(Deed::touch_off_drop);
  if (seen.flask_under_jet && !seen.beaker_under) wash_down(1.0);
}

void Moves::swirl() {
  if (habits_.swirls) bench_.hold(&HandsChange::swirl, habits_.swirl);
}

void Moves::wash_down(double seconds) {
  if (!habits_.rinses_wall) return;
  bench_.hold(&HandsChange::wash, 0.6);
  bench_.wait(seconds);
  bench_.hold(&HandsChange::wash, 0.0);
}

void Moves::slide_flask(double to_cm) {
  constexpr int kSteps = 8;
  const double from_cm = bench_.hands().flask_x_cm;
  for (int i = 1; i <= kSteps; ++i) {
    bench_.hold(&HandsChange::flask_x_cm, from_cm + (to_cm - from_cm) * i / kSteps);
    bench_.wait(0.15);
  }
}

void Moves::flask_under() { slide_flask(0.0); }

void Moves::lean_on_neck(double side) { slide_flask(side < 0.0 ? kLeans_cm : -kLeans_cm); }

void Moves::look_at_flask_aside(double for_s) {
  slide_flask(kToLookAt_cm);
  bench_.wait(for_s);
  slide_flask(0.0);
}

void Moves::flask_aside() {
  stop_swirling();
  slide_flask(kAside_cm);
}

void Moves::lower_to_fill() {
  if (!bench_.level().filling_below_eye || !habits_.lowers_to_fill || bench_.look().over_edge) return;
  bench_.watch_until([](const Senses& seen) { return seen.falling == 0; }, 2.0);
  bench_.act(Deed::swing_over_edge);
  bench_.hold(&HandsChange::clamp_mm, kLowered_mm);
  bench_.wait(kRaises_s);
}

void Moves::raise_again() {
  if (!bench_.look().over_edge) return;
  bench_.hold(&HandsChange::clamp_mm, 0.0);
  bench_.wait(kRaises_s);
  bench_.act(Deed::swing_back);
  bench_.hold(&HandsChange::eye_mm, 0.0);  // at the zero mark again
}

}  // namespace halfdrop
