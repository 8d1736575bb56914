#pragma once
// What a falling meniscus leaves on the wall of the tube, and how it runs down afterwards.
//
// Laid: Landau and Levich's film in a wetted tube, h = 1.3376 l Ca^(2/3) / k, with l the capillary length, Ca
// the capillary number of the falling meniscus and k the wall curvature of the resting one
// (meniscus_shape.h). Run down: each length of the wall passes on rho g h^3 / (3 mu) a unit of its rim, so
// that long after the film follows Jeffreys, h = sqrt(mu z / (rho g t)). The scale allows for the film that a
// run from the zero mark with the tap fully open leaves, read at once (ASTM E287: no time for drainage is
// allowed).
//
// Greasy glass (BuretteSpec::grease, a share of the wall) is wetted in part. Up to de Gennes' speed of forced
// wetting the liquid's edge keeps up with the meniscus and the glass is left dry; a quicker meniscus leaves
// the thick film of Snoeijer et al. (Phys. Rev. Lett. 100 (2008) 244502): as thick as runs down at the speed
// at which its upper edge retreats, h = l sqrt(3 Ca*), so that it slides as a whole and is still running in a
// minute later; drops stay behind its edge. Left out: what pouring in leaves above the meniscus, drying,
// waves in the film, drops that grow together and run, hysteresis along the wall.

#include <array>
#include <cstddef>

#include "physics/bench/ledger.h"
#include "physics/units.h"

namespace halfdrop {

struct BenchSpec;
struct BenchState;
struct BuretteSpec;
struct LiquidFlow;

/// Lengths of wall from the rim to the tap, as many cm3 of the scale each.
inline constexpr std::size_t kFilmLengths = 64;
/// What clings to each, on clean glass and on greasy; together the balance of Account::wall_film.
struct WallFilm {
  std::array<Quanta, kFilmLengths> runs{}, greasy{};
  friend bool operator==(const WallFilm&, const WallFilm&) = default;
};

inline constexpr Tick kFilmTicks = 24;
/// Water's receding angle on greasy glass (our own estimate). On glass that a laboratory has washed it rests
/// at 13.6 +- 1.7 degrees (Int. J. Microbiol. 2011, 972494, table 1), and recedes at less; above 15 no tap's
/// speed would leave drops, which "delivering too rapidly" does (a university's list of errors with
/// burettes).
inline constexpr double kGreasyRecedes_degrees = 10.0;
/// Where the edge's wedge ends, beside which l counts in de Gennes' logarithm: a molecule.
inline constexpr double kMolecule_mm = 1e-6;
/// Share of the film that stays as drops behind its edge: our own estimate, no measurement was found.
inline constexpr double kDropsStay = 0.3;

/// The fastest that a liquid's edge retreats by itself on a wall wetted in part, mm/s: theta^3 sigma /
/// (9 sqrt(3) mu ln(l / a)) (de Gennes, Colloid Polym. Sci. 264 (1986) 463, from memory).
[[nodiscard]] double edge_retreats_mm_s(const LiquidFlow& liquid, double receding_degrees);
/// The film that runs down at that speed: sqrt(3 mu v / (rho g)), mm.
[[nodiscard]] double thick_film_mm(const LiquidFlow& liquid, double speed_mm_s);
/// Thickness that a meniscus falling at that speed lays on clean glass, mm; >= 0.
[[nodiscard]] double film_laid_mm(const BuretteSpec& burette, const LiquidFlow& liquid, double speed_mm_s);

/// Wall of a length of the tube that holds so much, cm2.
[[nodiscard]] double wall_area_cm2(const BuretteSpec& burette, double holds_cm3);

/// What the scale allows to cling between the zero mark and a mark, cm3: the film of a run with the tap open,
/// as a line and a bow over the scale (set by settle()).
[[nodiscard]] double film_allowed_cm3(const BuretteSpec& burette, double reading_cm3);
/// Works out the film's numbers of a bench whose liquid, tap and tube are settled.
void settle_film(BenchSpec& spec);

/// One tick, after which the column is not what it was at its beginning.
void cling_and_run(const BenchSpec& spec, BenchState& state, Quanta column_before);

}  // namespace halfdrop
