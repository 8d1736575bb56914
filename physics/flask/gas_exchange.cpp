#include "physics/flask/gas_exchange.h"

#include <algorithm>
#include <cmath>

#include "physics/crossing.h"
#include "physics/elementary.h"
#include "physics/flask/contents.h"
#include "physics/units.h"

namespace halfdrop {

namespace {

constexpr double kDiffusionInAir_m2_s = 1.6e-5;  ///< carbon dioxide, 20 C (from memory)
/// Share of the air above the liquid that vigorous swirling renews each second (our own estimate).
constexpr double kRenewedPerSecond = 0.1;

/// m3/s of air that the neck lets through.
double neck_m3_s(const FlaskSpec& flask, double liquid_cm3, double swirl) {
  const double area_m2 = kPi * flask.neck_radius_cm * flask.neck_radius_cm * 1e-4;
  const double air_m3 = std::max(flask.capacity_cm3 - liquid_cm3, 1.0) * 1e-6;
  return kDiffusionInAir_m2_s * area_m2 / (flask.neck_length_cm * 1e-2) +
         swirl * swirl * kRenewedPerSecond * air_m3;
}

/// What the flask's carbon dioxide and carbonate do in a step, mol/dm3 of carbon dioxide that becomes
/// carbonate.
class HydrationStep {
 public:
  /// `now`: the liquid's equilibrium as it stands.
  HydrationStep(const BenchSpec& spec, const Parcel& liquid, const Equilibrium& now)
      : spec_(spec),
        liquid_(liquid),
        now_(now),
        dioxide_(mol_dm3(liquid, Component::carbon_dioxide)),
        carbonate_(mol_dm3(liquid, Component::carbonate)) {}

  /// Implicit in time: the pH of the end of the step decides, so that a fast reaction stops at equilibrium.
  /// By the pH of its beginning it would swing about it: near a carbonate's last endpoint hydrogen ions are
  /// few, and each carbonate that comes or goes is one of them.
  [[nodiscard]] double extent() const {
    const carbon_dioxide::Rates rates = spec_.settled.kinetics.rates_at(now_);
    const double guess =
        kGasStep_s * net(rates, 0.0) / (1.0 + kGasStep_s * (rates.forward_per_s + rates.backward_per_s));
    const double fine = kFine * (dioxide_ + carbonate_);
    if (std::abs(guess) <= fine) return guess;
    Equilibrium near = now_;
    return crossing(-carbonate_, dioxide_, fine, [&](double extent) {
      near = equilibrium_of(spec_, after(extent), Hydration::as_it_stands, near);
      return extent - kGasStep_s * net(spec_.settled.kinetics.rates_at(near), extent);
    });
  }

 private:
  static constexpr double kFine = 1e-9;  ///< a share of all that there is

  [[nodiscard]] Parcel after(double extent) const {
    Parcel liquid = liquid_;
    const Quanta amount = amount_quanta(extent * liquid.volume_cm3() / 1000.0);
    Quanta& carbonate = liquid.amounts[static_cast<std::size_t>(Component::carbonate)];
    carbonate = std::max<Quanta>(carbonate + amount, 0);
    return liquid;
  }
  [[nodiscard]] double net(const carbon_dioxide::Rates& rates, double extent) const {
    return rates.forward_per_s * (dioxide_ - extent) - rates.backward_per_s * (carbonate_ + extent);
  }

  const BenchSpec& spec_;
  const Parcel& liquid_;
  const Equilibrium& now_;
  double dioxide_, carbonate_;
};

void hydrate(const BenchSpec& spec, Ledger& ledger, const Equilibrium& now) {
  const Parcel& liquid = ledger.balance(Account::flask);
  const Quanta dioxide = liquid.amount(Component::carbon_dioxide);
  const Quanta carbonate = liquid.amount(Component::carbonate);
  if (dioxide + carbonate == 0) return;
  const double extent = HydrationStep(spec, liquid, now).extent();
  const Quanta amount = std::clamp(amount_quanta(extent * liquid.volume_cm3() / 1000.0), -carbonate, dioxide);
  if (amount > 0) ledger.convert(Account::flask, Component::carbon_dioxide, Component::carbonate, amount);
  if (amount < 0) ledger.convert(Account::flask, Component::carbonate, Component::carbon_dioxide, -amount);
}

/// tanh(x) / x for x >= 0.
double tanh_over(double x) {
  constexpr double kSmall = 0.01;  // three terms of the series are then right to 6e-14
  const double square = x * x;
  if (x < kSmall) return 1.0 - square * (1.0 / 3.0 - square * (2.0 / 15.0));
  const double e = elementary::exp(-2.0 * x);
  return (1.0 - e) / ((1.0 + e) * x);
}

/// K A of the whole surface, m3/s of water that comes to equilibrium with the air.
double exchanged_m3_s(const BenchSpec& spec, const Parcel& liquid, const Equilibrium& now, double swirl) {
  const double film_m_s = kStill_m_s + (kSwirled_m_s - kStill_m_s) * swirl * swirl;
  const double enhancement =
      film_enhancement(spec.settled.kinetics.rates_at(now), film_m_s, spec.settled.co2_diffusion_m2_s);
  const double area_m2 = surface_cm2(spec.flask, liquid.volume_cm3()) * 1e-4;
  const double liquid_side = area_m2 * film_m_s * enhancement;
  const double air_side = neck_m3_s(spec.flask, liquid.volume_cm3(), swirl) * spec.settled.air_over_water;
  return 1.0 / (1.0 / liquid_side + 1.0 / air_side);
}

/// The way to saturation shortens exponentially, so that no step is too long for however thin a liquid.
void breathe(const BenchSpec& spec, Ledger& ledger, const Equilibrium& now, double swirl) {
  const Parcel& rest = ledger.balance(Account::flask);
  const double saturated_mol = spec.settled.saturated_co2_mol_dm3 * rest.volume_cm3() / 1000.0;
  const double short_mol = saturated_mol - rest.amount_mol(Component::carbon_dioxide);
  const double exchanged = exchanged_m3_s(spec, rest, now, swirl) * kGasStep_s / (rest.volume_cm3() * 1e-6);
  const Quanta amount = amount_quanta(short_mol * (1.0 - elementary::exp(-exchanged)));
  if (amount > 0)
    ledger.move(Account::air, Account::flask, Parcel::amount_of(Component::carbon_dioxide, amount));
  if (amount < 0)
    ledger.move(Account::flask, Account::air, Parcel::amount_of(Component::carbon_dioxide, -amount));
}

}  // namespace

// Written so that nothing overflows or cancels, however fast the backward reaction (strong acid).
double film_enhancement(const carbon_dioxide::Rates& rates, double film_m_s, double diffusion_m2_s) {
  const double both_per_s = rates.forward_per_s + rates.backward_per_s;
  const double qz = std::sqrt(both_per_s * diffusion_m2_s) / film_m_s;
  return 1.0 / (1.0 - (1.0 - tanh_over(qz)) * rates.forward_per_s / both_per_s);
}

void exchange_gas(const BenchSpec& spec, BenchState& state) {
  if (!spec.air || state.tick % kGasTicks != 0) return;
  Ledger& ledger = state.ledger;
  const Parcel& liquid = ledger.balance(Account::flask);
  if (liquid.empty()) return;
  const Equilibrium now = equilibrium_of(spec, liquid);
  // Dissolved carbon dioxide is no acid yet, so breathing leaves the equilibrium as it was.
  breathe(spec, ledger, now, state.hands.swirl);
  hydrate(spec, ledger, now);
}

}  // namespace halfdrop
