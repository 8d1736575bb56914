#include "game/demonstrator/drills.h"

#include <algorithm>
#include <cmath>

#include "game/demonstrator/knowing.h"
#include "game/demonstrator/pencil.h"
#include "game/demonstrator/routine.h"

namespace halfdrop {

namespace {

/// Dark edge of the card below the meniscus: about two divisions (old manuals' practice).
constexpr double kCardBelow_mm = 2.0;
/// The last part of a volume goes drop by drop, the very last by half drops.
constexpr double kDropwise_cm3 = 0.5;
constexpr double kHalfDrops_cm3 = 0.03, kNearEnough_cm3 = 0.012;
constexpr double kStream_drops_per_s = 8.0, kDrip_per_s = 0.5;
/// Of a full drop: what is touched off for half a drop of about 0.02 cm3.
constexpr double kHalfShare = 0.42;
constexpr double kNearlyFull = 0.95, kSwells_per_s = 0.2;
constexpr int kMostDrops = 60;

class DrillHands {
 public:
  DrillHands(AtBench& bench, const Habits& habits)
      : bench_(bench), habits_(habits), moves_(bench, habits), routine_(bench, habits) {}

  void read_pictures() {
    const Drill& drill = *bench_.level().drill;
    const double too_high_mm = std::max(habits_.eye_too_high_at_start_mm, habits_.eye_too_high_at_end_mm);
    for (int number = 1; number <= drill.pictures && !bench_.gave_up(); ++number) {
      moves_.level_eye(too_high_mm);
      bench_.hold(&HandsChange::card_mm,
                  std::clamp(eye_above_zero_mm(bench_.hands()) - too_high_mm - kCardBelow_mm, kEyeLowest_mm,
                             kEyeHighest_mm));
      bench_.wait(0.5);
      bench_.write(reading_cell(number), hundredths_text(reading_hundredths(drill.to_cm3)));
      if (number < drill.pictures) bench_.act(Deed::next_picture);
    }
  }

  void deliver_all() {
    routine_.dress();
    for (const Delivery& delivery : bench_.level().drill->deliveries) {
      deliver(delivery);
      bench_.watch_until([](const Senses& seen) { return seen.falling == 0; }, 2.0);
      if (habits_.leaves_drop_hanging) moves_.begin_drop(kNearlyFull, kSwells_per_s);
      bench_.act(Deed::close_volume);
    }
  }

  void fill() {
    routine_.dress();
    routine_.fill_burette();
    moves_.level_eye(habits_.eye_too_high_at_start_mm);
    bench_.write(reading_cell(1), hundredths_text(moves_.read_hundredths()));
  }

 private:
  [[nodiscard]] int reading_hundredths(double to_cm3) const {
    if (to_cm3 > 0.01) return moves_.read_hundredths();
    return static_cast<int>(std::lround(bench_.look().reading_cm3 * 100.0));
  }

  void deliver(const Delivery& delivery) {
    if (delivery.what == Delivery::What::volume) return deliver_volume(delivery.volume_cm3);
    if (delivery.what == Delivery::What::one_drop) return moves_.one_drop();
    moves_.begin_drop(kHalfShare, kDrip_per_s);
    moves_.touch_off();
  }

  [[nodiscard]] double reading() {
    moves_.level_eye();
    return bench_.look().reading_cm3;
  }

  void run_until(double reading_cm3, double drops_per_s) {
    moves_.open_tap_to(drops_per_s);
    bench_.watch_until(
        [&](const Senses& seen) {
          moves_.follow_meniscus(seen);
          return seen.reading_cm3 >= reading_cm3;
        },
        300.0);
    moves_.shut_tap();
  }

  void deliver_volume(double volume_cm3) {
    const double until_cm3 = reading() + volume_cm3;
    run_until(until_cm3 - kDropwise_cm3, kStream_drops_per_s);
    for (int drops = 0; drops < kMostDrops && !bench_.gave_up(); ++drops) {
      const double left_cm3 = until_cm3 - reading();
      if (left_cm3 < kHalfDrops_cm3) break;
      moves_.one_drop();
    }
    moves_.touch_off();
    for (int drops = 0; drops < kMostDrops && until_cm3 - reading() > kNearEnough_cm3; ++drops) {
      if (bench_.gave_up()) return;
      moves_.begin_drop(kHalfShare, kDrip_per_s);
      moves_.touch_off();
    }
  }

  AtBench& bench_;
  Habits habits_;
  Moves moves_;
  Routine routine_;
};

}  // namespace

void perform_drill(AtBench& bench, const Habits& habits) {
  DrillHands hands(bench, habits);
  switch (bench.level().drill->kind) {
    case DrillKind::read_meniscus:
      return hands.read_pictures();
    case DrillKind::deliver_exactly:
      return hands.deliver_all();
    case DrillKind::know_apparatus:
      return know_pieces(bench, habits);
    case DrillKind::fill_without_air:
      return hands.fill();
  }
}

}  // namespace halfdrop
