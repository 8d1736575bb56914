#include "game/demonstrator/pipetting.h"

#include <algorithm>

namespace halfdrop {

namespace {

constexpr double kWellAbove_mm = 40.0, kNear_mm = 8.0, kOnLine_mm = 0.05;
/// Letting down: a centimetre and more a second, two millimetres, half of one.
constexpr double kQuickly = 0.12, kGently = 0.02, kFinely = 0.005;
/// The level at which hasty hands lift the tip out, and draw on.
constexpr double kLiftedTooSoon_mm = -16.0;
constexpr double kDrains_s = 6.0;
constexpr double kLimit_s = 60.0;

void valve(AtBench& bench, double value) { bench.hold(&HandsChange::valve, value); }

void until_seen(AtBench& bench, double value, double least_mm, double most_mm) {
  valve(bench, value);
  bench.watch_until(
      [=](const Senses& seen) { return seen.pipette.seen_mm >= least_mm && seen.pipette.seen_mm <= most_mm; },
      kLimit_s);
  valve(bench, 0.0);
}

/// The tip leaves the liquid before the line is reached, and what is wanting is drawn up as air.
void draw_air(AtBench& bench) {
  until_seen(bench, -1.0, -4.0 * kWellAbove_mm, 1e9);
  until_seen(bench, -0.03, kLiftedTooSoon_mm, 1e9);
  bench.act(Deed::lift_pipette);
  until_seen(bench, -0.03, kNear_mm, 1e9);
}

void fill_by_hand(AtBench& bench, const Habits& habits) {
  look_at_line(bench, habits.eye_above_line_mm);
  bench.act(Deed::dip_pipette);
  if (habits.draws_air) {
    draw_air(bench);
  } else {
    draw_past_line(bench);
    bench.act(Deed::lift_pipette);
  }
  if (habits.wipes_pipette) bench.act(Deed::wipe_pipette);
  look_at_line(bench, habits.eye_above_line_mm);
  let_down_to_line(bench);
}

void deliver_by_hand(AtBench& bench, const Habits& habits) {
  bench.act(habits.leans_pipette ? Deed::lean_pipette : Deed::hold_pipette_free);
  valve(bench, 1.0);
  bench.watch_until([](const Senses& seen) { return seen.pipette.flow_cm3_s <= 0.0; }, kLimit_s);
  valve(bench, 0.0);
  if (habits.drains_pipette) bench.wait(kDrains_s);
  if (!habits.leaves_last_drop) bench.act(Deed::blow_out_pipette);
  bench.act(Deed::lift_pipette);
}

}  // namespace

void look_at_line(AtBench& bench, double above_mm) {
  const double eye_mm = bench.hands().eye_mm + above_mm - bench.look().pipette.eye_above_mm;
  bench.hold(&HandsChange::eye_mm, std::clamp(eye_mm, kEyeLowest_mm, kEyeHighest_mm));
  bench.wait(0.8);
}

void draw_past_line(AtBench& bench) { until_seen(bench, -1.0, kWellAbove_mm, 1e9); }

void let_down_to_line(AtBench& bench) {
  until_seen(bench, kQuickly, -1e9, kNear_mm);
  until_seen(bench, kGently, -1e9, 10.0 * kOnLine_mm);
  until_seen(bench, kFinely, -1e9, kOnLine_mm);
}

void pipette_aliquot(AtBench& bench, const Habits& habits) {
  if (bench.level().pipette.by_hand) {
    fill_by_hand(bench, habits);
    return deliver_by_hand(bench, habits);
  }
  bench.act(Deed::fill_pipette);
  bench.act(Deed::deliver_aliquot);
  if (!habits.leaves_last_drop) bench.act(Deed::blow_out_pipette);
}

}  // namespace halfdrop
