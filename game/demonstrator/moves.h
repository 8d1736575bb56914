#pragma once
// What trained hands do at a burette, each from what is seen while it is done.

#include "game/demonstrator/at_bench.h"
#include "game/demonstrator/habits.h"

namespace halfdrop {

/// A pair of hands that remembers where the tap began to drip.
class Moves {
 public:
  Moves(AtBench& bench, const Habits& habits) : bench_(bench), habits_(habits) {}

  /// Moves the eye until it stands this far above the meniscus; 0 is level.
  void level_eye(double above_mm = 0.0);
  /// Holds the eye at a height above the zero mark.
  void look_from(double eye_mm);
  /// Keeps the eye near the level of the falling meniscus.
  void follow_meniscus(const Senses& seen);
  /// Reading at the eye's height to the nearest 0.05 cm3, in hundredths.
  [[nodiscard]] int read_hundredths() const;
  /// The same of the upper edge of the meniscus.
  [[nodiscard]] int read_top_hundredths() const;

  void shut_tap() { bench_.hold(&HandsChange::tap, 0.0); }
  /// Opens the tap bit by bit until it runs about this fast, in drops a second.
  void open_tap_to(double drops_per_s);
  /// Opens the tap so slowly that a drop hangs before it runs.
  void open_tap_gingerly();
  /// Opens, lets one drop fall and shuts.
  void one_drop();
  /// Lets a drop swell to this share of a full one, at a rate of so many drops a second, and shuts.
  void begin_drop(double share, double drops_per_s);
  /// Lets half a drop swell, touches it off and washes it down.
  void half_drop();
  /// Touches off what hangs, if anything does, and, over the flask, washes it down.
  void touch_off();

  void swirl();
  void stop_swirling() { bench_.hold(&HandsChange::swirl, 0.0); }
  void wash_down(double seconds);
  void flask_under();
  /// Holds the flask so that the jet leans on the side of its neck: left for a negative side.
  void lean_on_neck(double side);
  /// Draws the flask aside to look at it, and back.
  void look_at_flask_aside(double for_s);
  void flask_aside();
  /// Where the level has it so: swings the burette over the bench's edge and lowers its top below eye level.
  void lower_to_fill();
  /// Raises it again and swings it back, if it hangs there.
  void raise_again();

 private:
  void slide_flask(double to_cm);

  AtBench& bench_;
  const Habits& habits_;
  double drips_at_ = 0.0;  ///< tap position that gave slow drops last time; 0: not found yet
};

}  // namespace halfdrop
