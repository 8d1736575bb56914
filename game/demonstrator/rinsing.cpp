#include "game/demonstrator/rinsing.h"

#include "physics/burette/rinsing.h"

namespace halfdrop {

namespace {

constexpr int kRinses = 2;
/// Meniscus below the last mark but these: with what is under the scale some 8 cm3 (5 to 10 are taken, common
/// practice).
constexpr double kUpToMarks_cm3 = 5.0;
constexpr double kTurned_s = 8.0;

void pour_a_little(AtBench& bench) {
  const BuretteSpec& burette = bench.level().burette;
  const double mark_cm3 = burette.nominal_cm3 - kUpToMarks_cm3;
  bench.hold(&HandsChange::eye_mm,
             bench.hands().clamp_mm - burette.scale_length_mm * mark_cm3 / burette.nominal_cm3);
  bench.act(Deed::put_in_funnel);
  bench.hold(&HandsChange::pour, 0.5);
  bench.watch_until(
      [&](const Senses& seen) { return seen.meniscus_in_sight && seen.reading_cm3 <= mark_cm3; }, 30.0);
  bench.hold(&HandsChange::pour, 0.0);
  bench.act(Deed::lift_out_funnel);
}

void turn_about(AtBench& bench) {
  bench.hold(&HandsChange::tilt_degrees, kHeldAslant_degrees);
  bench.wait(kTurned_s);
  bench.hold(&HandsChange::tilt_degrees, 0.0);
}

}  // namespace

void run_out(AtBench& bench) {
  bench.hold(&HandsChange::tap, 1.0);
  bench.watch_until([](const Senses& seen) { return !seen.meniscus_in_sight; }, 600.0);
  bench.wait(10.0);
  if (bench.look().hanging_share > 0.0) bench.act(Deed::touch_off_drop);
}

void rinse_burette(AtBench& bench, Moves& moves, const Habits& habits) {
  const bool asked = habits.rinses_burette && bench.level().burette.wet_cm3 > 0.0;
  if (!asked && !habits.rinses_burette_with_sample) return;
  if (habits.rinses_burette_with_sample) bench.act(Deed::take_up_sample);
  for (int i = 0; i < kRinses; ++i) {
    moves.shut_tap();
    moves.lower_to_fill();
    pour_a_little(bench);
    moves.raise_again();
    turn_about(bench);
    run_out(bench);
  }
  moves.shut_tap();
  if (habits.rinses_burette_with_sample) bench.act(Deed::take_up_titrant);
}

void rinse_pipette(AtBench& bench, const Habits& habits) {
  if (habits.rinses_pipette && bench.level().pipette.wet_cm3 > 0.0)
    bench.act(Deed::rinse_pipette_with_sample);
}

}  // namespace halfdrop
