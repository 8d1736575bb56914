#include "physics/flask/contents.h"

#include <algorithm>

#include "physics/chemistry/carbon_dioxide.h"
#include "physics/chemistry/water.h"
#include "physics/units.h"

namespace halfdrop {

namespace {

constexpr double kSearch_cm3 = 10.0;

double cone_volume_cm3(const FlaskSpec& flask, double depth_cm) {
  const double cone_cm = flask.height_cm - flask.neck_length_cm;
  const double in_cone = std::min(depth_cm, cone_cm);
  const double base = flask.base_radius_cm;
  const double top = base - (base - flask.neck_radius_cm) * in_cone / cone_cm;
  const double cone = kPi / 3.0 * in_cone * (base * base + base * top + top * top);
  return cone + kPi * flask.neck_radius_cm * flask.neck_radius_cm * (depth_cm - in_cone);
}

Parcel with_titrant(const Parcel& liquid, Quanta titrant) {
  Parcel changed = liquid;
  changed.amounts[static_cast<std::size_t>(Component::titrant)] = std::max<Quanta>(titrant, 0);
  return changed;
}

}  // namespace

SolverOptions solver_options(const BenchSpec& spec) {
  SolverOptions solver;
  solver.temperature_c = spec.temperature_c;
  solver.pkw = water::pkw(spec.temperature_c);
  return solver;
}

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

double liquid_depth_cm(const FlaskSpec& flask, double volume_cm3) {
  if (volume_cm3 <= 0.0) return 0.0;
  double low = 0.0;
  double high = flask.height_cm;
  for (int i = 0; i < 50; ++i) {
    const double middle = 0.5 * (low + high);
    (cone_volume_cm3(flask, middle) < volume_cm3 ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

double sight_path_cm(const FlaskSpec& flask, double volume_cm3) {
  return 2.0 * liquid_depth_cm(flask, volume_cm3);
}

Equilibrium equilibrium_of(const BenchSpec& spec, const Parcel& liquid, Hydration hydration) {
  Mixture mixture;
  if (liquid.empty()) return solve(mixture, solver_options(spec));
  mixture.add(spec.titrant.substance, mol_dm3(liquid, Component::titrant));
  mixture.add(spec.sample.substance, mol_dm3(liquid, Component::analyte));
  add(mixture, spec.indicator, mol_dm3(liquid, Component::indicator));
  const double carbonate_mol_dm3 = mol_dm3(liquid, Component::carbonate);
  if (hydration == Hydration::as_it_stands) {
    mixture.add(carbon_dioxide::carbonate_pair(), carbonate_mol_dm3);
  } else {
    mixture.add(carbon_dioxide::carbonic_acid(),
                carbonate_mol_dm3 + mol_dm3(liquid, Component::carbon_dioxide));
  }
  return solve(mixture, solver_options(spec));
}

Xyz colour_of(const BenchSpec& spec, const Parcel& liquid, double path_cm, Backdrop backdrop,
              Hydration hydration) {
  const Spectrum behind = backdrop == Backdrop::white_tile ? white_tile() : bare_bench();
  Spectrum absorbance{};
  if (!liquid.empty()) {
    const auto forms =
        form_fractions(spec.indicator.system, equilibrium_of(spec, liquid, hydration), solver_options(spec));
    absorbance = absorbance_per_cm(spec.indicator, mol_dm3(liquid, Component::indicator), forms);
    for (double& a : absorbance) a *= path_cm;
  }
  return seen_through(behind, absorbance);
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

std::optional<double> first_visible_change_cm3(const BenchSpec& spec, const Parcel& liquid) {
  if (liquid.empty() || liquid.amount(Component::indicator) == 0) return std::nullopt;
  const double c_mol_cm3 = spec.breakdown_mol_dm3() / 1000.0;
  const double equivalent_mol = spec.titrant_per_analyte * liquid.amount_mol(Component::analyte);
  const auto shows = [&](double past_cm3) {
    const double titrant_mol = equivalent_mol + past_cm3 * c_mol_cm3;
    const Parcel titrated = with_titrant(liquid, amount_quanta(titrant_mol));
    return visible_change(spec, titrated, Hydration::complete) >= kFirstVisibleChange;
  };
  double low = -equivalent_mol / c_mol_cm3;
  double high = kSearch_cm3;
  if (!shows(high)) return std::nullopt;
  while (high - low > 1e-10) {
    const double middle = 0.5 * (low + high);
    (shows(middle) ? high : low) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace halfdrop
