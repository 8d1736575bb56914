#include "physics/flask/titration.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

#include "physics/chemistry/equivalence.h"

namespace halfdrop {
namespace {

constexpr std::size_t kIndicator = 2;  // place among the solver's ingredients, after flask and burette

/// Where a condition that is false at `low` and true at `high` begins to hold, to 1e-9 cm3.
template <class Holds>
double beginning_cm3(double low, double high, Holds holds) {
  while (high - low > 1e-9) {
    const double middle = 0.5 * (low + high);
    (holds(middle) ? high : low) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace

Titration::Titration(const TitrationSpec& spec) : spec_(spec), solver_(spec.solver) {
  solver_.add(spec.flask);
  solver_.add(spec.burette);
  if (spec.indicator) solver_.add(substance_of(*spec.indicator));
  if (spec.burette_mol_dm3 <= 0.0 || spec.flask_mol_dm3 <= 0.0) return;
  for (const double ratio : equivalence_ratios(spec.flask, spec.burette))
    equivalences_cm3_.push_back(ratio * spec.flask_mol_dm3 * spec.aliquot_cm3 / spec.burette_mol_dm3);
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

Equilibrium Titration::at(double volume_cm3) const { return solve(volume_cm3, volume_cm3); }

Xyz Titration::colour(double volume_cm3, Backdrop backdrop) const {
  return colour(volume_cm3, at(volume_cm3), backdrop);
}

Xyz Titration::colour(double volume_cm3, const Equilibrium& there, Backdrop backdrop) const {
  Spectrum absorbance{};
  if (spec_.indicator) {
    const double total = total_cm3(volume_cm3);
    absorbance = absorbance_per_cm(*spec_.indicator,
                                   spec_.indicator->stock_mol_dm3 * spec_.drops * spec_.drop_cm3 / total,
                                   solver_.form_fractions(kIndicator, there));
    const double path_cm = sight_path_cm(spec_.glass, total);
    for (double& a : absorbance) a *= path_cm;
  }
  return seen_through(backdrop == Backdrop::white_tile ? white_tile() : bare_bench(), absorbance);
}

Lab Titration::seen(double volume_cm3, double titrant_cm3, const Viewing& viewing) const {
  const Xyz light = colour(volume_cm3, solve(volume_cm3, titrant_cm3), viewing.backdrop);
  return to_lab(seen_by(viewing.vision, light));
}

std::optional<VisibleChange> Titration::visible_change(const Viewing& viewing) const {
  if (!spec_.indicator || equivalences_cm3_.empty()) return std::nullopt;
  const double far_cm3 = 2.0 * equivalences_cm3_.back();
  const auto from_first = [&](double volume_cm3) {
    return ciede2000(seen(volume_cm3, volume_cm3, viewing), seen(volume_cm3, 0.0, viewing));
  };
  const auto from_last = [&](double volume_cm3) {
    return ciede2000(seen(volume_cm3, volume_cm3, viewing), seen(volume_cm3, far_cm3, viewing));
  };
  if (from_first(far_cm3) < kFirstVisibleChange) return std::nullopt;
  VisibleChange change;
  change.first_cm3 =
      beginning_cm3(0.0, far_cm3, [&](double v) { return from_first(v) >= kFirstVisibleChange; });
  change.middle_cm3 = beginning_cm3(0.0, far_cm3, [&](double v) { return from_first(v) >= from_last(v); });
  change.last_cm3 = beginning_cm3(0.0, far_cm3, [&](double v) { return from_last(v) < kFirstVisibleChange; });
  return change;
}

Fitness fitness_of(const VisibleChange& change, const std::vector<double>& equivalences_cm3) {
  assert(!equivalences_cm3.empty());
  const auto away = [&](double volume_cm3) { return std::abs(volume_cm3 - change.middle_cm3); };
  const double nearest = *std::min_element(equivalences_cm3.begin(), equivalences_cm3.end(),
                                           [&](double a, double b) { return away(a) < away(b); });
  return {nearest, away(nearest) <= kUnfitFromShare * nearest};
}

}  // namespace halfdrop
