#include "physics/burette/jet.h"

#include <algorithm>
#include <cmath>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/burette/column.h"
#include "physics/burette/dripping.h"
#include "physics/burette/tap.h"
#include "physics/elementary.h"

namespace halfdrop {

namespace {

constexpr double kClosesOver = 0.12;  ///< film over radius (Gauglitz and Radke, abstract)

double bore_area_mm2(double bore_mm) { return kPi / 4.0 * bore_mm * bore_mm; }

/// Wets the wall all round: thickness of the falling film, Nusselt: h^3 = 3 nu Q / (pi D g).
double falling_film_mm(double bore_mm, const LiquidFlow& liquid, double flow_cm3_s) {
  const double viscous = 3.0 * liquid.viscosity_pa_s / (liquid.density_kg_m3 * kGravity_m_s2);
  return 1e3 * elementary::cube_root(viscous * flow_cm3_s * 1e-6 / (kPi * bore_mm * 1e-3));
}

Quanta full_jet(const BenchSpec& spec) { return volume_quanta(spec.burette.jet_cm3); }

bool drives_air_out(const BenchSpec& spec, const BenchState& state, double flow_cm3_s) {
  return flow_cm3_s >= spec.settled.jet.closes_over_cm3_s || state.tick < state.jet_freed_until;
}

/// What the jet holds below the air before any leaves at the tip: its narrow bore full, its wall wet.
Quanta film_keeps(const BenchSpec& spec, double flow_cm3_s) {
  const JetSettled& jet = spec.settled.jet;
  const double wide_cm3 = spec.burette.jet_cm3 - jet.narrow_cm3;
  return volume_quanta(jet.narrow_cm3 + wide_cm3 * film_share(jet, spec.settled.liquid, flow_cm3_s));
}

/// A tick's flow for a jet with air in it; returns what leaves at the tip.
Quanta run_past_air(const BenchSpec& spec, BenchState& state, double flow_cm3_s) {
  Ledger& ledger = state.ledger;
  const Quanta air = full_jet(spec) - ledger.balance(Account::jet).volume;
  const bool drives = drives_air_out(spec, state, flow_cm3_s);
  // No more than there is room for while the dry jet does not resist: the rest of such a tick is left out.
  const Quanta most = state.jet_below + air;
  const Quanta comes = std::min(volume_quanta(flow_cm3_s * kSecondsPerTick), most);
  const Quanta in = ledger.transfer(Account::column, Account::jet, comes).volume;
  if (drives) {
    const Quanta out = std::min(state.jet_below, in);
    state.jet_below -= out;
    return out;
  }
  const Quanta keeps = film_keeps(spec, flow_cm3_s);
  const Quanta out = std::max(std::clamp<Quanta>(state.jet_below + in - keeps, 0, in), in - air);
  state.jet_below += in - out;
  return out;
}

}  // namespace

JetSettled settle_jet(const BuretteSpec& burette, const TapSpec& tap, const LiquidFlow& liquid) {
  JetSettled jet;
  jet.narrow_cm3 = bore_area_mm2(tap.jet_bore_mm) * tap.jet_narrow_mm * 1e-3;
  const double wide_mm = burette.jet_length_mm - tap.jet_narrow_mm;
  jet.wide_bore_mm = std::sqrt(4.0 * (burette.jet_cm3 - jet.narrow_cm3) * 1e3 / (kPi * wide_mm));
  const double film_m = kClosesOver * 0.5 * jet.wide_bore_mm * 1e-3;
  jet.closes_over_cm3_s = kPi * jet.wide_bore_mm * 1e-3 * liquid.density_kg_m3 * kGravity_m_s2 * film_m *
                          film_m * film_m / (3.0 * liquid.viscosity_pa_s) * 1e6;
  return jet;
}

double film_share(const JetSettled& jet, const LiquidFlow& liquid, double flow_cm3_s) {
  const double film_mm = falling_film_mm(jet.wide_bore_mm, liquid, std::max(0.0, flow_cm3_s));
  const double core = std::max(0.0, 1.0 - 2.0 * film_mm / jet.wide_bore_mm);
  return 1.0 - core * core;
}

double jet_air_cm3(const BenchSpec& spec, const BenchState& state) {
  const Quanta air = full_jet(spec) - state.ledger.balance(Account::jet).volume;
  return std::max(0.0, static_cast<double>(air) * kVolumeQuantum_cm3);
}

double tap_flow_cm3_s(const BenchSpec& spec, const BenchState& state, double plug) {
  const Parcel& column = state.ledger.balance(Account::column);
  const Parcel& jet = state.ledger.balance(Account::jet);
  if (column.empty() && jet.empty()) return 0.0;
  double head = head_mm(spec.burette, column.volume_cm3()), narrow_wet = 1.0;
  const double air_cm3 = jet_air_cm3(spec, state);
  if (column.empty()) {
    head *= std::min(1.0, jet.volume_cm3() / spec.burette.jet_cm3);
  } else if (air_cm3 > 0.0) {
    const JetSettled& settled = spec.settled.jet;
    const double below_cm3 = static_cast<double>(state.jet_below) * kVolumeQuantum_cm3;
    narrow_wet = std::min(1.0, below_cm3 / settled.narrow_cm3);
    const double dry_narrow_cm3 = (1.0 - narrow_wet) * settled.narrow_cm3;
    head -= (1.0 - narrow_wet) * spec.tap.jet_narrow_mm +
            std::max(0.0, air_cm3 - dry_narrow_cm3) * 1e3 / bore_area_mm2(settled.wide_bore_mm);
  }
  return flow_cm3_s(spec.tap, spec.settled.liquid, plug, head, narrow_wet);
}

double tip_flow_cm3_s(const BenchSpec& spec, const BenchState& state, double plug) {
  const double flow_cm3_s = tap_flow_cm3_s(spec, state, plug);
  if (jet_air_cm3(spec, state) <= 0.0 || state.ledger.balance(Account::column).empty()) return flow_cm3_s;
  if (drives_air_out(spec, state, flow_cm3_s)) return state.jet_below > 0 ? flow_cm3_s : 0.0;
  return state.jet_below >= film_keeps(spec, flow_cm3_s) ? flow_cm3_s : 0.0;
}

void run_jet(const BenchSpec& spec, BenchState& state) {
  Ledger& ledger = state.ledger;
  const double flow_cm3_s = tap_flow_cm3_s(spec, state, state.plug);
  const Quanta volume = volume_quanta(flow_cm3_s * kSecondsPerTick);
  Quanta out = 0;
  if (ledger.balance(Account::column).empty()) {
    out = std::min(volume, ledger.balance(Account::jet).volume);
    state.jet_below = ledger.balance(Account::jet).volume - out;
  } else if (ledger.balance(Account::jet).volume < full_jet(spec)) {
    out = run_past_air(spec, state, flow_cm3_s);
  } else {
    out = ledger.transfer(Account::column, Account::jet, volume).volume;
  }
  if (ledger.balance(Account::jet).volume - out >= full_jet(spec)) state.jet_below = 0;
  drip(spec, state, out, static_cast<double>(out) * kVolumeQuantum_cm3 / kSecondsPerTick);
}

}  // namespace halfdrop
