#include "physics/chemistry/charge_balance.h"

#include <algorithm>
#include <cmath>

#include "physics/chemistry/activity.h"
#include "physics/elementary.h"

namespace halfdrop {
namespace {

constexpr double kLn10 = 2.302585092994046;
constexpr double kFine = 1e-7;  ///< the step after one this small is below rounding

using Weights = std::array<FormShares, 4>;

/// Charges of form `lost` counted from form `reference`, on one side: [reference][lost].
constexpr Weights charges_on_side(int sign) {
  Weights weights{};
  for (int reference = 0; reference < 4; ++reference) {
    for (int lost = 0; lost < 4; ++lost)
      weights[static_cast<std::size_t>(reference)][static_cast<std::size_t>(lost)] =
          std::max(sign * (reference - lost), 0);
  }
  return weights;
}
constexpr Weights kPositive = charges_on_side(1);
constexpr Weights kNegative = charges_on_side(-1);

/// A sum over forms, and how it changes with ln[H+] and with ln g.
struct Term {
  double value = 0.0, by_h = 0.0, by_g = 0.0;
  void add(double times, const Term& other) {
    value += times * other.value;
    by_h += times * other.by_h;
    by_g += times * other.by_g;
  }
};

/// The two sides of the charge balance, and twice the ionic strength.
struct Sides {
  Term positive, negative, ionic;
};

double dot(const FormShares& a, const FormShares& b) {
  return (a[0] * b[0] + a[1] * b[1]) + (a[2] * b[2] + a[3] * b[3]);
}

/// The sum of weight x share. A share's logarithm changes with ln[H+] by the mean number of protons lost less
/// its own, and with ln g by the mean power less its own.
struct Moments {
  FormShares share, power;
  double mean_lost, mean_power;

  Moments(const BalanceConstants::System& system, const Medium& medium)
      : share(form_shares(system, medium)),
        power(system.activity_power),
        mean_lost(share[1] + (2.0 * share[2] + 3.0 * share[3])),
        mean_power(dot(power, share)) {}

  [[nodiscard]] Term sum(const FormShares& weight) const {
    const FormShares part{weight[0] * share[0], weight[1] * share[1], weight[2] * share[2],
                          weight[3] * share[3]};
    const double value = (part[0] + part[1]) + (part[2] + part[3]);
    return {value, mean_lost * value - (part[1] + (2.0 * part[2] + 3.0 * part[3])),
            mean_power * value - dot(power, part)};
  }
};

/// What a system of one proton adds to the sides; the same as by Moments, in a fraction of the time.
void add_monoprotic(Sides& sides, const BalanceConstants::System& system, double amount, int reference,
                    const Medium& medium) {
  const FormShares share = form_shares(system, medium);
  const double by_h = amount * share[0] * share[1];
  const double by_g = by_h * system.activity_power[1];
  if (reference == 0)
    sides.negative.add(1.0, {amount * share[1], -by_h, -by_g});
  else
    sides.positive.add(1.0, {amount * share[0], by_h, by_g});
  const FormShares& square = system.charge_square;
  sides.ionic.add(1.0, {amount * (square[0] * share[0] + square[1] * share[1]),
                        (square[0] - square[1]) * by_h, (square[0] - square[1]) * by_g});
}

/// Where the search stands.
struct Point {
  double h = 1e-7;
  double root_strength = 0.0;  ///< square root of the ionic strength in mol/dm3
  double g = 1.0;              ///< activity coefficient that goes with it
};

/// ln(a / b). Near 1 by a fraction right to 3e-5 of itself or better, the nearer the better: enough for a
/// Newton step, and it leaves the root where it is.
double log_ratio(double a, double b, double inverse_b) {
  const double excess = (a - b) * inverse_b;
  if (std::abs(excess) < 0.1) return excess * (6.0 + excess) / (6.0 + 4.0 * excess);
  return elementary::log(a * inverse_b);
}

/// e^step; for a small step by its series, to 2e-15.
double exp_of_step(double x) {
  if (std::abs(x) < 0.01) return 1.0 + x * (1.0 + x * (0.5 + x * (1.0 / 6.0 + x * (1.0 / 24.0 + x / 120.0))));
  return elementary::exp(x);
}

class ChargeBalance {
 public:
  ChargeBalance(const BalanceConstants& constants, const Amounts& amounts);

  [[nodiscard]] Equilibrium from_scratch() const;
  [[nodiscard]] Equilibrium near(double h, double root_strength) const;

 private:
  void choose_references();
  [[nodiscard]] double strong_left() const;
  [[nodiscard]] Point first_guess() const;
  [[nodiscard]] Point point_at(double h, double root_strength) const;
  [[nodiscard]] Sides at(double h, double g) const;
  [[nodiscard]] bool newton(Point& point) const;
  [[nodiscard]] double root(double h, double g) const;
  [[nodiscard]] Point safely() const;

  const BalanceConstants& constants_;
  const Amounts& amounts_;
  PerSystem<int> lost_;  ///< the reference form of each system
  double strong_ions_ = 0.0;
  double left_ = 0.0;  ///< charge left to balance once every system is in its reference form
  /// How [H+] bends the two sides near the references: takes_up h + left = gives_off / h.
  double takes_up_ = 1.0, gives_off_ = 0.0;
};

ChargeBalance::ChargeBalance(const BalanceConstants& constants, const Amounts& amounts)
    : constants_(constants),
      amounts_(amounts),
      lost_(constants.systems().size()),
      strong_ions_(std::max(amounts.strong_ions, std::abs(amounts.strong_charge))) {
  choose_references();
}

/// Summed anew, so that no rounding is carried along.
double ChargeBalance::strong_left() const {
  double left = amounts_.strong_charge;
  for (std::size_t i = 0; i < lost_.size(); ++i)
    left += amounts_.systems[i] * (constants_.systems()[i].protonated_charge - lost_[i]);
  return left;
}

// Takes protons off, strongest acid first, until what is left of the strong charge is smaller than half the
// next system.
void ChargeBalance::choose_references() {
  left_ = strong_left();
  gives_off_ = constants_.kw();
  for (const BalanceConstants::Loss& loss : constants_.losses()) {
    const double amount = amounts_.systems[loss.system];
    if (amount <= 0.0) continue;
    if (left_ <= 0.5 * amount) {
      gives_off_ += amount * loss.k;
      break;
    }
    takes_up_ = 1.0 + amount / loss.k;
    ++lost_[loss.system];
    left_ -= amount;
  }
  left_ = strong_left();
}

Point ChargeBalance::first_guess() const {
  const double root = std::abs(left_) + std::sqrt(left_ * left_ + 4.0 * takes_up_ * gives_off_);
  double ionic = strong_ions_ + std::abs(left_);
  for (std::size_t i = 0; i < lost_.size(); ++i)
    ionic += amounts_.systems[i] * constants_.systems()[i].charge_square[static_cast<std::size_t>(lost_[i])];
  return point_at(left_ > 0.0 ? 2.0 * gives_off_ / root : root / (2.0 * takes_up_),
                  std::sqrt(0.5 * ionic + 1e-7));
}

Point ChargeBalance::point_at(double h, double root_strength) const {
  const SolverOptions& options = constants_.options();
  if (options.ideal) return {h, root_strength, 1.0};
  return {h, root_strength,
          elementary::exp10(davies_at_root(root_strength, options.temperature_c).log10_gamma)};
}

Sides ChargeBalance::at(double h, double g) const {
  const Medium medium(h, g);
  const double oh = constants_.kw() * medium.inverse_square * medium.inverse_h;
  Sides sides{{std::max(left_, 0.0) + h, h, 0.0},
              {std::max(-left_, 0.0) + oh, -oh, -2.0 * oh},
              {strong_ions_ + h + oh, h - oh, -2.0 * oh}};
  const double* const amounts = amounts_.systems.data();
  const int* const references = lost_.data();
  const BalanceConstants::System* const systems = constants_.systems().data();
  for (std::size_t i = 0; i < lost_.size(); ++i) {
    if (amounts[i] <= 0.0) continue;
    if (systems[i].steps == 1) {
      add_monoprotic(sides, systems[i], amounts[i], references[i], medium);
      continue;
    }
    const Moments moments(systems[i], medium);
    const auto reference = static_cast<std::size_t>(references[i]);
    if (references[i] > 0) sides.positive.add(amounts[i], moments.sum(kPositive[reference]));
    if (references[i] < systems[i].steps) sides.negative.add(amounts[i], moments.sum(kNegative[reference]));
    sides.ionic.add(amounts[i], moments.sum(systems[i].charge_square));
  }
  return sides;
}

// Both unknowns at once: ln(positive / negative) = 0, and the ionic strength that was assumed is the one
// found. False when it has not settled; then the slow way will.
bool ChargeBalance::newton(Point& point) const {
  constexpr int kMostSteps = 25;
  constexpr double kWild = 100.0;
  const SolverOptions& options = constants_.options();
  DaviesAtRoot davies = davies_at_root(point.root_strength, options.temperature_c);
  for (int i = 0; i < kMostSteps; ++i) {
    const double s = point.root_strength;
    const double g_slope = options.ideal ? 0.0 : kLn10 * davies.slope;
    const auto [positive, negative, ionic] = at(point.h, point.g);
    const double inverse_positive = 1.0 / positive.value;
    const double inverse_negative = 1.0 / negative.value;
    const double excess = log_ratio(positive.value, negative.value, inverse_negative);
    const double excess_by_h = positive.by_h * inverse_positive - negative.by_h * inverse_negative;
    const double excess_by_s =
        g_slope * (positive.by_g * inverse_positive - negative.by_g * inverse_negative);
    const double strength = 0.5 * ionic.value - s * s;
    const double strength_by_h = 0.5 * ionic.by_h;
    const double strength_by_s = 0.5 * g_slope * ionic.by_g - 2.0 * s;
    const double scale = 1.0 / (excess_by_h * strength_by_s - excess_by_s * strength_by_h);
    const double step = (strength * excess_by_s - excess * strength_by_s) * scale;
    const double s_step = (excess * strength_by_h - strength * excess_by_h) * scale;
    if (!(std::abs(step) < kWild && std::abs(s_step) < kWild)) return false;
    point.h *= exp_of_step(step);
    point.root_strength = std::clamp(s + s_step, 0.3 * s, 3.0 * s);
    if (!options.ideal) {
      const double before = davies.log10_gamma;
      davies = davies_at_root(point.root_strength, options.temperature_c);
      point.g *= exp_of_step(kLn10 * (davies.log10_gamma - before));
    }
    if (std::abs(step) < kFine && std::abs(s_step) < kFine * s) return true;
  }
  return false;
}

// Newton in ln h at a fixed activity coefficient, inside limits that always hold: the positive side is at
// least h and at most h + p, the negative side at least Kw'/h and at most Kw'/h + n, and Kw' lies between Kw
// and 4 Kw at any ionic strength Davies is used for.
double ChargeBalance::root(double h, double g) const {
  double p = std::max(left_, 0.0);
  double n = std::max(-left_, 0.0);
  for (std::size_t i = 0; i < lost_.size(); ++i) {
    p += amounts_.systems[i] * lost_[i];
    n += amounts_.systems[i] * (constants_.systems()[i].steps - lost_[i]);
  }
  const double kw = constants_.kw();
  double high = 1.000001 * 0.5 * (n + std::sqrt(n * n + 16.0 * kw));
  double low = 0.999999 * 2.0 * kw / (p + std::sqrt(p * p + 4.0 * kw));
  h = std::clamp(h, low, high);
  for (int i = 0; i < 200; ++i) {
    const auto [positive, negative, ionic] = at(h, g);
    const double excess = log_ratio(positive.value, negative.value, 1.0 / negative.value);
    (excess > 0.0 ? high : low) = h;
    const double step = -excess / (positive.by_h / positive.value - negative.by_h / negative.value);
    double next = h * exp_of_step(step);
    if (std::abs(step) < kFine) return next;
    const bool slow = i > 20 && i % 2 == 1;
    if (slow || !(next > low && next < high)) {
      next = std::sqrt(low * high);
      if (std::abs(next - h) < kFine * h) return next;
    }
    h = next;
  }
  return h;
}

// Ionic strength by halving, [H+] found anew for each: slow, and certain.
Point ChargeBalance::safely() const {
  double low = 0.0;
  double high = kDaviesLimit_mol_dm3;
  double h = first_guess().h;
  Point point;
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (low + high);
    point = point_at(h, std::sqrt(middle));
    point.h = h = root(h, point.g);
    const double strength = 0.5 * at(h, point.g).ionic.value;
    point.root_strength = std::sqrt(strength);
    (strength > middle ? low : high) = middle;
  }
  return point;
}

Equilibrium equilibrium_at(const Point& point) {
  Equilibrium result;
  result.h_mol_dm3 = point.h;
  result.ph = -elementary::log10(point.h * point.g);
  result.ionic_strength_mol_dm3 = point.root_strength * point.root_strength;
  return result;
}

Equilibrium ChargeBalance::near(double h, double root_strength) const {
  Point point = point_at(h, root_strength);
  return newton(point) ? equilibrium_at(point) : from_scratch();
}

Equilibrium ChargeBalance::from_scratch() const {
  Point point = first_guess();
  return equilibrium_at(newton(point) ? point : safely());
}

}  // namespace

Equilibrium equilibrium_of(const BalanceConstants& constants, const Amounts& amounts) {
  return ChargeBalance(constants, amounts).from_scratch();
}

Equilibrium equilibrium_near(const BalanceConstants& constants, const Amounts& amounts,
                             const Equilibrium& near) {
  return ChargeBalance(constants, amounts)
      .near(std::max(near.h_mol_dm3, 1e-20), std::sqrt(std::max(near.ionic_strength_mol_dm3, 1e-9)));
}

}  // namespace halfdrop
