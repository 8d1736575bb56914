#pragma once
// One titration, from the flask put under the jet to the colour that lasts.

#include "game/demonstrator/habits.h"
#include "game/demonstrator/moves.h"

namespace halfdrop {

class Titration {
 public:
  Titration(AtBench& bench, Moves& moves, const Habits& habits)
      : bench_(bench),
        moves_(moves),
        habits_(habits),
        gains_colour_(bench.level().endpoint_gains_colour),
        past_end_(bench.level().then ? habits.drops_past_first_endpoint : habits.drops_past_tint) {}

  /// From the first of two endpoints on: the change to come is the second indicator's.
  void go_on();

  /// Fast, to the first colour that stays after swirling.
  void quick();
  /// Fast until the burette reads `slow_from_cm3`, then drop by drop to the first colour that stays.
  void careful(double slow_from_cm3);
  /// What hangs and clings goes in, then half a minute of swirling in which the colour must last.
  void let_it_last();
  /// A colour that had gone is back, as a pink is while carbon dioxide leaves: seen when the eye comes back
  /// from the scale.
  [[nodiscard]] bool came_back() const;
  /// After that: half drops until it has gone again.
  void take_up_again();

 private:
  void begin();
  /// Runs a steady stream until something is seen; false when the burette is run down.
  bool stream_until(const std::function<bool(const Senses&)>& seen_enough);
  /// `halves`: no whole drop first.
  void drop_by_drop(bool halves = false);
  /// The flask is drawn aside under a tap that drips.
  void drip_aside();
  /// Half way: titrant poured into the burette; by how much its reading fell, cm3.
  double top_up();
  /// Adds a drop whenever the colour has become paler.
  void chase_fade();
  /// One drop or half drop more; how long its flash took to fade, s.
  double add(bool half);
  [[nodiscard]] bool end_is_near(double faded_s) const;
  /// What is taken for the endpoint.
  [[nodiscard]] bool done() const;
  void wait_until_even();
  /// Swirls until the flask looks the same all over. How long the flash took to fade, s.
  double mix();
  /// The flask shows its endpoint, as far as these hands trust it: a colour has come, or has gone.
  [[nodiscard]] bool turned() const;
  [[nodiscard]] bool looks_turned(const Senses& seen) const;
  /// What is perceived now, its colours those of the endpoint that is looked for: the second indicator may be
  /// in too soon.
  [[nodiscard]] Senses look() const;
  bool watch_until(const std::function<bool(const Senses&)>& holds, double limit_s);
  /// Off the colour before by so much, or no further from the colour after than `left`, in CIEDE2000.
  [[nodiscard]] bool turned(const Senses& seen, double change, double left) const;

  AtBench& bench_;
  Moves& moves_;
  const Habits& habits_;
  bool second_ = false;   ///< the second of two endpoints is looked for
  bool gains_colour_;     ///< at the endpoint that is looked for
  int past_end_;          ///< drops more than that
  bool careful_ = false;  ///< run drop by drop to its end
};

}  // namespace halfdrop
