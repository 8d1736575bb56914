#include "game/demonstrator/titration.h"

#include <algorithm>
#include <cmath>

#include "physics/flask/contents.h"

namespace halfdrop {

namespace {

/// 0.4 cm3/s, below the 0.5 cm3/s that a jet should not exceed (USP <31>).
constexpr double kStream_drops_per_s = 8.0;
constexpr double kSameAllOver = 0.5;
constexpr double kMixes_s = 8.0;
constexpr double kSpreads_s = 30.0;
/// Until the eye has seen what a drop did where it landed.
constexpr double kShows_s = 0.2;
/// Who does not swirl does not wait for it to mix either.
constexpr double kGlances_s = 1.0;
/// From seeing the colour come to having the tap shut (our own estimate).
constexpr double kReacts_s = 0.5;
/// A flash that takes this long to fade says that the endpoint is a few drops away (our own estimate).
constexpr double kLingers_s = 2.2;
/// The tap that was not shut while the flask is looked at.
constexpr double kStaysOpen_drops_per_s = 0.5, kLooksAside_s = 4.0;
/// CIEDE2000 of a colour that nobody could miss (our own choice).
constexpr double kPlain = 20.0;
constexpr double kMustLast_s = 30.0;
constexpr int kMostDrops = 200;
/// A drop about to fall, and slow enough to be stopped there.
constexpr double kNearlyFull = 0.95;
constexpr double kSwells_per_s = 0.2;

/// Half way through a run, and as much as a careful hand pours at once (our own choice).
constexpr double kTopsUpBefore_cm3 = 8.0, kTopsUp_cm3 = 2.0;
/// CIEDE2000 that a watched colour loses before it is called paler: just noticeable.
constexpr double kJustPaler = 1.0;
/// How long a colour is watched that fades as carbon dioxide comes in, and how often a drop is added.
constexpr double kFades_s = 300.0;
constexpr int kChases = 3;

/// CIEDE2000 left of a colour that has certainly gone (our own choice).
constexpr double kCertainlyGone = 0.5;
/// ... and of one that a few drops more will take away.
constexpr double kNearlyGone = 2.0 * kFirstVisibleChange;
/// ... of one that a few drops more will bring.
constexpr double kNearlyCome = 0.5 * kFirstVisibleChange;

Senses looked_for(Senses seen, bool second) {
  if (!second && seen.first) static_cast<ColourSeen&>(seen) = *seen.first;
  return seen;
}

}  // namespace

Senses Titration::look() const { return looked_for(bench_.look(), second_); }

bool Titration::watch_until(const std::function<bool(const Senses&)>& holds, double limit_s) {
  return bench_.watch_until([&](const Senses& seen) { return holds(looked_for(seen, second_)); }, limit_s);
}

bool Titration::turned(const Senses& seen, double change, double left) const {
  return gains_colour_ ? seen.common_change >= change : seen.common_left <= left;
}

bool Titration::looks_turned(const Senses& seen) const {
  return turned(seen, kFirstVisibleChange, kFirstVisibleChange);
}

bool Titration::turned() const {
  const Senses seen = look();
  return habits_.trusts_a_tint ? looks_turned(seen) : turned(seen, kPlain, kCertainlyGone);
}

void Titration::go_on() {
  second_ = true;
  gains_colour_ = bench_.level().then->endpoint_gains_colour;
  past_end_ = habits_.drops_past_tint;
}

void Titration::begin() {
  if (habits_.rinses_wall) {
    moves_.flask_under();
  } else {
    moves_.lean_on_neck(1.0);
  }
  moves_.swirl();
  // Where the indicator shows at once, its drops have to be spread before anything can be told from the
  // colour.
  const auto as_before = [](const Senses& seen) {
    return std::max({seen.common_change, seen.streak_change, seen.streaks}) < kSameAllOver;
  };
  watch_until(as_before, habits_.swirls ? kSpreads_s : kGlances_s);
}

void Titration::wait_until_even() {
  watch_until([](const Senses& seen) { return seen.streaks < kSameAllOver; },
              habits_.swirls ? kMixes_s : kGlances_s);
}

bool Titration::stream_until(const std::function<bool(const Senses&)>& seen_enough) {
  const double last_mark_cm3 = bench_.level().burette.nominal_cm3;
  bool run_down = false;
  const auto enough = [&](const Senses& seen) {
    moves_.follow_meniscus(seen);
    run_down = !seen.meniscus_in_sight || seen.reading_cm3 >= last_mark_cm3;
    return run_down || seen_enough(seen);
  };
  if (!enough(look())) {
    moves_.open_tap_to(kStream_drops_per_s);
    watch_until(enough, 600.0);
    bench_.wait(kReacts_s);
  }
  moves_.shut_tap();
  if (run_down) bench_.give_up("the burette ran down before the colour stayed");
  return !run_down;
}

double Titration::mix() {
  const double waits_s = habits_.swirls ? kMixes_s : kGlances_s;
  watch_until([](const Senses& seen) { return seen.falling == 0; }, 1.0);
  bench_.wait(kShows_s);
  const double from_s = look().time_s;
  watch_until([](const Senses& seen) { return seen.streak_change < kFirstVisibleChange; }, waits_s);
  const double faded_s = look().time_s - from_s;
  wait_until_even();
  return faded_s;
}

void Titration::quick() {
  begin();
  while (!bench_.gave_up() && !turned()) {
    if (!stream_until([this](const Senses& seen) { return looks_turned(seen); })) return;
    mix();
  }
}

void Titration::careful(double slow_from_cm3) {
  careful_ = true;
  begin();
  const auto until = [this](double reading_cm3) {
    return stream_until([=](const Senses& seen) { return seen.reading_cm3 >= reading_cm3; });
  };
  if (habits_.tops_up_in_run) {
    if (!until(slow_from_cm3 - kTopsUpBefore_cm3)) return;
    slow_from_cm3 -= top_up();
  }
  if (!until(slow_from_cm3)) return;
  mix();
  moves_.wash_down(2.5);
  wait_until_even();  // wash water lies on top, pale, until it is mixed in
  if (!habits_.keeps_flask_in_line) drip_aside();
  drop_by_drop();
}

void Titration::drip_aside() {
  moves_.open_tap_to(kStaysOpen_drops_per_s);
  moves_.look_at_flask_aside(kLooksAside_s);
  moves_.shut_tap();
}

double Titration::top_up() {
  const double from_cm3 = look().reading_cm3;
  bench_.act(Deed::put_in_funnel);
  bench_.hold(&HandsChange::pour, 0.1);
  watch_until([=](const Senses& seen) { return seen.reading_cm3 <= from_cm3 - kTopsUp_cm3; }, 60.0);
  bench_.hold(&HandsChange::pour, 0.0);
  bench_.act(Deed::lift_out_funnel);
  return from_cm3 - look().reading_cm3;
}

void Titration::chase_fade() {
  for (int times = 0; times < kChases && !bench_.gave_up(); ++times) {
    const double was = look().common_change;
    const auto paler = [was](const Senses& seen) { return seen.common_change < was - kJustPaler; };
    if (!watch_until(paler, kFades_s)) return;
    add(false);
    moves_.touch_off();
    moves_.wash_down(2.0);
  }
  bench_.wait(kMustLast_s);
}

bool Titration::done() const {
  return habits_.waits_to_fade ? turned() : look().streak_change >= kFirstVisibleChange;
}

double Titration::add(bool half) {
  if (half) {
    moves_.half_drop();
  } else {
    moves_.one_drop();
  }
  if (habits_.waits_to_fade) return mix();
  bench_.wait(kGlances_s);
  return 0.0;
}

/// Where both changes are soft each flash lingers, long before the end: the colour that stays tells, by what
/// has come of it or what is left.
bool Titration::end_is_near(double faded_s) const {
  if (bench_.level().then)
    return gains_colour_ ? look().common_change > kNearlyCome : look().common_left < kNearlyGone;
  return faded_s > kLingers_s;
}

void Titration::drop_by_drop(bool halves) {
  bool lingers = halves;
  for (int drops = 0; drops < kMostDrops && !done() && !bench_.gave_up(); ++drops) {
    if (!habits_.rinses_wall) moves_.lean_on_neck(drops % 2 == 0 ? -1.0 : 1.0);
    const double faded_s = add(lingers);
    lingers = lingers || (habits_.swirls && end_is_near(faded_s));
  }
  if (!done()) bench_.give_up("the colour did not stay");
  for (int drops = 0; drops < past_end_; ++drops) add(false);
}

bool Titration::came_back() const {
  if (gains_colour_ || !habits_.waits || !habits_.swirls || !habits_.waits_to_fade) return false;
  return !bench_.gave_up() && !turned();
}

void Titration::take_up_again() {
  moves_.swirl();
  drop_by_drop(true);
}

void Titration::let_it_last() {
  while (!bench_.gave_up()) {
    if (habits_.leaves_drop_hanging) {
      moves_.begin_drop(kNearlyFull, kSwells_per_s);
    } else {
      moves_.touch_off();
    }
    moves_.wash_down(2.0);
    if (!habits_.waits) return;
    bench_.wait(kMustLast_s);
    if (turned() || !habits_.swirls || !habits_.waits_to_fade) break;
    drop_by_drop();  // a streak was taken for the endpoint
  }
  if (habits_.chases_fade && careful_) chase_fade();
}

}  // namespace halfdrop
