#pragma once
// What the criteria need to know of how the attempt went, gathered tick by tick. No colours, no pH: a tick
// costs a few comparisons.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "game/marking/reading_moments.h"
#include "game/session/session.h"

namespace halfdrop {

/// One use of the flask, from when it was made ready to when it is emptied.
struct FlaskUse {
  enum class Before { first_use, rinsed, only_emptied, not_emptied };
  Before before = Before::first_use;
  int aliquots = 0;
  int indicator_drops = 0;
  bool wet_at_aliquot = false;  ///< water stood in it when the aliquot went in
  double entered_cm3 = 0.0;     ///< titrant that fell into its liquid
  double swirled_in_cm3 = 0.0;  ///< of that, while the flask was swirled or at most kStirredSoon before
  Tick last_entered = 0;
  bool last_on_tile = false;      ///< it stood on the tile when titrant last entered
  double most_on_wall_cm3 = 0.0;  ///< clinging above the liquid, at its worst
  Tick wall_wet = 0;              ///< when first
  Tick washed_down = 0;           ///< when last, after titrant had come in; 0: never

  [[nodiscard]] bool untouched() const { return aliquots == 0 && entered_cm3 <= 0.0; }
};

struct RunEvidence {
  std::optional<FlaskUse> flask;  ///< as it stood at the final reading
  double entered_before_initial_cm3 =
      0.0;  ///< titrant already in this run's flask when the initial reading was written
};

/// Swirl at or above this counts as swirling (our own choice: a quarter turn of the wrist).
inline constexpr double kSwirling = 0.3;
/// A drop that fell into a still flask counts as stirred in when swirling follows this soon.
inline constexpr Tick kStirredSoon = Tick{2} * kTicksPerSecond;

struct FallenDrop {
  Tick tick = 0;
  double out_cm3 = 0.0;  ///< everything that left the tip since the bench was laid out, this drop included
};

/// Fed with every tick and every change of a replay that was not refused, in order.
class Evidence {
 public:
  void after_tick(const Session& session);
  /// After `moments` was told of the same change.
  void after_change(const Session& session, const Change& change, const ReadingMoments& moments);

  std::optional<Tick> first_liquid;     ///< when liquid was first handled
  std::optional<Tick> without_goggles;  ///< first moment between first and last liquid
  std::optional<Tick> without_coat;
  double poured_cm3 = 0.0;              ///< into the burette or its funnel
  std::optional<Tick> poured_tap_open;  ///< first moment of pouring with an open tap
  double ran_through_cm3 = 0.0;         ///< out of the tube while that went on
  std::optional<Tick> first_spill;
  bool ended = false;
  std::vector<FallenDrop> drops;
  std::map<std::string, RunEvidence> runs;

 private:
  void liquid_handled(const BenchState& bench);
  [[nodiscard]] bool books_changed(const Ledger& books);
  void watch_pouring(const Session& session);
  void watch_tip(const BenchState& bench);
  void watch_flask(const Session& session);
  void stir(const Session& session, double fell_cm3);
  void deed_done(const BenchState& bench, Deed deed);
  void flask_deed(const Session& session, Deed deed);
  void reading_written(const Session& session, const Writing& writing, const ReadingMoments& moments);

  FlaskUse flask_;
  std::string flask_read_for_;       ///< run whose final reading was taken from this flask; empty: none yet
  std::optional<Tick> goggles_off_;  ///< since the last liquid, first moment
  Quanta titrant_in_bottle_ = -1, water_in_bottle_ = -1, in_column_ = -1, in_flight_ = -1;
  Quanta poured_ = 0, through_tap_ = 0, fallen_ = 0, landed_ = 0, from_wall_ = 0;
  double tap_looked_at_ = -1.0;
  bool tap_open_ = true;
  double waiting_cm3_ = 0.0;  ///< fell into a still flask
  Tick waiting_since_ = 0;
};

}  // namespace halfdrop
