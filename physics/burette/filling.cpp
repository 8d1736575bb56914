#include "physics/burette/filling.h"

#include <algorithm>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/bench/preparation.h"
#include "physics/burette/column.h"
#include "physics/burette/rinsing.h"

namespace halfdrop {

namespace {

constexpr Tick kDripTicks = static_cast<Tick>(kFunnelDripEvery_s * kTicksPerSecond);

Account poured_from(const BenchState& state) {
  if (state.in_hand == Bottle::sample) return Account::sample_bottle;
  return state.in_hand == Bottle::water ? Account::wash_bottle : Account::titrant_bottle;
}

void pour_through_funnel(const BenchSpec& spec, BenchState& state, Quanta volume) {
  Ledger& ledger = state.ledger;
  const Account bottle = poured_from(state);
  const Quanta room = volume_quanta(spec.funnel_keeps_cm3) - ledger.balance(Account::funnel).volume;
  const Quanta kept = std::clamp<Quanta>(room, 0, volume);
  take_from_bottle(spec, state, bottle, Account::funnel, kept);
  take_from_bottle(spec, state, bottle, Account::column, volume - kept);
  state.funnel_drip_due = state.tick + kDripTicks;
}

void pour_past_funnel(const BenchSpec& spec, BenchState& state, Quanta volume) {
  const auto missed = static_cast<Quanta>(kMissesTube * static_cast<double>(volume));
  take_from_bottle(spec, state, poured_from(state), Account::bench_top, missed);
  take_from_bottle(spec, state, poured_from(state), Account::column, volume - missed);
}

}  // namespace

void fill(const BenchSpec& spec, BenchState& state, double pour) {
  Ledger& ledger = state.ledger;
  if (pour > 0.0 && !held_aslant(state)) {
    const Quanta volume = volume_quanta(pour * spec.pour_cm3_s * kSecondsPerTick);
    if (state.funnel_in) {
      pour_through_funnel(spec, state, volume);
    } else {
      pour_past_funnel(spec, state, volume);
    }
  }
  const Quanta drop = volume_quanta(kFunnelDrop_cm3);
  if (state.funnel_in && state.tick >= state.funnel_drip_due &&
      ledger.balance(Account::funnel).volume >= drop) {
    ledger.transfer(Account::funnel, Account::column, drop);
    state.funnel_drip_due = state.tick + kDripTicks;
  }
  const Quanta over =
      ledger.balance(Account::column).volume - volume_quanta(column_capacity_cm3(spec.burette));
  if (over > 0) ledger.transfer(Account::column, Account::bench_top, over);
}

}  // namespace halfdrop
