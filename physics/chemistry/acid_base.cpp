#include "physics/chemistry/acid_base.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "physics/chemistry/activity.h"
#include "physics/elementary.h"

namespace halfdrop {
namespace {

constexpr double kDaviesLimit_mol_dm3 = 0.5;

/// Up to four forms, most protonated first; those a system does not have stay 0.
using Forms = std::array<double, 4>;

/// One acid system at work. `lost` is the form the charges are counted from: see Balance::choose_references.
struct System {
  double mol_dm3 = 0.0;
  int steps = 0;
  int protonated_charge = 0;
  int lost = 0;
  std::array<double, 3> k{};              ///< thermodynamic constants
  Forms cumulative{};                     ///< products of the constants in concentrations, cumulative[0] = 1
  Forms positive{}, negative{}, ionic{};  ///< what a form counts for, times mol_dm3
};

/// Thermodynamic constants turned into products in concentrations, when an ion of charge 1 has activity
/// coefficient g: the acid of charge z has K' = K g^(z^2) / (g^((z-1)^2) g) = K g^(2z - 2).
void set_cumulative(System& system, double g) {
  const double square = g * g;
  const double inverse_square = 1.0 / square;
  double factor = 1.0;
  for (int z = system.protonated_charge; z > 1; --z) factor *= square;
  for (int z = system.protonated_charge; z < 1; ++z) factor *= inverse_square;
  system.cumulative[0] = 1.0;
  for (std::size_t i = 0; i < static_cast<std::size_t>(system.steps); ++i) {
    system.cumulative[i + 1] = system.cumulative[i] * system.k[i] * factor;
    factor *= inverse_square;
  }
}

System system_of(const AcidSystem& acid, double mol_dm3) {
  assert(acid.steps >= 1 && acid.steps <= 3);
  System system;
  system.mol_dm3 = mol_dm3;
  system.steps = acid.steps;
  system.protonated_charge = acid.protonated_charge;
  for (std::size_t i = 0; i < static_cast<std::size_t>(acid.steps); ++i) {
    system.k[i] = elementary::exp10(-acid.pk[i]);
  }
  return system;
}

/// Fixes what each form counts for, once the reference form is chosen.
void set_weights(System& system) {
  for (int lost = 0; lost <= system.steps; ++lost) {
    const auto i = static_cast<std::size_t>(lost);
    const int charge = system.protonated_charge - lost;
    system.positive[i] = system.mol_dm3 * std::max(system.lost - lost, 0);
    system.negative[i] = system.mol_dm3 * std::max(lost - system.lost, 0);
    system.ionic[i] = system.mol_dm3 * charge * charge;
  }
}

Forms fractions_of(const System& system, double inverse_h) {
  const Forms& k = system.cumulative;
  const double square = inverse_h * inverse_h;
  const Forms part{k[0], k[1] * inverse_h, k[2] * square, k[3] * (square * inverse_h)};
  const double scale = 1.0 / ((part[0] + part[1]) + (part[2] + part[3]));
  return {part[0] * scale, part[1] * scale, part[2] * scale, part[3] * scale};
}

double dot(const Forms& weight, const Forms& share) {
  return (weight[0] * share[0] + weight[1] * share[1]) + (weight[2] * share[2] + weight[3] * share[3]);
}

/// The sum of weight x share x protons lost.
double moment(const Forms& weight, const Forms& share) {
  return weight[1] * share[1] + (2.0 * weight[2] * share[2] + 3.0 * weight[3] * share[3]);
}

/// The two sides of the charge balance at some [H+], and how they change with ln[H+].
struct Sides {
  double positive = 0.0, negative = 0.0;
  double positive_slope = 0.0, negative_slope = 0.0;
  double ionic_strength = 0.0;
};

/// The charge balance written as a proton condition: charges count from a reference form of each system,
/// chosen so that nearly all of the strong ions' charge cancels. Each side then rises or falls steeply with
/// [H+], and ln(positive / negative) is nearly straight in ln[H+], which suits Newton's method.
class Balance {
 public:
  Balance(const Mixture& mixture, const SolverOptions& options) : temperature_c_(options.temperature_c) {
    strong_ = mixture.strong_charge_mol_dm3;
    strong_ions_ = std::max(mixture.strong_ions_mol_dm3, std::abs(strong_));
    kw_ = kw_concentration_ = elementary::exp10(-options.pkw);
    systems_.reserve(mixture.parts.size());
    for (const Mixture::Part& part : mixture.parts) {
      if (part.mol_dm3 > 0.0) systems_.push_back(system_of(part.system, part.mol_dm3));
    }
    for (System& system : systems_) set_cumulative(system, 1.0);
    choose_references();
  }

  double first_guess() const { return guess_; }
  double first_ionic_strength() const;
  double gamma() const { return gamma_; }
  void set_ionic_strength(double ionic_strength_mol_dm3);
  Sides at(double h) const;
  /// Newton in ln h from `h`, inside limits that always hold; stops after a step below `tolerance`.
  double root(double h, double tolerance) const;

 private:
  /// Strong charge and the charge of the reference forms, summed anew so that no rounding is carried along.
  double strong_left() const;
  void choose_references();
  System* next_to_lose_a_proton();
  void set_limits();

  std::vector<System> systems_;
  double temperature_c_;
  double strong_ = 0.0;  ///< net charge left to balance once every system is in its reference form
  double strong_ions_ = 0.0;
  double kw_ = 0.0, kw_concentration_ = 0.0, gamma_ = 1.0;
  double guess_ = 1e-7, low_ = 0.0, high_ = 0.0;
};

double Balance::strong_left() const {
  double left = strong_;
  for (const System& system : systems_) left += system.mol_dm3 * (system.protonated_charge - system.lost);
  return left;
}

System* Balance::next_to_lose_a_proton() {
  System* next = nullptr;
  double strongest = 0.0;
  for (System& system : systems_) {
    if (system.lost == system.steps) continue;
    const double k = system.k[static_cast<std::size_t>(system.lost)];
    if (k > strongest) {
      next = &system;
      strongest = k;
    }
  }
  return next;
}

// Takes protons off, strongest acid first, until what is left of the strong charge is smaller than half the
// next system; then solves A h + left = B / h, the balance near that reference, for a first guess.
void Balance::choose_references() {
  double left = strong_left();
  double takes_up = 1.0;
  System* next = next_to_lose_a_proton();
  while (next != nullptr && left > 0.5 * next->mol_dm3) {
    takes_up = 1.0 + next->mol_dm3 / next->k[static_cast<std::size_t>(next->lost)];
    ++next->lost;
    left = strong_left();
    next = next_to_lose_a_proton();
  }
  double gives_off = kw_;
  if (next != nullptr) gives_off += next->mol_dm3 * next->k[static_cast<std::size_t>(next->lost)];
  const double root = std::abs(left) + std::sqrt(left * left + 4.0 * takes_up * gives_off);
  guess_ = left > 0.0 ? 2.0 * gives_off / root : root / (2.0 * takes_up);
  strong_ = left;
  for (System& system : systems_) set_weights(system);
  set_limits();
  guess_ = std::clamp(guess_, low_, high_);
}

// The positive side is at least h and at most h + p, the negative side at least Kw'/h and at most Kw'/h + n.
// Kw' lies between Kw and 4 Kw at any ionic strength Davies is used for.
void Balance::set_limits() {
  double p = std::max(strong_, 0.0);
  double n = std::max(-strong_, 0.0);
  for (const System& system : systems_) {
    p += system.mol_dm3 * system.lost;
    n += system.mol_dm3 * (system.steps - system.lost);
  }
  const double widest = 4.0 * kw_;
  high_ = 1.000001 * 0.5 * (n + std::sqrt(n * n + 4.0 * widest));
  low_ = 0.999999 * 2.0 * kw_ / (p + std::sqrt(p * p + 4.0 * kw_));
}

double Balance::first_ionic_strength() const {
  double sum = strong_ions_ + std::abs(strong_);
  for (const System& system : systems_) {
    const int charge = system.protonated_charge - system.lost;
    sum += system.mol_dm3 * charge * charge;
  }
  return 0.5 * sum;
}

void Balance::set_ionic_strength(double ionic_strength_mol_dm3) {
  gamma_ = elementary::exp10(davies_log10_gamma(1, ionic_strength_mol_dm3, temperature_c_));
  kw_concentration_ = kw_ / (gamma_ * gamma_);
  for (System& system : systems_) set_cumulative(system, gamma_);
}

Sides Balance::at(double h) const {
  const double inverse_h = 1.0 / h;
  const double oh = kw_concentration_ * inverse_h;
  Sides sides{std::max(strong_, 0.0) + h, std::max(-strong_, 0.0) + oh, h, oh, strong_ions_ + h + oh};
  for (const System& system : systems_) {
    const Forms share = fractions_of(system, inverse_h);
    const double mean_lost = share[1] + (2.0 * share[2] + 3.0 * share[3]);
    const double positive = dot(system.positive, share);
    const double negative = dot(system.negative, share);
    sides.positive += positive;
    sides.negative += negative;
    sides.positive_slope += mean_lost * positive - moment(system.positive, share);
    sides.negative_slope += moment(system.negative, share) - mean_lost * negative;
    sides.ionic_strength += dot(system.ionic, share);
  }
  sides.ionic_strength *= 0.5;
  return sides;
}

/// ln(a / b); near 1 by its series, which is enough for a Newton step and leaves the root where it is.
double log_ratio(double a, double b) {
  const double excess = (a - b) / b;
  if (std::abs(excess) < 1e-3) return excess * (1.0 - excess * (0.5 - excess / 3.0));
  return elementary::log(a / b);
}

/// e^step; for a small step by its series, to 1e-14.
double exp_of_step(double step) {
  if (std::abs(step) < 5e-4) return 1.0 + step * (1.0 + step * (0.5 + step / 6.0));
  return elementary::exp(step);
}

double Balance::root(double h, double tolerance) const {
  double low = low_;
  double high = high_;
  for (int i = 0; i < 200; ++i) {
    const Sides sides = at(h);
    const double excess = log_ratio(sides.positive, sides.negative);
    (excess > 0.0 ? high : low) = h;
    const double step = -excess * sides.positive * sides.negative /
                        (sides.positive_slope * sides.negative + sides.negative_slope * sides.positive);
    double next = h * exp_of_step(step);
    if (std::abs(step) < tolerance) return next;
    const bool slow = i > 20 && i % 2 == 1;
    if (slow || !(next > low && next < high)) {
      next = std::sqrt(low * high);
      if (std::abs(next - h) < tolerance * h) return next;
    }
    h = next;
  }
  return h;
}

Equilibrium equilibrium_at(const Balance& balance, double h, const Sides& sides) {
  Equilibrium result;
  result.h_mol_dm3 = h;
  result.ph = -elementary::log10(h * balance.gamma());
  result.ionic_strength_mol_dm3 = sides.ionic_strength;
  result.residual_mol_dm3 = sides.positive - sides.negative;
  return result;
}

}  // namespace

void Mixture::add(const Substance& substance, double mol_dm3) {
  assert(mol_dm3 >= 0.0);
  strong_charge_mol_dm3 += substance.strong_charge * mol_dm3;
  strong_ions_mol_dm3 += std::abs(substance.strong_charge) * mol_dm3;
  for (const AcidSystem& system : substance.systems) add(system, mol_dm3);
}

void Mixture::add(const AcidSystem& system, double mol_dm3) {
  assert(mol_dm3 >= 0.0);
  parts.push_back({system, mol_dm3});
}

// Ionic strength is found by the secant rule, kept between two values whose outcomes lie above and below it.
Equilibrium solve(const Mixture& mixture, const SolverOptions& options) {
  constexpr double kCoarse = 1e-3;
  constexpr double kFine = 1e-7;  // the step after one this small is below rounding
  Balance balance(mixture, options);
  double h = balance.first_guess();
  if (options.ideal) {
    h = balance.root(h, kFine);
    return equilibrium_at(balance, h, balance.at(h));
  }
  double low = 0.0;
  double high = kDaviesLimit_mol_dm3;
  double strength = std::min(balance.first_ionic_strength(), high);
  double before = 0.0, before_error = 0.0;
  Sides sides;
  for (int pass = 0; pass < 60; ++pass) {
    balance.set_ionic_strength(strength);
    h = balance.root(h, pass == 0 ? kCoarse : kFine);
    sides = balance.at(h);
    const double outcome = std::min(sides.ionic_strength, kDaviesLimit_mol_dm3);
    const double error = outcome - strength;
    if (pass > 0 && std::abs(error) <= 1e-12 * strength) break;
    if (pass > 0) (error > 0.0 ? low : high) = strength;  // a coarse root tells no side
    double next = outcome;
    if (pass > 0 && error != before_error) {
      next = strength - error * (strength - before) / (error - before_error);
    }
    if (!(next >= low && next <= high)) next = 0.5 * (low + high);
    before = strength;
    before_error = error;
    strength = next;
  }
  return equilibrium_at(balance, h, sides);
}

std::array<double, 4> form_fractions(const AcidSystem& acid, const Equilibrium& equilibrium,
                                     const SolverOptions& options) {
  System system = system_of(acid, 1.0);
  const double g = options.ideal ? 1.0
                                 : elementary::exp10(davies_log10_gamma(1, equilibrium.ionic_strength_mol_dm3,
                                                                        options.temperature_c));
  set_cumulative(system, g);
  return fractions_of(system, 1.0 / equilibrium.h_mol_dm3);
}

}  // namespace halfdrop
