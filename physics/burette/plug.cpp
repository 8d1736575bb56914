#include "physics/burette/plug.h"

#include <algorithm>
#include <cmath>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/burette/column.h"
#include "physics/units.h"

namespace halfdrop {

namespace {

constexpr double kQuarterTurn_degrees = 90.0;
constexpr double kKineticFriction = 0.6;  ///< over static

}  // namespace

double plug_after(const TapSpec& tap, double plug, double hand) {
  const double play = 0.5 * tap.loose_degrees / kQuarterTurn_degrees;
  const double sticks = tap.stiff_degrees / kQuarterTurn_degrees;
  const double wanted = std::clamp(plug, hand - play, hand + play);
  const double ahead = wanted - plug;
  if (std::abs(ahead) <= sticks) return plug;
  const double stays_behind = sticks * (2.0 * kKineticFriction - 1.0);
  return std::clamp(wanted - std::copysign(stays_behind, ahead), 0.0, 1.0);
}

double seeps_cm3_s(const BenchSpec& spec, const BenchState& state) {
  if (spec.tap.leak_cm3_min <= 0.0) return 0.0;
  const double full_mm =
      head_mm(spec.burette, column_volume_cm3(spec.burette, 0.0)) - spec.burette.jet_length_mm;
  const double here_mm =
      head_mm(spec.burette, state.ledger.balance(Account::column).volume_cm3()) - spec.burette.jet_length_mm;
  return spec.tap.leak_cm3_min / 60.0 * std::max(0.0, here_mm / full_mm);
}

void seep(const BenchSpec& spec, BenchState& state) {
  if (spec.tap.leak_cm3_min <= 0.0) return;
  Ledger& ledger = state.ledger;
  const Quanta seeps = volume_quanta(seeps_cm3_s(spec, state) * kSecondsPerTick);
  ledger.transfer(Account::column, Account::plug_drop, seeps);
  const Parcel& hanging = ledger.balance(Account::plug_drop);
  if (hanging.volume >= volume_quanta(spec.settled.full_drop_cm3))
    ledger.transfer(Account::plug_drop, Account::bench_top, hanging.volume);
}

}  // namespace halfdrop
