#include "game/demonstrator/making_up.h"

#include <algorithm>
#include <array>
#include <cstdio>

namespace halfdrop {

namespace {

/// A bottle tilted well until what falls in a second would be too much, then gently.
struct Tip {
  double how_far, stops_short_g;
};
constexpr std::array kTips = {Tip{0.7, 0.13}, Tip{0.3, 0.0}};
constexpr double kSettles_s = 2.0, kLooks_s = 1.0;
constexpr double kDissolves_s = 45.0;
/// Water: quickly to the foot of the neck, then a millimetre a second, then a tenth of that.
constexpr double kGently = 0.15, kFinely = 0.05;
constexpr double kFoot_mm = -30.0, kNear_mm = -3.0, kOnLine_mm = -0.05;
constexpr double kLimit_s = 120.0;

double seen_mm(const Senses& seen, bool to_bottom) {
  return to_bottom ? seen.preparation.bottom_mm : seen.preparation.edge_mm;
}

void let_in_until(AtBench& bench, double fill, bool to_bottom, double least_mm) {
  bench.hold(&HandsChange::fill, fill);
  bench.watch_until([=](const Senses& seen) { return seen_mm(seen, to_bottom) >= least_mm; }, kLimit_s);
  bench.hold(&HandsChange::fill, 0.0);
}

}  // namespace

std::string weight_text(double shown_g) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.3f", shown_g);
  return text.data();
}

void tip_out_enough(AtBench& bench, double before_g) {
  const Range& serves = bench.level().standard->mass_g;
  const double aim_g = serves.low + 0.4 * (serves.high - serves.low);
  for (const Tip& tip : kTips) {
    const double until_g = aim_g - tip.stops_short_g;
    for (int tries = 0; tries < 100 && before_g - bench.look().preparation.shown_g < until_g; ++tries) {
      bench.hold(&HandsChange::tip, tip.how_far);
      bench.wait(kLooks_s);
      bench.hold(&HandsChange::tip, 0.0);
      bench.wait(kSettles_s);
    }
  }
}

void look_at_mark(AtBench& bench) {
  const double eye_mm = bench.hands().eye_mm - bench.look().preparation.eye_above_mm;
  bench.hold(&HandsChange::eye_mm, std::clamp(eye_mm, kEyeLowest_mm, kEyeHighest_mm));
  bench.wait(0.8);
}

void fill_to_mark(AtBench& bench, bool to_bottom, double past_line_mm) {
  let_in_until(bench, 1.0, to_bottom, kFoot_mm);
  look_at_mark(bench);
  let_in_until(bench, kGently, to_bottom, kNear_mm + past_line_mm);
  let_in_until(bench, kFinely, to_bottom, kOnLine_mm + past_line_mm);
}

void make_up_standard(AtBench& bench, Pencil& pencil, const Habits& habits) {
  if (!bench.level().standard) return;
  const MakingUpHabits& how = habits.making_up;
  const double before_g = bench.look().preparation.shown_g;
  pencil.weighing(kBottleBefore, weight_text(before_g));
  tip_out_enough(bench, before_g);
  pencil.weighing(kBottleAfter, weight_text(bench.look().preparation.shown_g));
  bench.act(Deed::dissolve_standard);
  bench.wait(kDissolves_s);
  bench.act(Deed::pour_into_volumetric);
  for (int i = 0; i < how.washings; ++i) bench.act(Deed::rinse_into_volumetric);
  fill_to_mark(bench, how.to_bottom, how.past_line_mm);
  for (int i = 0; i < how.inversions; ++i) bench.act(Deed::invert_volumetric);
}

}  // namespace halfdrop
