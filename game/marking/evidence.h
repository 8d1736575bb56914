#pragma once
// What the criteria need to know of how the attempt went, gathered tick by tick. No colours, no pH: a tick
// costs a few comparisons.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "game/marking/reading_moments.h"
#include "game/marking/standard_watch.h"
#include "game/session/session.h"

namespace halfdrop {

struct FallenDrop {
  Tick tick = 0;
  double out_cm3 = 0.0;  ///< everything that left the tip since the bench was laid out, this drop included
};

/// Fed with every tick and every change of a replay that was not refused, in order.
class Evidence {
 public:
  void after_tick(const Session& session);
  void after_change(const Session& session, const Change& change);

  std::optional<Tick> first_liquid;     ///< when liquid was first handled
  std::optional<Tick> without_goggles;  ///< first moment between first and last liquid
  std::optional<Tick> without_coat;
  double poured_cm3 = 0.0;              ///< into the burette or its funnel
  std::optional<Tick> poured_tap_open;  ///< first moment of pouring with an open tap
  double ran_through_cm3 = 0.0;         ///< out of the tube while that went on
  std::optional<Tick>
      poured_above_eye;        ///< first moment of pouring with the burette's top not below eye level
  double poured_top_mm = 0.0;  ///< ... its top at its highest then, above the bench
  std::optional<Tick> first_spill;
  bool ended = false;  ///< handed in; an attempt that was left is not
  StandardWatch standard;
  std::vector<FallenDrop> drops;
  std::vector<FallenDrop> let_out;          ///< those, and what was touched off
  std::map<std::string, RunEvidence> runs;  ///< from ReadingMoments, when all is over

 private:
  void liquid_handled(const BenchState& bench);
  [[nodiscard]] bool books_changed(const Ledger& books);
  void watch_pouring(const Session& session);
  void watch_top(const Session& session);
  void watch_tip(const BenchState& bench);
  void deed_done(const BenchState& bench, Deed deed);

  std::optional<Tick> goggles_off_;  ///< since the last liquid, first moment
  Quanta titrant_in_bottle_ = -1, sample_in_bottle_ = -1, water_in_bottle_ = -1, in_tube_ = -1,
         in_flight_ = -1, solid_in_bottle_ = -1;
  Quanta poured_ = 0, through_tap_ = 0, fallen_ = 0, touched_off_ = 0, into_tube_ = 0;
};

}  // namespace halfdrop
