#include "physics/flask/mixing.h"

#include <algorithm>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"

namespace halfdrop {

namespace {

/// A squeezed wash bottle takes down this share of what clings to the wall each second (our own estimate).
constexpr double kWashedDownPerSecond = 3.0;
/// Less than this on the wall goes down whole.
constexpr double kLastTrace_cm3 = 1e-4;

}  // namespace

Parcel flask_liquid(const Ledger& ledger) {
  return ledger.balance(Account::flask_landing) + ledger.balance(Account::flask_rest);
}

double exchange_per_s(const BenchSpec& spec, double swirl) {
  const FlaskSpec& flask = spec.flask;
  return flask.still_exchange_per_s +
         (flask.swirled_exchange_per_s - flask.still_exchange_per_s) * swirl * swirl;
}

void mix(const BenchSpec& spec, BenchState& state, double swirl) {
  Ledger& ledger = state.ledger;
  const Parcel landing = ledger.balance(Account::flask_landing);
  const Parcel rest = ledger.balance(Account::flask_rest);
  if (landing.empty() || rest.empty()) return;
  const double wanted = exchange_per_s(spec, swirl) * kSecondsPerTick * static_cast<double>(landing.volume);
  const Quanta volume = std::min({static_cast<Quanta>(wanted), landing.volume, rest.volume});
  if (volume <= 0) return;
  const Parcel out = landing.share(volume);
  const Parcel in = rest.share(volume);
  ledger.move(Account::flask_landing, Account::flask_rest, out);
  ledger.move(Account::flask_rest, Account::flask_landing, in);
}

void wash_down(const BenchSpec& spec, BenchState& state, double wash) {
  if (wash <= 0.0) return;
  Ledger& ledger = state.ledger;
  ledger.transfer(Account::wash_bottle, Account::flask_rest,
                  volume_quanta(wash * spec.wash_cm3_s * kSecondsPerTick));
  const Parcel& wall = ledger.balance(Account::flask_wall);
  if (!wall.empty()) {
    const double share = wash * kWashedDownPerSecond * kSecondsPerTick;
    const Quanta part = wall.volume_cm3() < kLastTrace_cm3
                            ? wall.volume
                            : static_cast<Quanta>(share * static_cast<double>(wall.volume)) + 1;
    ledger.transfer(Account::flask_wall, Account::flask_landing, part);
  }
  settle_zones(spec, state);
}

void settle_zones(const BenchSpec& spec, BenchState& state) {
  Ledger& ledger = state.ledger;
  const Quanta crowded =
      ledger.balance(Account::flask_landing).volume - volume_quanta(spec.flask.landing_cm3);
  if (crowded > 0) ledger.transfer(Account::flask_landing, Account::flask_rest, crowded);
  if (crowded < 0) ledger.transfer(Account::flask_rest, Account::flask_landing, -crowded);
  const Quanta over = flask_liquid(ledger).volume - volume_quanta(spec.flask.capacity_cm3);
  if (over > 0) ledger.transfer(Account::flask_rest, Account::bench_top, over);
}

}  // namespace halfdrop
