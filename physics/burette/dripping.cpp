#include "physics/burette/dripping.h"

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/bench/flight.h"

namespace halfdrop {

namespace {

double bore_cm2(const BenchSpec& spec) {
  return kPi / 4.0 * spec.tap.jet_bore_mm * spec.tap.jet_bore_mm * 1e-2;
}

void stream(const BenchSpec& spec, BenchState& state, double flow_cm3_s) {
  state.drop_falls_at = 0;
  const Parcel& hanging = state.ledger.balance(Account::pendant_drop);
  const Quanta packet = volume_quanta(flow_cm3_s * kPacketTicks * kSecondsPerTick);
  if (hanging.volume >= packet) let_go(spec, state, hanging, flow_cm3_s / bore_cm2(spec));
}

void fall_off(const BenchSpec& spec, BenchState& state) {
  const Parcel& hanging = state.ledger.balance(Account::pendant_drop);
  const Quanta stays = volume_quanta(spec.settled.largest_drop_cm3 - spec.settled.full_drop_cm3);
  state.drop_falls_at = 0;
  if (hanging.volume > stays) let_go(spec, state, hanging.share(hanging.volume - stays), 0.0);
}

}  // namespace

void drip(const BenchSpec& spec, BenchState& state, Quanta volume, double flow_cm3_s) {
  Ledger& ledger = state.ledger;
  if (volume > 0) ledger.transfer(Account::jet, Account::pendant_drop, volume);
  if (flow_cm3_s >= spec.settled.stream_from_cm3_s && volume > 0) {
    stream(spec, state, flow_cm3_s);
    return;
  }
  const bool too_large =
      ledger.balance(Account::pendant_drop).volume >= volume_quanta(spec.settled.largest_drop_cm3);
  if (too_large && state.drop_falls_at == 0) state.drop_falls_at = state.tick + spec.settled.necking;
  if (state.drop_falls_at != 0 && state.tick >= state.drop_falls_at) fall_off(spec, state);
}

}  // namespace halfdrop
