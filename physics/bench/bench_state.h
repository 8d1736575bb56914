#pragma once
// Everything that changes on the bench. Copyable; a snapshot is a copy; no caches.

#include <array>
#include <cstdint>

#include "physics/bench/hands.h"
#include "physics/bench/ledger.h"
#include "physics/burette/wall_film.h"
#include "physics/flask/liquid.h"
#include "physics/flask/sloshing.h"
#include "physics/flask/wall.h"
#include "physics/units.h"

namespace halfdrop {

/// A drop between tip and landing: its middle, from the middle of the tip's end as that is with the clamps at
/// 0. In the room, whatever the burette does: one let go by a raised burette begins above it, negative.
struct FallingDrop {
  bool flying = false;
  Parcel liquid;
  double x_cm = 0.0;
  double fallen_cm = 0.0;
  double across_cm_s = 0.0;
  double speed_cm_s = 0.0;  ///< downwards

  friend bool operator==(const FallingDrop&, const FallingDrop&) = default;
};
inline constexpr std::size_t kMostFalling = 16;

/// What may be poured into the burette.
enum class Bottle : std::uint8_t { titrant, sample, water };

/// Where a pipette that is worked by hand is held.
enum class PipettePlace : std::uint8_t {
  aside,      ///< over the waste beaker; empty it lies in its rack
  dipped,     ///< its tip deep in the sample
  at_wall,    ///< over the flask, its tip on the wall of the neck
  over_flask  ///< ... its tip free
};

/// Of a standard that is made up on the bench.
struct Preparation {
  Parcel on_top;                ///< of the flask's liquid, what stands in the neck unmixed; water as a rule
  double loosened_g = 0.0;      ///< solid that is about to fall out of the weighing bottle
  std::int64_t lumps = 0;       ///< that fell so far
  std::int64_t inversions = 0;  ///< since anything last came into the flask

  friend bool operator==(const Preparation&, const Preparation&) = default;
};

struct BenchState {
  Tick tick = 0;
  Ledger ledger;
  WallFilm film;         ///< how wall_film is spread along the tube
  FlaskLiquid flask;     ///< how the flask's liquid is spread
  FlaskWall wall;        ///< where on the flask's wall flask_wall clings
  Slosh slosh;           ///< the hand that swirls, and the wave it makes
  Hands hands;           ///< as they are now: the next step goes by them
  double plug = 1.0;     ///< where the tap's plug stands: 0 across .. 1 in line
  Quanta jet_below = 0;  ///< of the jet's liquid, what is below the air in it; 0 when there is none
  bool coat_on = false;
  bool goggles_on = false;
  bool funnel_in = false;
  bool beaker_under = false;
  bool tile_laid = false;
  bool over_edge = false;            ///< the burette, swung out over the bench's edge
  Bottle in_hand = Bottle::titrant;  ///< that is poured from
  PipettePlace pipette_place = PipettePlace::aside;
  Quanta pipette_air = 0;       ///< froth in its bulb: air that was drawn in
  Tick funnel_drip_due = 0;     ///< when the funnel lets its next drop go
  Tick jet_freed_until = 0;     ///< a flicked bubble goes along with any flow until then
  Tick drop_falls_at = 0;       ///< when the drop that necks at the tip is off; 0: none does
  std::int64_t drill_step = 0;  ///< pictures turned over, or volumes closed
  std::array<FallingDrop, kMostFalling> falling{};
  Preparation preparation;

  friend bool operator==(const BenchState&, const BenchState&) = default;
};

}  // namespace halfdrop
