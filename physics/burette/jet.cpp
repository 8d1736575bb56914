#include "physics/burette/jet.h"

#include <algorithm>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/bench/flight.h"
#include "physics/burette/column.h"
#include "physics/burette/tap.h"

namespace halfdrop {

namespace {

void grow_drop(const BenchSpec& spec, BenchState& state, Quanta volume) {
  Ledger& ledger = state.ledger;
  const Quanta full = volume_quanta(spec.settled.full_drop_cm3);
  ledger.transfer(Account::jet, Account::pendant_drop, volume);
  while (ledger.balance(Account::pendant_drop).volume >= full) {
    let_go(spec, state, ledger.balance(Account::pendant_drop).share(full));
  }
}

}  // namespace

double tap_flow_cm3_s(const BenchSpec& spec, const BenchState& state, double tap) {
  const Ledger& ledger = state.ledger;
  if (tap <= 0.0) return 0.0;
  const Parcel& column = ledger.balance(Account::column);
  const Parcel& jet = ledger.balance(Account::jet);
  if (column.empty() && jet.empty()) return 0.0;
  double head = head_mm(spec.burette, column.volume_cm3());
  if (column.empty()) head *= std::min(1.0, jet.volume_cm3() / spec.burette.jet_cm3);
  return flow_cm3_s(spec.tap, spec.settled.liquid, tap, head);
}

void run_jet(const BenchSpec& spec, BenchState& state, double tap) {
  Ledger& ledger = state.ledger;
  const Quanta volume = volume_quanta(tap_flow_cm3_s(spec, state, tap) * kSecondsPerTick);
  if (volume <= 0) return;
  if (ledger.balance(Account::column).empty()) {
    grow_drop(spec, state, volume);
    return;
  }
  const Parcel through = ledger.transfer(Account::column, Account::jet, volume);
  const Quanta over = ledger.balance(Account::jet).volume - volume_quanta(spec.burette.jet_cm3);
  if (over > 0) grow_drop(spec, state, std::min(over, through.volume));
}

}  // namespace halfdrop
