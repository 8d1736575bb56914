#include "physics/burette/jet.h"

#include <algorithm>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/burette/column.h"
#include "physics/burette/dripping.h"
#include "physics/burette/tap.h"

namespace halfdrop {

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
  const double flow_cm3_s = tap_flow_cm3_s(spec, state, tap);
  const Quanta volume = volume_quanta(flow_cm3_s * kSecondsPerTick);
  Quanta out = 0;
  if (ledger.balance(Account::column).empty()) {
    out = std::min(volume, ledger.balance(Account::jet).volume);
  } else if (volume > 0) {
    const Parcel through = ledger.transfer(Account::column, Account::jet, volume);
    const Quanta over = ledger.balance(Account::jet).volume - volume_quanta(spec.burette.jet_cm3);
    out = std::clamp<Quanta>(over, 0, through.volume);
  }
  drip(spec, state, out, flow_cm3_s);
}

}  // namespace halfdrop
