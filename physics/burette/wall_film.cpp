#include "physics/burette/wall_film.h"

#include <algorithm>
#include <cmath>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/burette/column.h"
#include "physics/burette/tap.h"
#include "physics/elementary.h"

namespace halfdrop {

namespace {

double mm_per_cm3(const BuretteSpec& burette) { return burette.scale_length_mm / burette.nominal_cm3; }

double inner_radius_mm(const BuretteSpec& burette) { return std::sqrt(1000.0 / (kPi * mm_per_cm3(burette))); }

/// The wall in lengths of the scale: how much of each is above the meniscus.
class Wall {
 public:
  explicit Wall(const BuretteSpec& burette)
      : burette_(burette),
        length_cm3_((burette.above_zero_cm3 + burette.nominal_cm3 + burette.below_scale_cm3) /
                    static_cast<double>(kFilmLengths)) {}

  /// Lengths of wall above the meniscus of a column.
  [[nodiscard]] double bare(Quanta column) const {
    const double reading = scale_reading_cm3(burette_, static_cast<double>(column) * kVolumeQuantum_cm3);
    return std::clamp((reading + burette_.above_zero_cm3) / length_cm3_, 0.0,
                      static_cast<double>(kFilmLengths));
  }
  /// cm2 of one length.
  [[nodiscard]] double area_cm2() const { return wall_area_cm2(burette_, length_cm3_); }
  [[nodiscard]] double length_mm() const { return length_cm3_ * mm_per_cm3(burette_); }

 private:
  const BuretteSpec& burette_;
  double length_cm3_;
};

double share_bare(double bare, std::size_t i) { return std::clamp(bare - static_cast<double>(i), 0.0, 1.0); }

void lay(const BenchSpec& spec, BenchState& state, const Wall& wall, double from, double to) {
  const BuretteSpec& burette = spec.burette;
  const double speed_mm_s = (to - from) * wall.length_mm() / kSecondsPerTick;
  const double clean_mm = (1.0 - burette.grease) * film_laid_mm(burette, spec.settled.liquid, speed_mm_s);
  const double greasy_mm =
      speed_mm_s > burette.greasy_edge_mm_s ? burette.grease * burette.greasy_film_mm : 0.0;
  const auto last = std::min(static_cast<std::size_t>(to), kFilmLengths - 1);
  for (auto i = static_cast<std::size_t>(from); i <= last; ++i) {
    const double area_cm2 = (share_bare(to, i) - share_bare(from, i)) * wall.area_cm2();
    const Quanta runs = volume_quanta(clean_mm * 0.1 * area_cm2);
    const Quanta greasy = volume_quanta(greasy_mm * 0.1 * area_cm2);
    const Parcel laid = state.ledger.transfer(Account::column, Account::wall_film, runs + greasy);
    state.film.greasy[i] += std::min(greasy, laid.volume);
    state.film.runs[i] += laid.volume - std::min(greasy, laid.volume);
  }
}

/// What a rising meniscus reaches is the column's again.
void drown(BenchState& state, double from, double to) {
  for (auto i = static_cast<std::size_t>(to); i < kFilmLengths; ++i) {
    const double was_bare = share_bare(from, i);
    if (was_bare <= 0.0) return;
    const double drowned = 1.0 - share_bare(to, i) / was_bare;
    for (Quanta* clings : {&state.film.runs[i], &state.film.greasy[i]}) {
      const auto returns = static_cast<Quanta>(drowned * static_cast<double>(*clings));
      state.ledger.transfer(Account::wall_film, Account::column, returns);
      *clings -= returns;
    }
  }
}

/// A tube that was held aslant stands again: what clings below the meniscus is the column's.
void submerge(BenchState& state, double bare) {
  for (auto i = static_cast<std::size_t>(bare); i < kFilmLengths; ++i) {
    if (share_bare(bare, i) > 0.0) continue;
    for (Quanta* clings : {&state.film.runs[i], &state.film.greasy[i]}) {
      if (*clings == 0) continue;
      state.ledger.transfer(Account::wall_film, Account::column, *clings);
      *clings = 0;
    }
  }
}

void run_down(const BenchSpec& spec, BenchState& state, const Wall& wall, double bare) {
  const LiquidFlow& liquid = spec.settled.liquid;
  const double rim_m = 2.0 * kPi * inner_radius_mm(spec.burette) * 1e-3;
  const double per_cube = liquid.density_kg_m3 * kGravity_m_s2 / (3.0 * liquid.viscosity_pa_s) * rim_m *
                          (1.0 - spec.burette.grease) * seconds(kFilmTicks) * 1e6;
  const auto last = std::min(static_cast<std::size_t>(bare), kFilmLengths - 1);
  for (std::size_t i = last + 1; i-- > 0;) {
    Quanta& here = state.film.runs[i];
    const double area_cm2 = (1.0 - spec.burette.grease) * share_bare(bare, i) * wall.area_cm2();
    if (here == 0 || area_cm2 <= 0.0) continue;
    const double thick_m = static_cast<double>(here) * kVolumeQuantum_cm3 / area_cm2 * 0.01;
    // A quantum left on a sliver of wall is boundlessly thick: compared as numbers, before any rounding.
    const double could_leave_cm3 = per_cube * thick_m * thick_m * thick_m;
    const Quanta leaves = could_leave_cm3 < static_cast<double>(here) * kVolumeQuantum_cm3
                              ? std::min(here, volume_quanta(could_leave_cm3))
                              : here;
    here -= leaves;
    const bool into_column = i == last || share_bare(bare, i + 1) <= 0.0;
    if (into_column)
      state.ledger.transfer(Account::wall_film, Account::column, leaves);
    else
      state.film.runs[i + 1] += leaves;
  }
}

/// The film on greasy glass slides down at its edge's speed, but for the drops that stay.
void slide(const BenchSpec& spec, BenchState& state, const Wall& wall, double bare) {
  const BuretteSpec& burette = spec.burette;
  const double stays_mm = burette.grease * burette.greasy_film_mm * kDropsStay;
  const double slides_mm = burette.greasy_edge_mm_s * seconds(kFilmTicks);
  const auto last = std::min(static_cast<std::size_t>(bare), kFilmLengths - 1);
  for (std::size_t i = last + 1; i-- > 0;) {
    const double bare_share = share_bare(bare, i);
    if (bare_share <= 0.0) continue;
    const Quanta stays = volume_quanta(stays_mm * 0.1 * bare_share * wall.area_cm2());
    const Quanta moves = state.film.greasy[i] - stays;
    if (moves <= 0) continue;
    const double share = std::min(1.0, slides_mm / (bare_share * wall.length_mm()));
    const auto leaves = static_cast<Quanta>(share * static_cast<double>(moves));
    state.film.greasy[i] -= leaves;
    if (i == last || share_bare(bare, i + 1) <= 0.0)
      state.ledger.transfer(Account::wall_film, Account::column, leaves);
    else
      state.film.greasy[i + 1] += leaves;
  }
}

}  // namespace

double film_laid_mm(const BuretteSpec& burette, const LiquidFlow& liquid, double speed_mm_s) {
  if (speed_mm_s <= 0.0) return 0.0;
  const double capillary_number = liquid.viscosity_pa_s * speed_mm_s * 1e-3 / liquid.surface_tension_n_m;
  const double root = elementary::cube_root(capillary_number);
  return burette.film_per_capillarity_mm * root * root;
}

double edge_retreats_mm_s(const LiquidFlow& liquid, double receding_degrees) {
  const double angle = receding_degrees * kPi / 180.0;
  const double capillary_mm =
      std::sqrt(liquid.surface_tension_n_m / (liquid.density_kg_m3 * kGravity_m_s2)) * 1e3;
  const double wedge = elementary::log(capillary_mm / kMolecule_mm);
  return angle * angle * angle * liquid.surface_tension_n_m /
         (9.0 * std::sqrt(3.0) * liquid.viscosity_pa_s * wedge) * 1e3;
}

double thick_film_mm(const LiquidFlow& liquid, double speed_mm_s) {
  return std::sqrt(3.0 * liquid.viscosity_pa_s * speed_mm_s * 1e-3 / (liquid.density_kg_m3 * kGravity_m_s2)) *
         1e3;
}

double wall_area_cm2(const BuretteSpec& burette, double holds_cm3) {
  return 2.0 * kPi * inner_radius_mm(burette) * mm_per_cm3(burette) * holds_cm3 * 0.01;
}

double film_allowed_cm3(const BuretteSpec& burette, double reading_cm3) {
  const double u = std::clamp(reading_cm3 / burette.nominal_cm3, 0.0, 1.0);
  return burette.film_linear_cm3 * u + burette.film_bow_cm3 * 4.0 * u * (1.0 - u);
}

void settle_film(BenchSpec& spec) {
  BuretteSpec& burette = spec.burette;
  const LiquidFlow& liquid = spec.settled.liquid;
  burette.greasy_edge_mm_s = edge_retreats_mm_s(liquid, kGreasyRecedes_degrees);
  burette.greasy_film_mm = thick_film_mm(liquid, burette.greasy_edge_mm_s);
  burette.film_linear_cm3 = burette.film_bow_cm3 = 0.0;
  constexpr int kSteps = 50;
  const double step_cm3 = burette.nominal_cm3 / kSteps;
  const double wall_cm2 = wall_area_cm2(burette, step_cm3);
  double left_cm3 = 0.0, half_cm3 = 0.0;
  for (int i = 0; i < kSteps; ++i) {
    if (i == kSteps / 2) half_cm3 = left_cm3;
    const double column_cm3 = column_volume_cm3(burette, (i + 0.5) * step_cm3);
    const double flow = flow_cm3_s(spec.tap, liquid, 1.0, head_mm(burette, column_cm3));
    left_cm3 += film_laid_mm(burette, liquid, flow * mm_per_cm3(burette)) * 0.1 * wall_cm2;
  }
  burette.film_linear_cm3 = left_cm3;
  burette.film_bow_cm3 = half_cm3 - 0.5 * left_cm3;
}

void cling_and_run(const BenchSpec& spec, BenchState& state, Quanta column_before) {
  const Wall wall(spec.burette);
  const Quanta column = state.ledger.balance(Account::column).volume;
  if (column != column_before) {
    const double from = wall.bare(column_before), to = wall.bare(column);
    if (to > from) lay(spec, state, wall, from, to);
    if (to < from) drown(state, from, to);
  }
  if (state.tick % kFilmTicks != 0 || state.ledger.balance(Account::wall_film).empty()) return;
  const double bare = wall.bare(state.ledger.balance(Account::column).volume);
  submerge(state, bare);
  run_down(spec, state, wall, bare);
  if (spec.burette.grease > 0.0) slide(spec, state, wall, bare);
}

}  // namespace halfdrop
