#include "physics/flask/contents.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <span>

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
  assert(!spec.then || solver.holds(static_cast<std::size_t>(Solute::second_indicator),
                                    substance_of(spec.then->indicator)));
  return solver;
}

/// In the order of Solute; of an empty parcel, that of pure water.
std::array<double, kSolutes> solutes_mol_dm3(const Parcel& liquid, Hydration hydration) {
  if (liquid.empty()) return {};
  const double carbonate = mol_dm3(liquid, Component::carbonate);
  const double carbonic =
      hydration == Hydration::complete ? carbonate + mol_dm3(liquid, Component::carbon_dioxide) : carbonate;
  return {mol_dm3(liquid, Component::titrant), mol_dm3(liquid, Component::analyte),
          mol_dm3(liquid, Component::indicator), carbonic, mol_dm3(liquid, Component::second_indicator)};
}

Spectrum behind(Backdrop backdrop) { return backdrop == Backdrop::white_tile ? white_tile() : bare_bench(); }

/// Precondition: the liquid is not empty.
Xyz colour_at(const BenchSpec& spec, const Parcel& liquid, double path_cm, Backdrop backdrop,
              const Equilibrium& there) {
  const double mol_dm3_cm = mol_dm3(liquid, Component::indicator) * path_cm;
  Spectrum absorbance = spec.settled.spectra.absorbance(mol_dm3_cm, indicator_forms(spec, there));
  if (liquid.amount(Component::second_indicator) > 0) {
    const double second = mol_dm3(liquid, Component::second_indicator) * path_cm;
    const Spectrum more = spec.settled.second_spectra.absorbance(
        second, indicator_forms(spec, there, Solute::second_indicator));
    for (std::size_t i = 0; i < absorbance.size(); ++i) absorbance[i] += more[i];
  }
  return seen_through(behind(backdrop), absorbance);
}

/// What a change is judged by: at a second endpoint not by the first one's last trace, which goes meanwhile.
Parcel judged(Parcel liquid, Endpoint endpoint) {
  if (endpoint == Endpoint::second) liquid.amounts[static_cast<std::size_t>(Component::indicator)] = 0;
  return liquid;
}

/// How carbon dioxide counts in the liquids that a change is compared with, which never were: at a second
/// endpoint titrant that they got on paper has long met the carbonate.
Hydration reference_hydration(Endpoint endpoint, Hydration hydration = Hydration::as_it_stands) {
  return endpoint == Endpoint::second ? Hydration::complete : hydration;
}

Quanta indicator_of(const Parcel& liquid, Endpoint endpoint) {
  return liquid.amount(endpoint == Endpoint::second ? Component::second_indicator : Component::indicator);
}

double equivalent_mol(const BenchSpec& spec, const Parcel& liquid, Endpoint endpoint) {
  return spec.titrant_per_analyte_at(endpoint) * liquid.amount_mol(Component::analyte);
}

/// Where one change ends and the other begins.
double half_way_mol(const BenchSpec& spec, const Parcel& liquid) {
  return 0.5 *
         (equivalent_mol(spec, liquid, Endpoint::first) + equivalent_mol(spec, liquid, Endpoint::second));
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
  const Solver& solver = solver_of(spec, hydration);
  const auto solutes = solutes_mol_dm3(liquid, hydration);
  return solver.solve(std::span<const double>(solutes).first(solver.ingredients()));
}

Equilibrium equilibrium_of(const BenchSpec& spec, const Parcel& liquid, Hydration hydration,
                           const Equilibrium& near) {
  const Solver& solver = solver_of(spec, hydration);
  const auto solutes = solutes_mol_dm3(liquid, hydration);
  return solver.solve(std::span<const double>(solutes).first(solver.ingredients()), near);
}

FormShares indicator_forms(const BenchSpec& spec, const Equilibrium& there, Solute indicator) {
  return spec.settled.as_it_stands.form_fractions(static_cast<std::size_t>(indicator), there);
}

Xyz colour_of(const BenchSpec& spec, const Parcel& liquid, double path_cm, Backdrop backdrop,
              Hydration hydration) {
  if (liquid.empty()) return seen_through(behind(backdrop), Spectrum{});
  return colour_at(spec, liquid, path_cm, backdrop, equilibrium_of(spec, liquid, hydration));
}

Endpoint endpoint_due(const BenchSpec& spec, const Parcel& liquid) {
  if (!spec.then) return Endpoint::first;
  constexpr double kTrace = 0.1;  // of a drop: what a rinsed flask keeps is less
  const double drop_mol = spec.indicator_drop_cm3 * spec.then->indicator.stock_mol_dm3 / 1000.0;
  const bool second = liquid.amount_mol(Component::second_indicator) > kTrace * drop_mol;
  return second ? Endpoint::second : Endpoint::first;
}

Parcel before_change(const BenchSpec& spec, const Parcel& liquid, Endpoint endpoint) {
  return with_titrant(judged(liquid, endpoint),
                      endpoint == Endpoint::second ? amount_quanta(half_way_mol(spec, liquid)) : 0);
}

double visible_change(const BenchSpec& spec, const Parcel& liquid, Hydration hydration, Endpoint endpoint) {
  if (liquid.empty()) return 0.0;
  const double path = sight_path_cm(spec.flask, liquid.volume_cm3());
  const Parcel untitrated = before_change(spec, liquid, endpoint);
  const Xyz now = colour_of(spec, judged(liquid, endpoint), path, Backdrop::white_tile, hydration);
  const Xyz before =
      colour_of(spec, untitrated, path, Backdrop::white_tile, reference_hydration(endpoint, hydration));
  return ciede2000(to_lab(now), to_lab(before));
}

double excess_titrant_mol(const BenchSpec& spec, const Parcel& liquid, Endpoint endpoint) {
  return liquid.amount_mol(Component::titrant) - equivalent_mol(spec, liquid, endpoint);
}

Parcel far_past_endpoint(const BenchSpec& spec, const Parcel& liquid, Endpoint endpoint) {
  double past_mol = equivalent_mol(spec, liquid, endpoint) + kSearch_cm3 * spec.breakdown_mol_dm3() / 1000.0;
  if (spec.then && endpoint == Endpoint::first) past_mol = std::min(past_mol, half_way_mol(spec, liquid));
  return with_titrant(judged(liquid, endpoint), amount_quanta(past_mol));
}

bool shows_endpoint(const BenchSpec& spec, const Parcel& liquid, Endpoint endpoint) {
  if (spec.gains_colour_at(endpoint))
    return visible_change(spec, liquid, Hydration::as_it_stands, endpoint) >= kFirstVisibleChange;
  if (liquid.empty() || indicator_of(liquid, endpoint) == 0) return false;
  const double path = sight_path_cm(spec.flask, liquid.volume_cm3());
  const Xyz now = colour_of(spec, judged(liquid, endpoint), path, Backdrop::white_tile);
  // On paper the titrant beyond has met the carbonate: no acid is left to turn a second indicator that is in.
  const Xyz gone = colour_of(spec, far_past_endpoint(spec, liquid, endpoint), path, Backdrop::white_tile,
                             spec.then ? Hydration::complete : Hydration::as_it_stands);
  return ciede2000(to_lab(now), to_lab(gone)) <= kFirstVisibleChange;
}

std::optional<double> first_visible_change_cm3(const BenchSpec& spec, const Parcel& liquid,
                                               Endpoint endpoint) {
  if (liquid.empty() || indicator_of(liquid, endpoint) == 0) return std::nullopt;
  const double c_mol_cm3 = spec.breakdown_mol_dm3() / 1000.0;
  const double equivalent = equivalent_mol(spec, liquid, endpoint);
  const double path_cm = sight_path_cm(spec.flask, liquid.volume_cm3());
  const bool gains_colour = spec.gains_colour_at(endpoint);
  const Parcel lasting =
      gains_colour ? before_change(spec, liquid, endpoint) : far_past_endpoint(spec, liquid, endpoint);
  Equilibrium near = equilibrium_of(spec, lasting, Hydration::complete);
  const Lab compared = to_lab(colour_at(spec, lasting, path_cm, Backdrop::white_tile, near));
  const Parcel seen = judged(liquid, endpoint);
  const auto excess = [&](double past_cm3) {
    const Parcel titrated = with_titrant(seen, amount_quanta(equivalent + past_cm3 * c_mol_cm3));
    near = equilibrium_of(spec, titrated, Hydration::complete, near);
    const Xyz now = colour_at(spec, titrated, path_cm, Backdrop::white_tile, near);
    const double off = ciede2000(to_lab(now), compared) - kFirstVisibleChange;
    return gains_colour ? off : -off;
  };
  double none_cm3 = -equivalent / c_mol_cm3, search_cm3 = kSearch_cm3;
  if (spec.then) {
    const double half_way_cm3 = (half_way_mol(spec, liquid) - equivalent) / c_mol_cm3;
    if (endpoint == Endpoint::second)
      none_cm3 = half_way_cm3;
    else
      search_cm3 = std::min(search_cm3, half_way_cm3);
  }
  if (excess(search_cm3) < 0.0 || (!gains_colour && excess(none_cm3) >= 0.0)) return std::nullopt;
  return crossing(none_cm3, search_cm3, 1e-10, excess);
}

}  // namespace halfdrop
