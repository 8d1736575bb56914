#pragma once
// Drops that cling to the inside of the flask's neck and wall, and run down it.
//
// A drop hangs on where it is while the edge of its foot can hold its weight: at most
// rho g V = w gamma (cos receding - cos advancing), w its width (Furmidge, J. Colloid Sci. 17 (1962) 309;
// from memory). A larger one runs, as fast as its excess weight overcomes the drag of its foot, and leaves a
// film as thick as Landau and Levich's behind it: a trail that the next drop along it finds wet. The wave of
// swirling takes in what it reaches.
// One line down each side stands for the whole wall: drops there meet and run together. Left out: spreading,
// drying, what a drop takes up of the trail that it runs along, liquid that swirling leaves on the wall.

#include <array>
#include <cstddef>

#include "physics/bench/ledger.h"

namespace halfdrop {

struct BenchSpec;
struct BenchState;
struct LiquidFlow;

/// A drop on the wall. Empty: none.
struct ClingingDrop {
  Parcel liquid;
  double side = 1.0;       ///< -1 left wall, +1 right
  double height_cm = 0.0;  ///< above the flask's foot

  friend bool operator==(const ClingingDrop&, const ClingingDrop&) = default;
};

inline constexpr std::size_t kMostClinging = 8;
inline constexpr std::size_t kTrailLengths = 16;  ///< 1 cm each, from the foot up
using Trail = std::array<Parcel, kTrailLengths>;

/// All of it together is the balance of Account::flask_wall.
struct FlaskWall {
  std::array<ClingingDrop, kMostClinging> drops{};
  std::array<Trail, 2> trail{};  ///< left, right

  friend bool operator==(const FlaskWall&, const FlaskWall&) = default;
};

/// Glass of a flask in use, neither greasy nor freshly cleaned: advancing 65, receding 15 degrees (our own
/// estimate; a half drop hangs on, a whole one runs).
inline constexpr double kAdvancingCosine = 0.422618262, kRecedingCosine = 0.965925826;

/// The largest drop that hangs on a vertical wall, cm3.
[[nodiscard]] double clings_at_most_cm3(const LiquidFlow& liquid);
/// How fast a drop runs down a wall of that steepness (1: vertical), cm/s; 0 when it hangs on.
[[nodiscard]] double runs_cm_s(const LiquidFlow& liquid, double volume_cm3, double steepness);

/// Moves liquid from an account on to the wall: at x from the flask's axis, at a height above its foot.
void cling(const BenchSpec& spec, BenchState& state, Account from, const Parcel& liquid, double x_cm,
           double height_cm);
/// One tick: what is too heavy runs down, what the wash bottle or the wave reaches goes into the liquid.
void run_down_wall(const BenchSpec& spec, BenchState& state);
/// All of it goes into the liquid, which is mixed.
void clear_wall(BenchState& state);

}  // namespace halfdrop
