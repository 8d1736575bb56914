#pragma once
// Follows the flask: from one emptying to the next it is one flask, whatever was written meanwhile.

#include <vector>

#include "game/session/session.h"

namespace halfdrop {

/// How an aliquot was pipetted by hand; all nought where practised hands did it.
struct PipetteUse {
  Tick at_flask = 0;           ///< when it was first held over the flask with this filling; 0: never
  double off_line_cm3 = 0.0;   ///< its level then, above the line
  double eye_above_mm = 0.0;   ///< eye over the line when it was last let down or drawn up
  double air_cm3 = 0.0;        ///< of what stood in it
  double outside_cm3 = 0.0;    ///< rode over on the outside of its tip
  double not_given_cm3 = 0.0;  ///< left in it beyond what it keeps, when it was taken away
  Tick taken_away = 0;
};

/// What was done with the flask since it was last emptied (for a run: since its own liquid began to go in).
struct FlaskUse {
  enum class Before { first_use, rinsed, only_emptied, not_emptied, rinsed_with_sample };
  Before before = Before::first_use;
  int aliquots = 0;
  int indicator_drops = 0;
  int second_indicator_drops = 0;
  bool wet_at_aliquot = false;  ///< water stood in it when the aliquot went in
  double entered_cm3 = 0.0;     ///< titrant that fell into its liquid
  double swirled_in_cm3 = 0.0;  ///< of that, while the flask was swirled or at most kStirredSoon before
  Tick last_entered = 0;
  bool last_on_tile = false;      ///< it stood on the tile when titrant last entered
  double most_on_wall_cm3 = 0.0;  ///< clinging above the liquid, at its worst
  Tick wall_wet = 0;              ///< when first
  PipetteUse pipette;             ///< the last that was held over it
  Tick washed_down = 0;           ///< when last, after titrant had come in; 0: never

  [[nodiscard]] bool untouched() const { return aliquots == 0 && entered_cm3 <= 0.0; }
  /// An aliquot, indicator or titrant went in since `earlier`, an earlier look at the same flask.
  [[nodiscard]] bool got_more_than(const FlaskUse& earlier) const;
  /// What was done since `earlier`, by someone who did not empty the flask.
  [[nodiscard]] FlaskUse since(const FlaskUse& earlier) const;
};

/// Swirl at or above this counts as swirling (our own choice: a quarter turn of the wrist).
inline constexpr double kSwirling = 0.3;
/// A drop that fell into a still flask counts as stirred in when swirling follows this soon.
inline constexpr Tick kStirredSoon = Tick{2} * kTicksPerSecond;

/// The flask at one moment.
struct FlaskLook {
  int number = 0;  ///< of the flask: one more at every emptying
  Ledger begun;    ///< books when it was last emptied (or laid out)
  FlaskUse use;
};

/// A flask with titrant in it, just before it was poured away.
struct PouredAway {
  BenchState bench;
  FlaskLook flask;
};

/// Fed with every tick and every deed of a replay, in order.
class FlaskWatch {
 public:
  void after_tick(const Session& session);
  /// Before a deed of which it is not known yet whether the bench allows it.
  void before_deed(const Session& session, Deed deed);
  void after_deed(const Session& session, Deed deed);

  [[nodiscard]] const FlaskLook& now() const { return now_; }
  /// The last flask with titrant, if it was poured away and no titrant has entered the flask since.
  [[nodiscard]] const PouredAway* poured_away() const;
  /// How many flasks were poured away between two ticks into which titrant fell after the first of them.
  [[nodiscard]] int flasks_wasted(Tick after, Tick until) const;

 private:
  struct Wasted {
    Tick last_entered, at;
  };
  void stir(const Session& session, double fell_cm3);
  [[nodiscard]] FlaskUse::Before left_by_emptying() const;
  void emptied(const Session& session, FlaskUse::Before before);
  void aliquot_in(double before_cm3);
  void watch_pipette(const Session& session);
  void pipette_held(const Session& session, Deed deed);

  FlaskLook now_;
  std::vector<PouredAway> poured_away_;  ///< at most one
  std::vector<Wasted> wasted_;
  Quanta landed_ = 0, from_wall_ = 0, from_pipette_ = 0, from_outside_ = 0;
  bool filled_ = false;           ///< by hand, and nothing of it has run into the flask yet
  bool pipette_over_ = false;     ///< held over the flask
  double eye_above_line_mm_ = 0;  ///< when the pipette's valve was last open, not over the flask
  double waiting_cm3_ = 0.0;      ///< fell into a still flask
  Tick waiting_since_ = 0;
};

}  // namespace halfdrop
