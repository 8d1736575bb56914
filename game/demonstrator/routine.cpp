#include "game/demonstrator/routine.h"

#include <algorithm>
#include <cmath>

#include "game/demonstrator/making_up.h"
#include "game/demonstrator/pipetting.h"
#include "game/demonstrator/rinsing.h"

namespace halfdrop {

namespace {

const std::string kTrial = "trial";
/// Above where a run is to start, for jet and zeroing to take.
constexpr double kAboveStart_cm3 = 1.0;
constexpr double kSlowFillingTakes_cm3 = 0.1;
constexpr double kSlowBefore_cm3 = 1.25;
/// Where both changes are soft, a trial overshoots by more.
constexpr double kSlowBeforeSoft_cm3 = 2.0;
constexpr int kConcordant = 10;  // hundredths
constexpr double kSpare_cm3 = 2.0;
/// Poured through an open tap before that is seen.
constexpr double kSeenToRunAt_cm3 = 30.0;
/// The tap that was opened too soon, and a drop that was begun.
constexpr int kDropsBeforeFlask = 3;
constexpr double kDripsBeforeFlask_per_s = 1.0;
constexpr double kNearlyFull = 0.95, kSwells_per_s = 0.2;
/// From looking at two titres to changing one (longer than a slip of the pen takes to be put right).
constexpr double kThinksItOver_s = 40.0;

/// From the printed figure below upwards: 24.60 becomes 25.40.
int read_upwards(int hundredths) {
  const int past = hundredths % 100;
  return past == 0 ? hundredths : hundredths + 2 * (100 - past);
}

}  // namespace

void Routine::dress() {
  if (habits_.wears_coat) bench_.act(Deed::put_on_coat);
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
  if (!habits_.rinses_pipette) bench_.act(Deed::rinse_pipette_with_water);
  pipette_aliquot(bench_, habits_);
  ++aliquots_in_flask_;
  const int drops =
      habits_.indicator_drops + habits_.more_indicator_each_run * static_cast<int>(done_.size());
  for (int i = 0; i < drops; ++i) bench_.act(Deed::add_indicator);
  if (habits_.second_indicator_at_start) add_second_indicator();
}

void Routine::clear_tip() {
  if (bench_.look().hanging_share > 0.0) bench_.act(Deed::touch_off_drop);
}

void Routine::pour_above(double reading_cm3) {
  const auto above = [](double mark_cm3) {
    return [mark_cm3](const Senses& seen) { return seen.meniscus_in_sight && seen.reading_cm3 < mark_cm3; };
  };
  bench_.hold(&HandsChange::eye_mm, bench_.hands().clamp_mm);  // at the zero mark
  bench_.hold(&HandsChange::pour, 1.0);
  if (bench_.hands().tap > 0.0) {
    bench_.watch_until(above(kSeenToRunAt_cm3), 60.0);
    moves_.shut_tap();
  }
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
  if (!filled_before_ && !habits_.shuts_tap_before_pouring) bench_.hold(&HandsChange::tap, 1.0);
  moves_.lower_to_fill();
  if (habits_.uses_funnel && (!filled_before_ || habits_.lifts_funnel_out)) bench_.act(Deed::put_in_funnel);
  filled_before_ = true;
  if (habits_.fills_jet_slowly) {
    pour_above(habits_.starts_at_cm3 - kSlowFillingTakes_cm3);
    moves_.raise_again();
    drip_jet_full();
  } else if (habits_.fills_jet) {
    // A short tube would run over.
    pour_above(
        std::max(habits_.starts_at_cm3 - kAboveStart_cm3, -0.5 * bench_.level().burette.above_zero_cm3));
    moves_.raise_again();
    fill_jet();
    drain_to(habits_.starts_at_cm3);
  } else {
    pour_above(habits_.starts_at_cm3);
    moves_.raise_again();
  }
  if (habits_.uses_funnel && habits_.lifts_funnel_out) bench_.act(Deed::lift_out_funnel);
  clear_tip();
  bench_.act(Deed::take_beaker_away);
}

bool Routine::enough_left() const {
  if (!filled_before_ || habits_.fills_for_every_run) return false;
  const double needs_cm3 = (stands_at_ + run_took_.value_or(0)) / 100.0 + kSpare_cm3;
  return needs_cm3 <= bench_.level().burette.nominal_cm3;
}

void Routine::make_burette_ready() {
  if (!enough_left()) {
    fill_burette();
  } else if (bench_.look().hanging_share > 0.0) {
    bench_.act(Deed::put_beaker_under);
    clear_tip();
    bench_.act(Deed::take_beaker_away);
  }
  if (habits_.begins_with_drop_hanging) moves_.begin_drop(kNearlyFull, kSwells_per_s);
}

void Routine::fill_jet_late() {
  bench_.act(Deed::put_beaker_under);
  fill_jet();
  moves_.shut_tap();
  clear_tip();
  bench_.act(Deed::take_beaker_away);
}

int Routine::read(bool top) {
  stands_at_ = moves_.read_hundredths();
  const int seen = top ? moves_.read_top_hundredths() : stands_at_;
  const ReadingHabits& reading = habits_.reading;
  if (reading.decimals < 2) return static_cast<int>(std::lround(bench_.look().reading_cm3 * 10.0)) * 10;
  if (reading.decimals > 2) return static_cast<int>(std::lround(bench_.look().reading_cm3 * 100.0));
  return reading.upwards ? read_upwards(seen) : seen;
}

int Routine::first_reading() {
  moves_.level_eye(habits_.eye_too_high_at_start_mm);
  const int reading = read(habits_.reading.top_at_start);
  return habits_.reading.writes_zero_unread ? 0 : reading;
}

int Routine::last_reading() {
  if (habits_.moves_eye) {
    moves_.level_eye(habits_.eye_too_high_at_end_mm);
  } else {
    moves_.look_from(eye_at_start_mm_);
  }
  return read(habits_.reading.top_at_end);
}

void Routine::drip_before_flask() {
  moves_.open_tap_to(kDripsBeforeFlask_per_s);
  bench_.wait(kDropsBeforeFlask / kDripsBeforeFlask_per_s);
}

void Routine::begin_run(const std::string& run) {
  prepare_flask();
  make_burette_ready();
  const int reading = first_reading();
  began_at_ = stands_at_;
  if (writes_down(run)) pencil_.initial(run, reading);
  eye_at_start_mm_ = bench_.hands().eye_mm;
  if (habits_.fills_jet_after_reading) fill_jet_late();
  if (habits_.opens_tap_before_flask) drip_before_flask();
}

int Routine::read_endpoint(Titration& titration) {
  while (true) {
    titration.let_it_last();
    moves_.stop_swirling();
    const int reading = last_reading();
    if (!titration.came_back()) return reading;
    titration.take_up_again();
  }
}

void Routine::add_second_indicator() {
  if (!bench_.level().then) return;
  for (int i = 0; i < habits_.indicator_drops; ++i) bench_.act(Deed::add_second_indicator);
}

void Routine::pass_first_endpoint(const std::string& run, Titration& titration) {
  if (!bench_.level().then) return;
  const int reading = read_endpoint(titration);
  if (!first_took_) first_took_ = stands_at_ - began_at_;
  if (writes_down(run)) pencil_.first_endpoint(run, reading);
  if (habits_.adds_second_indicator && !habits_.second_indicator_at_start) add_second_indicator();
  titration.go_on();
}

void Routine::end_run(const std::string& run, Titration& titration) {
  const int reading = read_endpoint(titration);
  if (!run_took_) run_took_ = stands_at_ - began_at_;
  if (!habits_.reading.written_at_once) {
    moves_.flask_aside();
    make_room_in_flask();
  }
  if (writes_down(run)) pencil_.final(run, reading);
  moves_.flask_aside();
  mop_up();
}

bool Routine::writes_down(const std::string& run) const { return run != kTrial || habits_.writes_trial_down; }

void Routine::mop_up() {
  if (habits_.wipes_bench && bench_.look().bench_wet) bench_.act(Deed::wipe_bench);
}

void Routine::trial() {
  make_up_standard(bench_, pencil_, habits_);
  rinse_pipette(bench_, habits_);
  if (habits_.makes_trial) {
    Titration titration(bench_, moves_, habits_);
    begin_run(kTrial);
    titration.quick();
    pass_first_endpoint(kTrial, titration);
    if (bench_.level().then) titration.quick();
    end_run(kTrial, titration);
  }
  if (habits_.takes_goggles_off_early) bench_.act(Deed::take_off_goggles);
}

Habits Routine::habits_of(int number) const {
  Habits habits = habits_;
  const bool second = number % 2 == 0;
  if (!second) habits.drops_past_tint = 0;
  if (habits.hurries_second_run && second) {
    habits.slows_down = false;
    habits.trusts_a_tint = false;
  }
  return habits;
}

void Routine::accurate_run(int number) {
  const std::string run = std::to_string(number);
  const Habits habits = habits_of(number);
  Titration titration(bench_, moves_, habits);
  begin_run(run);
  const auto titrate = [&](const std::optional<int>& took) {
    if (habits.slows_down && took) {
      const double slow_before_cm3 = bench_.level().then ? kSlowBeforeSoft_cm3 : kSlowBefore_cm3;
      titration.careful((began_at_ + *took) / 100.0 - slow_before_cm3);
    } else {
      titration.quick();
    }
  };
  titrate(bench_.level().then ? first_took_ : run_took_);
  pass_first_endpoint(run, titration);
  if (bench_.level().then) titrate(run_took_);
  end_run(run, titration);
  done_.push_back(run);
}

bool Routine::another_run() const {
  if (habits_.repeats == Repeats::once) return done_.empty();
  if (habits_.repeats == Repeats::twice_whatever) return done_.size() < 2;
  const auto pair = pencil_.nearest_pair(done_);
  return !pair || pair->apart_hundredths > kConcordant;
}

void Routine::accurate_runs() {
  for (int number = 1; number <= bench_.level().accurate_runs && !bench_.gave_up() && another_run(); ++number)
    accurate_run(number);
}

std::vector<std::string> Routine::counted() const {
  std::vector<std::string> runs = done_;
  if (habits_.repeats == Repeats::until_concordant) {
    runs.clear();
    if (const auto pair = pencil_.nearest_pair(done_)) runs = {pair->one, pair->other};
  }
  if (habits_.counts_trial && !runs.empty()) runs.insert(runs.begin(), kTrial);
  return runs;
}

void Routine::adjust_titres() {
  make_room_in_flask();
  bench_.wait(kThinksItOver_s);
  for (const std::string& run : done_) {
    if (pencil_.titre_hundredths(run) != pencil_.titre_hundredths(done_.front()))
      pencil_.adjust(run, done_.front());
  }
}

void Routine::finish() {
  const std::vector<std::string> runs = counted();
  if (runs.empty()) return bench_.give_up("the sheet has room for fewer than two accurate runs");
  if (habits_.working.adjusts_titres) adjust_titres();
  pencil_.work_out(runs);
  mop_up();
}

}  // namespace halfdrop
