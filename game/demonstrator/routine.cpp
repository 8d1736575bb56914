#include "game/demonstrator/routine.h"

#include <algorithm>

#include "game/demonstrator/rinsing.h"

namespace halfdrop {

namespace {

const std::string kTrial = "trial";
constexpr int kIndicatorDrops = 3;
/// Above the zero mark, for jet and zeroing to take.
constexpr double kAboveZero_cm3 = -0.6;
/// Where a run starts: on the scale, and enough below the zero mark for an eye that looks down on it.
constexpr double kStart_cm3 = 0.4;
constexpr double kSlowFillingTakes_cm3 = 0.1;
constexpr double kSlowBefore_cm3 = 1.25;
constexpr int kConcordant = 10;  // hundredths
constexpr double kSpare_cm3 = 2.0;

}  // namespace

void Routine::dress() {
  bench_.act(Deed::put_on_coat);
  if (habits_.wears_goggles) bench_.act(Deed::put_on_goggles);
  if (!bench_.level().drill && habits_.lays_tile) bench_.act(Deed::lay_tile);
}

void Routine::make_room_in_flask() {
  if (aliquots_in_flask_ == 0) return;
  if (habits_.cleans_flask) {
    bench_.act(Deed::rinse_flask);
  } else if (aliquots_in_flask_ > 1) {
    bench_.act(Deed::empty_flask);
  } else {
    return;
  }
  aliquots_in_flask_ = 0;
}

void Routine::prepare_flask() {
  make_room_in_flask();
  if (habits_.rinses_flask_with_sample) bench_.act(Deed::rinse_flask_with_sample);
  bench_.act(Deed::fill_pipette);
  bench_.act(Deed::deliver_aliquot);
  if (!habits_.leaves_last_drop) bench_.act(Deed::blow_out_pipette);
  ++aliquots_in_flask_;
  for (int i = 0; i < kIndicatorDrops; ++i) bench_.act(Deed::add_indicator);
}

void Routine::clear_tip() {
  if (bench_.look().hanging_share > 0.0) bench_.act(Deed::touch_off_drop);
}

void Routine::pour_above(double reading_cm3) {
  const auto above = [](double mark_cm3) {
    return [mark_cm3](const Senses& seen) { return seen.meniscus_in_sight && seen.reading_cm3 < mark_cm3; };
  };
  bench_.hold(&HandsChange::eye_mm, 0.0);
  bench_.hold(&HandsChange::pour, 1.0);
  bench_.watch_until(above(5.0), 60.0);
  bench_.hold(&HandsChange::pour, 0.2);
  bench_.watch_until(above(reading_cm3), 60.0);
  bench_.hold(&HandsChange::pour, 0.0);
}

void Routine::drip_jet_full() {
  moves_.open_tap_gingerly();
  bench_.watch_until([](const Senses& seen) { return seen.falling > 0; }, 60.0);
  moves_.shut_tap();
  clear_tip();
}

void Routine::fill_jet() {
  bench_.hold(&HandsChange::tap, 1.0);
  bench_.watch_until([](const Senses& seen) { return seen.jet_full; }, 20.0);
}

void Routine::drain_to(double reading_cm3) {
  bench_.watch_until([&](const Senses& seen) { return seen.reading_cm3 >= reading_cm3; }, 60.0);
  moves_.shut_tap();
}

void Routine::fill_burette() {
  bench_.act(Deed::put_beaker_under);
  if (filled_before_ && (!habits_.fills_jet || habits_.fills_jet_slowly)) run_out(bench_);
  moves_.shut_tap();
  if (!filled_before_) rinse_burette(bench_, moves_, habits_);
  if (!filled_before_ || habits_.lifts_funnel_out) bench_.act(Deed::put_in_funnel);
  filled_before_ = true;
  if (habits_.fills_jet_slowly) {
    pour_above(kStart_cm3 - kSlowFillingTakes_cm3);
    drip_jet_full();
  } else if (habits_.fills_jet) {
    // A short tube would run over.
    pour_above(std::max(kAboveZero_cm3, -0.5 * bench_.level().burette.above_zero_cm3));
    fill_jet();
    drain_to(kStart_cm3);
  } else {
    pour_above(kStart_cm3);
  }
  if (habits_.lifts_funnel_out) bench_.act(Deed::lift_out_funnel);
  clear_tip();
  bench_.act(Deed::take_beaker_away);
}

bool Routine::enough_left() const {
  if (!filled_before_ || habits_.fills_for_every_run) return false;
  const double needs_cm3 = (last_reading_ + paper_.titre_hundredths(kTrial)) / 100.0 + kSpare_cm3;
  return needs_cm3 <= bench_.level().burette.nominal_cm3;
}

void Routine::make_burette_ready() {
  if (!enough_left()) return fill_burette();
  if (bench_.look().hanging_share <= 0.0) return;
  bench_.act(Deed::put_beaker_under);
  clear_tip();
  bench_.act(Deed::take_beaker_away);
}

int Routine::read(double eye_too_high_mm) {
  moves_.level_eye(eye_too_high_mm);
  last_reading_ = moves_.read_hundredths();
  return last_reading_;
}

int Routine::read_from(double eye_mm) {
  moves_.look_from(eye_mm);
  last_reading_ = moves_.read_hundredths();
  return last_reading_;
}

void Routine::begin_run(const std::string& run) {
  prepare_flask();
  make_burette_ready();
  paper_.initial(run, read(habits_.eye_too_high_at_start_mm));
  eye_at_start_mm_ = bench_.hands().eye_mm;
}

void Routine::end_run(const std::string& run, Titration& titration) {
  titration.let_it_last();
  moves_.stop_swirling();
  paper_.final(run, habits_.moves_eye ? read(habits_.eye_too_high_at_end_mm) : read_from(eye_at_start_mm_));
  moves_.flask_aside();
  mop_up();
}

void Routine::mop_up() {
  if (bench_.look().bench_wet) bench_.act(Deed::wipe_bench);
}

void Routine::trial() {
  Titration titration(bench_, moves_, habits_);
  rinse_pipette(bench_, habits_);
  begin_run(kTrial);
  titration.quick();
  end_run(kTrial, titration);
}

void Routine::accurate_runs() {
  for (int number = 1; number <= bench_.level().accurate_runs && !bench_.gave_up(); ++number) {
    const std::string run = std::to_string(number);
    Titration titration(bench_, moves_, habits_);
    begin_run(run);
    if (habits_.slows_down) {
      const double expected_cm3 = (last_reading_ + paper_.titre_hundredths(kTrial)) / 100.0;
      titration.careful(expected_cm3 - kSlowBefore_cm3);
    } else {
      titration.quick();
    }
    end_run(run, titration);
    done_.push_back(run);
    const auto pair = paper_.nearest_pair(done_);
    if (pair && pair->apart_hundredths <= kConcordant) return;
  }
}

void Routine::finish() {
  const auto pair = paper_.nearest_pair(done_);
  if (!pair) return bench_.give_up("the sheet has room for fewer than two accurate runs");
  std::vector<std::string> counted = {pair->one, pair->other};
  if (habits_.counts_trial) counted.insert(counted.begin(), kTrial);
  paper_.work_out(counted);
  mop_up();
}

}  // namespace halfdrop
