#pragma once
// What a falling meniscus leaves on the wall of the tube, and how it runs down afterwards.
//
// Laid: Landau and Levich's film in a wetted tube, h = 1.3376 l Ca^(2/3) / k, with l the capillary length, Ca
// the capillary number of the falling meniscus and k the wall curvature of the resting one
// (meniscus_shape.h). Run down: each length of the wall passes on rho g h^3 / (3 mu) a unit of its rim, so
// that long after the film follows Jeffreys, h = sqrt(mu z / (rho g t)). The scale allows for the film that a
// run from the zero mark with the tap fully open leaves, read at once (ASTM E287: no time for drainage is
// allowed). Greasy glass (BuretteSpec::grease) also keeps beads, of which the larger slide down in a minute
// or so and the smaller stay (our own estimate, so that what is read at once and a minute later differs by
// 0.02 cm3 and more, as teachers say: common practice). Left out: what pouring in leaves above the meniscus,
// drying, waves in the film.

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
/// What clings to each; together the balance of Account::wall_film.
struct WallFilm {
  std::array<Quanta, kFilmLengths> runs{}, beads{};
  friend bool operator==(const WallFilm&, const WallFilm&) = default;
};

inline constexpr Tick kFilmTicks = 24;
/// Beads that greasy glass keeps: 1 mm3 on a cm2 (our own estimate).
inline constexpr double kBeads_mm = 0.01;
/// Share of them that slides, and how long that takes: a time constant.
inline constexpr double kBeadsSlide = 0.7;
inline constexpr double kBeadsSlide_s = 40.0;

/// Thickness that a meniscus falling at that speed lays, mm; >= 0.
[[nodiscard]] double film_laid_mm(const BuretteSpec& burette, const LiquidFlow& liquid, double speed_mm_s);

/// What the scale allows to cling between the zero mark and a mark, cm3: the film of a run with the tap open,
/// as a line and a bow over the scale (set by settle()).
[[nodiscard]] double film_allowed_cm3(const BuretteSpec& burette, double reading_cm3);
/// Works out film_linear_cm3 and film_bow_cm3 of a bench whose liquid, tap and tube are settled.
void settle_film(BenchSpec& spec);

/// One tick, after which the column is not what it was at its beginning.
void cling_and_run(const BenchSpec& spec, BenchState& state, Quanta column_before);

}  // namespace halfdrop
