#include "physics/flask/contents.h"

#include <algorithm>
#include <array>
#include <cassert>

#include "physics/crossing.h"
#include "physics/elementary.h"
#include "physics/units.h"

namespace halfdrop {

namespace {

constexpr double kSearch_cm3 = 10.0;

Parcel with_titrant(const Parcel& liquid, Quanta titrant) {
  Parcel changed = liquid;
  changed.amounts[static_cast<std::size_t>(Component::titrant)] = std::max<Quanta>(titrant, 0);
  return changed;
}

const Solver& solver_of(const BenchSpec& spec, Hydration hydration) {
  const Solver& solver = hydration == Hydration::complete ? spec.settled.complete : spec.settled.as_it_stands;
  assert(spec.settled.full_drop_cm3 > 0.0);
  assert(solver.options().temperature_c == spec.temperature_c);
  assert(solver.holds(static_cast<std::size_t>(Solute::titrant), spec.titrant.substance));
  assert(solver.holds(static_cast<std::size_t>(Solute::sample), spec.sample.substance));
  assert(solver.holds(static_cast<std::size_t>(Solute::indicator), substance_of(spec.indicator)));
  return solver;
}

/// In the order of Solute; of an empty parcel, that of pure water.
std::array<double, 4> solutes_mol_dm3(const Parcel& liquid, Hydration hydration) {
  if (liquid.empty()) return {};
  const double carbonate = mol_dm3(liquid, Component::carbonate);
  const double carbonic =
      hydration == Hydration::complete ? carbonate + mol_dm3(liquid, Component::carbon_dioxide) : carbonate;
  return {mol_dm3(liquid, Component::titrant), mol_dm3(liquid, Component::analyte),
          mol_dm3(liquid, Component::indicator), carbonic};
}

Spectrum behind(Backdrop backdrop) { return backdrop == Backdrop::white_tile ? white_tile() : bare_bench(); }

/// Precondition: the liquid is not empty.
Xyz colour_at(const BenchSpec& spec, const Parcel& liquid, double path_cm, Backdrop backdrop,
              const Equilibrium& there) {
  const double mol_dm3_cm = mol_dm3(liquid, Component::indicator) * path_cm;
  return seen_through(behind(backdrop),
                      spec.settled.spectra.absorbance(mol_dm3_cm, indicator_forms(spec, there)));
}

}  // namespace

const SolverOptions& solver_options(const BenchSpec& spec) { return spec.settled.as_it_stands.options(); }

double mol_dm3(const Parcel& liquid, Component component) {
  return liquid.amount_mol(component) / liquid.volume_cm3() * 1000.0;
}

Parcel without_carbon_dioxide(const BenchSpec& spec, Parcel liquid) {
  const double own_mol = spec.titrant.carbonate_per_mol * liquid.amount_mol(Component::titrant) +
                         spec.sample.carbonate_per_mol * liquid.amount_mol(Component::analyte);
  liquid.amounts[static_cast<std::size_t>(Component::carbonate)] = amount_quanta(own_mol);
  liquid.amounts[static_cast<std::size_t>(Component::carbon_dioxide)] = 0;
  return liquid;
}

double surface_cm2(const FlaskSpec& flask, double volume_cm3) {
  const double cone_cm = flask.height_cm - flask.neck_length_cm;
  const double share = std::min(liquid_depth_cm(flask, volume_cm3) / cone_cm, 1.0);
  const double radius_cm = flask.base_radius_cm - (flask.base_radius_cm - flask.neck_radius_cm) * share;
  return kPi * radius_cm * radius_cm;
}

// A cone cut off: volume V up to the radius r is pi (R^3 - r^3) / (3 slope).
double liquid_depth_cm(const FlaskSpec& flask, double volume_cm3) {
  if (volume_cm3 <= 0.0) return 0.0;
  const double base = flask.base_radius_cm, neck = flask.neck_radius_cm;
  const double cone_cm = flask.height_cm - flask.neck_length_cm;
  const double cone_cm3 = kPi / 3.0 * cone_cm * (base * base + base * neck + neck * neck);
  if (volume_cm3 >= cone_cm3) {
    const double in_neck_cm = (volume_cm3 - cone_cm3) / (kPi * neck * neck);
    return std::min(cone_cm + in_neck_cm, flask.height_cm);
  }
  const double slope = (base - neck) / cone_cm;
  const double cubes = 3.0 * slope * volume_cm3 / kPi;  // R^3 - r^3
  const double radius = elementary::cube_root(base * base * base - cubes);
  // (R - r) / slope, written so that nothing cancels when the wall is steep or the liquid shallow.
  return 3.0 * volume_cm3 / (kPi * (base * base + base * radius + radius * radius));
}

double sight_path_cm(const FlaskSpec& flask, double volume_cm3) {
  return 2.0 * liquid_depth_cm(flask, volume_cm3);
}

Equilibrium equilibrium_of(const BenchSpec& spec, const Parcel& liquid, Hydration hydration) {
  return solver_of(spec, hydration).solve(solutes_mol_dm3(liquid, hydration));
}

Equilibrium equilibrium_of(const BenchSpec& spec, const Parcel& liquid, Hydration hydration,
                           const Equilibrium& near) {
  return solver_of(spec, hydration).solve(solutes_mol_dm3(liquid, hydration), near);
}

FormShares indicator_forms(const BenchSpec& spec, const Equilibrium& there) {
  return spec.settled.as_it_stands.form_fractions(static_cast<std::size_t>(Solute::indicator), there);
}

Xyz colour_of(const BenchSpec& spec, const Parcel& liquid, double path_cm, Backdrop backdrop,
              Hydration hydration) {
  if (liquid.empty()) return seen_through(behind(backdrop), Spectrum{});
  return colour_at(spec, liquid, path_cm, backdrop, equilibrium_of(spec, liquid, hydration));
}

double visible_change(const BenchSpec& spec, const Parcel& liquid, Hydration hydration) {
  if (liquid.empty()) return 0.0;
  const double path = sight_path_cm(spec.flask, liquid.volume_cm3());
  const Xyz now = colour_of(spec, liquid, path, Backdrop::white_tile, hydration);
  const Xyz before = colour_of(spec, with_titrant(liquid, 0), path, Backdrop::white_tile, hydration);
  return ciede2000(to_lab(now), to_lab(before));
}

double excess_titrant_mol(const BenchSpec& spec, const Parcel& liquid) {
  return liquid.amount_mol(Component::titrant) -
         spec.titrant_per_analyte * liquid.amount_mol(Component::analyte);
}

Parcel far_past_endpoint(const BenchSpec& spec, const Parcel& liquid) {
  const double equivalent_mol = spec.titrant_per_analyte * liquid.amount_mol(Component::analyte);
  return with_titrant(liquid,
                      amount_quanta(equivalent_mol + kSearch_cm3 * spec.breakdown_mol_dm3() / 1000.0));
}

bool shows_endpoint(const BenchSpec& spec, const Parcel& liquid) {
  if (spec.gains_colour) return visible_change(spec, liquid) >= kFirstVisibleChange;
  if (liquid.empty() || liquid.amount(Component::indicator) == 0) return false;
  const double path = sight_path_cm(spec.flask, liquid.volume_cm3());
  const Xyz now = colour_of(spec, liquid, path, Backdrop::white_tile);
  const Xyz gone = colour_of(spec, far_past_endpoint(spec, liquid), path, Backdrop::white_tile);
  return ciede2000(to_lab(now), to_lab(gone)) <= kFirstVisibleChange;
}

std::optional<double> first_visible_change_cm3(const BenchSpec& spec, const Parcel& liquid) {
  if (liquid.empty() || liquid.amount(Component::indicator) == 0) return std::nullopt;
  const double c_mol_cm3 = spec.breakdown_mol_dm3() / 1000.0;
  const double equivalent_mol = spec.titrant_per_analyte * liquid.amount_mol(Component::analyte);
  const double path_cm = sight_path_cm(spec.flask, liquid.volume_cm3());
  const Parcel lasting = spec.gains_colour ? with_titrant(liquid, 0) : far_past_endpoint(spec, liquid);
  Equilibrium near = equilibrium_of(spec, lasting, Hydration::complete);
  const Lab compared = to_lab(colour_at(spec, lasting, path_cm, Backdrop::white_tile, near));
  const auto excess = [&](double past_cm3) {
    const Parcel titrated = with_titrant(liquid, amount_quanta(equivalent_mol + past_cm3 * c_mol_cm3));
    near = equilibrium_of(spec, titrated, Hydration::complete, near);
    const Xyz now = colour_at(spec, titrated, path_cm, Backdrop::white_tile, near);
    const double off = ciede2000(to_lab(now), compared) - kFirstVisibleChange;
    return spec.gains_colour ? off : -off;
  };
  const double none_cm3 = -equivalent_mol / c_mol_cm3;
  if (excess(kSearch_cm3) < 0.0 || (!spec.gains_colour && excess(none_cm3) >= 0.0)) return std::nullopt;
  return crossing(none_cm3, kSearch_cm3, 1e-10, excess);
}

}  // namespace halfdrop
