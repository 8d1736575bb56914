#include "physics/flask/titration.h"

#include <array>
#include <cassert>
#include <cmath>

#include "physics/chemistry/equivalence.h"

namespace halfdrop {
namespace {

constexpr std::size_t kIndicator = 2;  // place among the solver's ingredients, after flask and burette

}  // namespace

Titration::Titration(const TitrationSpec& spec) : spec_(spec), solver_(spec.solver) {
  solver_.add(with_beside(spec.flask, spec.flask_mol_dm3, spec.beside_flask));
  solver_.add(with_beside(spec.burette, spec.burette_mol_dm3, spec.beside_burette));
  if (spec.indicator) {
    solver_.add(substance_of(*spec.indicator));
    spectra_ = IndicatorSpectra(*spec.indicator);
  }
  if (spec.burette_mol_dm3 <= 0.0 || spec.flask_mol_dm3 <= 0.0) return;
  const auto add = [&](double volume_cm3) {
    const double jump = at(1.02 * volume_cm3).ph - at(0.98 * volume_cm3).ph;
    equivalences_.push_back({volume_cm3, at(volume_cm3).ph, std::abs(jump)});
  };
  if (spec.equivalence_cm3) {
    add(*spec.equivalence_cm3);
    return;
  }
  for (const double ratio : equivalence_ratios(spec.flask, spec.burette))
    add(ratio * spec.flask_mol_dm3 * spec.aliquot_cm3 / spec.burette_mol_dm3);
}

double Titration::total_cm3(double volume_cm3) const {
  return spec_.aliquot_cm3 + volume_cm3 + (spec_.indicator ? spec_.drops * spec_.drop_cm3 : 0.0);
}

Equilibrium Titration::solve(double volume_cm3, double titrant_cm3) const {
  const double total = total_cm3(volume_cm3);
  const double indicator =
      spec_.indicator ? spec_.indicator->stock_mol_dm3 * spec_.drops * spec_.drop_cm3 / total : 0.0;
  const std::array<double, 3> mol_dm3{spec_.flask_mol_dm3 * spec_.aliquot_cm3 / total,
                                      spec_.burette_mol_dm3 * titrant_cm3 / total, indicator};
  return solver_.solve(std::span(mol_dm3).first(solver_.ingredients()));
}

Xyz Titration::colour(double volume_cm3, const Equilibrium& there, Backdrop backdrop) const {
  Spectrum absorbance{};
  if (spec_.indicator) {
    const double total = total_cm3(volume_cm3);
    const double mol_dm3 = spec_.indicator->stock_mol_dm3 * spec_.drops * spec_.drop_cm3 / total;
    absorbance = spectra_.absorbance(mol_dm3 * sight_path_cm(spec_.glass, total),
                                     solver_.form_fractions(kIndicator, there));
  }
  return seen_through(backdrop == Backdrop::white_tile ? white_tile() : bare_bench(), absorbance);
}

double Titration::indicator_share(double volume_cm3, int form) const {
  assert(spec_.indicator && form >= 0 && form <= spec_.indicator->system.steps);
  return solver_.form_fractions(kIndicator, at(volume_cm3))[static_cast<std::size_t>(form)];
}

double Titration::indicator_protons_lost(double volume_cm3) const {
  assert(spec_.indicator);
  const FormShares shares = solver_.form_fractions(kIndicator, at(volume_cm3));
  double lost = 0.0;
  for (int form = 1; form <= spec_.indicator->system.steps; ++form)
    lost += form * shares[static_cast<std::size_t>(form)];
  return lost;
}

}  // namespace halfdrop
