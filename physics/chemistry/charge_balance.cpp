#include "physics/chemistry/charge_balance.h"

#include <algorithm>
#include <cmath>

#include "physics/chemistry/activity.h"
#include "physics/elementary.h"

namespace halfdrop {
namespace {

constexpr double kLn10 = 2.302585092994046;
constexpr double kFine = 1e-7;  ///< the step after one this small is below rounding
/// Above what any mixture of soluble things comes to; only keeps a first wild step in bounds.
constexpr double kHighestRoot = 10.0;

using Weights = std::array<std::array<double, 4>, 4>;

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
/// its own, and so with ln g by the mean power less its own.
struct Moments {
  FormShares share, power;
  double mean_lost, mean_power;

  Moments(const BalanceConstants::System& system, double h, double g)
      : share(form_shares(system, h, g)),
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

/// Where the search stands.
struct Point {
  double h = 1e-7;
  double root_strength = 0.0;  ///< square root of the ionic strength in mol/dm3
};

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

class ChargeBalance {
 public:
  ChargeBalance(const BalanceConstants& constants, const Amounts& amounts);

  [[nodiscard]] Equilibrium from_scratch() const;
  [[nodiscard]] Equilibrium near(Point start) const;

 private:
  void choose_references();
  void set_limits();
  [[nodiscard]] double strong_left() const;
  [[nodiscard]] Sides at(double h, double g) const;
  [[nodiscard]] bool newton(Point& point) const;
  [[nodiscard]] double root(double h, double g, double tolerance) const;
  [[nodiscard]] Point safely() const;
  [[nodiscard]] Equilibrium equilibrium_at(const Point& point) const;

  const BalanceConstants& constants_;
  const Amounts& amounts_;
  PerSystem<int> lost_;  ///< the reference form of each system
  double strong_ions_ = 0.0;
  double left_ = 0.0;  ///< charge left to balance once every system is in its reference form
  double kw_ = 0.0;
  double low_ = 0.0, high_ = 0.0;
  Point guess_;
};

ChargeBalance::ChargeBalance(const BalanceConstants& constants, const Amounts& amounts)
    : constants_(constants),
      amounts_(amounts),
      lost_(constants.systems().size()),
      strong_ions_(std::max(amounts.strong_ions, std::abs(amounts.strong_charge))),
      kw_(constants.kw()) {
  choose_references();
  set_limits();
  guess_.h = std::clamp(guess_.h, low_, high_);
}

/// Summed anew, so that no rounding is carried along.
double ChargeBalance::strong_left() const {
  double left = amounts_.strong_charge;
  for (std::size_t i = 0; i < lost_.size(); ++i)
    left += amounts_.systems[i] * (constants_.systems()[i].protonated_charge - lost_[i]);
  return left;
}

// Takes protons off, strongest acid first, until what is left of the strong charge is smaller than half the
// next system; then solves A h + left = B / h, the balance near that reference, for a first guess.
void ChargeBalance::choose_references() {
  left_ = strong_left();
  double takes_up = 1.0;
  double gives_off = kw_;
  for (const BalanceConstants::Loss& loss : constants_.losses()) {
    const double amount = amounts_.systems[loss.system];
    if (amount <= 0.0) continue;
    if (left_ <= 0.5 * amount) {
      gives_off += amount * loss.k;
      break;
    }
    takes_up = 1.0 + amount / loss.k;
    ++lost_[loss.system];
    left_ = strong_left();
  }
  const double root = std::abs(left_) + std::sqrt(left_ * left_ + 4.0 * takes_up * gives_off);
  guess_.h = left_ > 0.0 ? 2.0 * gives_off / root : root / (2.0 * takes_up);
  double ionic = strong_ions_ + std::abs(left_);
  for (std::size_t i = 0; i < lost_.size(); ++i)
    ionic += amounts_.systems[i] * constants_.systems()[i].charge_square[static_cast<std::size_t>(lost_[i])];
  guess_.root_strength = std::sqrt(0.5 * ionic + 1e-7);
}

// The positive side is at least h and at most h + p, the negative side at least Kw'/h and at most Kw'/h + n.
// Kw' lies between Kw and 4 Kw at any ionic strength Davies is used for.
void ChargeBalance::set_limits() {
  double p = std::max(left_, 0.0);
  double n = std::max(-left_, 0.0);
  for (std::size_t i = 0; i < lost_.size(); ++i) {
    p += amounts_.systems[i] * lost_[i];
    n += amounts_.systems[i] * (constants_.systems()[i].steps - lost_[i]);
  }
  const double widest = 4.0 * kw_;
  high_ = 1.000001 * 0.5 * (n + std::sqrt(n * n + 4.0 * widest));
  low_ = 0.999999 * 2.0 * kw_ / (p + std::sqrt(p * p + 4.0 * kw_));
}

Sides ChargeBalance::at(double h, double g) const {
  const double oh = kw_ / (g * g * h);
  Sides sides{{std::max(left_, 0.0) + h, h, 0.0},
              {std::max(-left_, 0.0) + oh, -oh, -2.0 * oh},
              {strong_ions_ + h + oh, h - oh, -2.0 * oh}};
  for (std::size_t i = 0; i < lost_.size(); ++i) {
    const double amount = amounts_.systems[i];
    if (amount <= 0.0) continue;
    const BalanceConstants::System& system = constants_.systems()[i];
    const Moments moments(system, h, g);
    const auto reference = static_cast<std::size_t>(lost_[i]);
    sides.positive.add(amount, moments.sum(kPositive[reference]));
    sides.negative.add(amount, moments.sum(kNegative[reference]));
    sides.ionic.add(amount, moments.sum(system.charge_square));
  }
  return sides;
}

// Both unknowns at once: ln(positive / negative) = 0 and the ionic strength that was assumed = that found.
// False when it has not settled; then the slow way will.
bool ChargeBalance::newton(Point& point) const {
  constexpr int kMostSteps = 25;
  const SolverOptions& options = constants_.options();
  for (int i = 0; i < kMostSteps; ++i) {
    const double s = point.root_strength;
    const double g_slope = options.ideal ? 0.0 : kLn10 * davies_log10_gamma_slope(s, options.temperature_c);
    const Sides sides = at(point.h, activity_coefficient(s * s, options));
    const double excess = log_ratio(sides.positive.value, sides.negative.value);
    const double excess_by_h =
        sides.positive.by_h / sides.positive.value - sides.negative.by_h / sides.negative.value;
    const double excess_by_s =
        g_slope * (sides.positive.by_g / sides.positive.value - sides.negative.by_g / sides.negative.value);
    const double strength = 0.5 * sides.ionic.value - s * s;
    const double strength_by_h = 0.5 * sides.ionic.by_h;
    const double strength_by_s = 0.5 * g_slope * sides.ionic.by_g - 2.0 * s;
    const double determinant = excess_by_h * strength_by_s - excess_by_s * strength_by_h;
    const double step = (strength * excess_by_s - excess * strength_by_s) / determinant;
    const double s_step = (excess * strength_by_h - strength * excess_by_h) / determinant;
    if (!(std::abs(step) < 1e3 && std::abs(s_step) < 1e3)) return false;
    point.h = std::clamp(point.h * exp_of_step(step), low_, high_);
    point.root_strength = std::clamp(s + s_step, 0.3 * s, std::min(3.0 * s, kHighestRoot));
    if (std::abs(step) < kFine && std::abs(s_step) < kFine * s) return true;
  }
  return false;
}

/// Newton in ln h from `h` at a fixed activity coefficient, inside limits that always hold; stops after a
/// step below `tolerance`.
double ChargeBalance::root(double h, double g, double tolerance) const {
  double low = low_;
  double high = high_;
  for (int i = 0; i < 200; ++i) {
    const Sides sides = at(h, g);
    const double excess = log_ratio(sides.positive.value, sides.negative.value);
    (excess > 0.0 ? high : low) = h;
    const double step =
        -excess / (sides.positive.by_h / sides.positive.value - sides.negative.by_h / sides.negative.value);
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

// Ionic strength by halving, [H+] found anew for each: slow, and certain.
Point ChargeBalance::safely() const {
  double low = 0.0;
  double high = kDaviesLimit_mol_dm3;
  Point point = guess_;
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (low + high);
    const double g = activity_coefficient(middle, constants_.options());
    point.h = root(point.h, g, kFine);
    point.root_strength = std::sqrt(0.5 * at(point.h, g).ionic.value);
    (point.root_strength * point.root_strength > middle ? low : high) = middle;
  }
  return point;
}

Equilibrium ChargeBalance::equilibrium_at(const Point& point) const {
  const double g = activity_coefficient(point.root_strength * point.root_strength, constants_.options());
  const Sides sides = at(point.h, g);
  Equilibrium result;
  result.h_mol_dm3 = point.h;
  result.ph = -elementary::log10(point.h * g);
  result.ionic_strength_mol_dm3 = 0.5 * sides.ionic.value;
  result.residual_mol_dm3 = sides.positive.value - sides.negative.value;
  return result;
}

Equilibrium ChargeBalance::near(Point start) const {
  start.h = std::clamp(start.h, low_, high_);
  if (newton(start)) return equilibrium_at(start);
  return from_scratch();
}

Equilibrium ChargeBalance::from_scratch() const {
  Point point = guess_;
  return equilibrium_at(newton(point) ? point : safely());
}

}  // namespace

Equilibrium equilibrium_of(const BalanceConstants& constants, const Amounts& amounts) {
  return ChargeBalance(constants, amounts).from_scratch();
}

Equilibrium equilibrium_near(const BalanceConstants& constants, const Amounts& amounts,
                             const Equilibrium& near) {
  return ChargeBalance(constants, amounts)
      .near({near.h_mol_dm3, std::sqrt(std::max(near.ionic_strength_mol_dm3, 1e-9))});
}

}  // namespace halfdrop
