#include "physics/bench/preparation.h"

#include <algorithm>
#include <cmath>

#include "physics/elementary.h"
#include "physics/eye/sight_line.h"
#include "physics/random.h"

namespace halfdrop {

namespace {

__extension__ using Wide = __int128;

std::optional<Refusal> refuse_if(bool condition, Refusal refusal) {
  return condition ? std::optional(refusal) : std::nullopt;
}

Quanta in(const BenchState& state, Account account) { return state.ledger.balance(account).volume; }
double cm3(Quanta volume) { return static_cast<double>(volume) * kVolumeQuantum_cm3; }

Component standard_component(const BenchSpec& spec) {
  return spec.unknown_in_flask ? Component::titrant : Component::analyte;
}

double solid_g(const BenchSpec& spec, const BenchState& state, Account account) {
  return state.ledger.balance(account).amount_mol(standard_component(spec)) *
         spec.preparation.molar_mass_g_mol;
}

Quanta brim(const BenchSpec& spec) {
  return volume_quanta(spec.preparation.true_flask_cm3 + kNeck_cm3_mm * kNeckAboveLine_mm);
}
Quanta foot_of_neck(const BenchSpec& spec) {
  return volume_quanta(spec.preparation.true_flask_cm3 - kNeck_cm3_mm * kNeckBelowLine_mm);
}
Quanta dissolves_in(const BenchSpec& spec) {
  return volume_quanta(kDissolvedInShare * spec.preparation.flask_cm3);
}

/// Exponential about its mean, cut off; the same lumps for the same seed, whenever they fall.
double lump_g(const BenchSpec& spec, std::int64_t number) {
  Random random =
      Random::stream(spec.preparation.lumps_seed, static_cast<std::uint64_t>(number), Purpose::lumps);
  return std::min(kLargestLump_g, -kMeanLump_g * elementary::log(1.0 - random.uniform()));
}

/// A mass of the solid with everything that it is made of.
Parcel solid_of(const BenchSpec& spec, const Parcel& all, double mass_g) {
  const Component component = standard_component(spec);
  const Quanta whole = all.amount(component);
  const Quanta wanted = amount_quanta(mass_g / spec.preparation.molar_mass_g_mol);
  if (wanted >= whole) return all;
  Parcel part;
  for (std::size_t i = 0; i < kComponents; ++i)
    part.amounts[i] = static_cast<Quanta>(Wide{all.amounts[i]} * wanted / whole);
  return part;
}

void tip_out(const BenchSpec& spec, BenchState& state) {
  Preparation& work = state.preparation;
  const double tip = state.hands.tip;
  if (tip <= 0.0) work.loosened_g = 0.0;
  if (tip <= 0.0 || state.ledger.balance(Account::weighing_bottle).amount(standard_component(spec)) <= 0)
    return;
  work.loosened_g += kTips_g_s * tip * tip * kSecondsPerTick;
  for (double lump = lump_g(spec, work.lumps); work.loosened_g >= lump; lump = lump_g(spec, work.lumps)) {
    const Parcel falls = solid_of(spec, state.ledger.balance(Account::weighing_bottle), lump);
    state.ledger.move(Account::weighing_bottle, Account::dissolving_beaker, falls);
    work.loosened_g -= lump;
    ++work.lumps;
  }
}

/// Below the neck it mixes with all that is there; in the neck it stands on top.
void let_in(const BenchSpec& spec, BenchState& state, Account from, Quanta volume) {
  Ledger& ledger = state.ledger;
  const Account flask = standard_account(spec);
  const Quanta below_neck = std::clamp<Quanta>(foot_of_neck(spec) - in(state, flask), 0, volume);
  if (below_neck > 0) {
    ledger.transfer(from, flask, below_neck);
    state.preparation.on_top = {};
  }
  if (volume > below_neck) state.preparation.on_top += ledger.transfer(from, flask, volume - below_neck);
  state.preparation.inversions = 0;
}

void fill_up(const BenchSpec& spec, BenchState& state) {
  const double fill = state.hands.fill;
  if (fill <= 0.0) return;
  const Account flask = standard_account(spec);
  let_in(spec, state, Account::wash_bottle, volume_quanta(fill * fill * kFills_cm3_s * kSecondsPerTick));
  const Quanta over = in(state, flask) - brim(spec);
  if (over <= 0) return;
  const Parcel runs_over = state.preparation.on_top.share(over);
  state.ledger.move(flask, Account::bench_top, runs_over);
  state.preparation.on_top -= runs_over;
}

/// All but what clings.
void pour_over(const BenchSpec& spec, BenchState& state) {
  let_in(spec, state, Account::dissolving_beaker,
         in(state, Account::dissolving_beaker) - volume_quanta(kStaysInBeaker_cm3));
}

/// Half of what is unmixed meets the rest.
void turn_over(BenchState& state) {
  Preparation& work = state.preparation;
  work.on_top = work.on_top.share(work.on_top.volume / 2);
  ++work.inversions;
}

std::optional<Refusal> check_pouring(const BenchSpec& spec, const BenchState& state, Quanta more) {
  const Quanta pours = in(state, Account::dissolving_beaker) + more - volume_quanta(kStaysInBeaker_cm3);
  if (pours <= 0) return Refusal::nothing_to_pour;
  return refuse_if(in(state, standard_account(spec)) + pours > brim(spec), Refusal::volumetric_full);
}

/// Dissolved once, in a beaker with solid and no more liquid than clings to it.
std::optional<Refusal> check_dissolving(const BenchSpec& spec, const BenchState& state) {
  const Parcel& beaker = state.ledger.balance(Account::dissolving_beaker);
  if (beaker.volume > volume_quanta(kStaysInBeaker_cm3)) return Refusal::already_done;
  if (beaker.amount(standard_component(spec)) <= 0) return Refusal::nothing_to_dissolve;
  return refuse_if(in(state, Account::wash_bottle) < dissolves_in(spec), Refusal::bottle_empty);
}

}  // namespace

Account standard_account(const BenchSpec& spec) {
  return spec.unknown_in_flask ? Account::titrant_bottle : Account::sample_bottle;
}

double weighing_bottle_g(const BenchSpec& spec, const BenchState& state) {
  return spec.preparation.bottle_g + solid_g(spec, state, Account::weighing_bottle);
}

double balance_shows_g(const BenchSpec& spec, const BenchState& state) {
  const double load_g = weighing_bottle_g(spec, state);
  double error_g = 0.0;
  const std::vector<double>& errors = spec.preparation.balance_error_g;
  const auto node = static_cast<std::size_t>(std::max(0.0, load_g / kBalanceStep_g));
  if (node + 1 < errors.size()) {
    const double into = load_g / kBalanceStep_g - static_cast<double>(node);
    error_g = errors[node] + into * (errors[node + 1] - errors[node]);
  }
  return std::round((load_g + error_g) / kBalanceShows_g) * kBalanceShows_g;
}

double tipped_out_g(const BenchSpec& spec, const BenchState& state) {
  return spec.preparation.solid_g - solid_g(spec, state, Account::weighing_bottle);
}

double neck_level_mm(const BenchSpec& spec, const BenchState& state) {
  return (cm3(in(state, standard_account(spec))) - spec.preparation.true_flask_cm3) / kNeck_cm3_mm;
}

NeckSeen neck_seen_from(const BenchSpec& spec, double level_mm, double eye_above_mm) {
  if (level_mm < -kNeckBelowLine_mm) return {level_mm, level_mm};
  const SightGeometry& sight = spec.settled.neck_sight;
  const double reading = -level_mm / sight.mm_per_cm3;
  return {-sight.mm_per_cm3 * apparent_reading_cm3(sight, eye_above_mm, reading),
          -sight.mm_per_cm3 * apparent_edge_cm3(sight, eye_above_mm, reading)};
}

NeckSeen neck_seen(const BenchSpec& spec, const BenchState& state) {
  return neck_seen_from(spec, neck_level_mm(spec, state), state.hands.eye_mm - kNeckLine_mm);
}

Parcel take_from_bottle(const BenchSpec& spec, BenchState& state, Account bottle, Account to, Quanta volume) {
  Parcel& on_top = state.preparation.on_top;
  if (!spec.preparation.asked || bottle != standard_account(spec) || on_top.empty() || volume <= 0)
    return state.ledger.transfer(bottle, to, volume);
  const Parcel below = state.ledger.balance(bottle) - on_top;
  const Quanta from_below = std::min(volume, below.volume);
  const Parcel from_top = on_top.share(volume - from_below);
  const Parcel taken = below.share(from_below) + from_top;
  state.ledger.move(bottle, to, taken);
  on_top -= from_top;
  return taken;
}

bool nothing_made_up(const BenchSpec& spec, const BenchState& state, Account bottle) {
  return spec.preparation.asked && bottle == standard_account(spec) && in(state, bottle) <= 0;
}

void lay_out_solid(const BenchSpec& spec, BenchState& state) {
  const BottleSpec& standard = spec.unknown_in_flask ? spec.titrant : spec.sample;
  const double solid_mol = spec.preparation.solid_g / spec.preparation.molar_mass_g_mol;
  state.ledger.open(Account::weighing_bottle,
                    Parcel::amount_of(standard_component(spec), amount_quanta(solid_mol)));
  state.ledger.open(
      Account::weighing_bottle,
      Parcel::amount_of(Component::carbonate, amount_quanta(solid_mol * standard.carbonate_per_mol)));
}

std::optional<Refusal> check_preparation(const BenchSpec& spec, const BenchState& state, Deed deed) {
  if (!spec.preparation.asked) return Refusal::not_there;
  switch (deed) {
    case Deed::dissolve_standard:
      return check_dissolving(spec, state);
    case Deed::pour_into_volumetric:
      return check_pouring(spec, state, 0);
    case Deed::rinse_into_volumetric:
      if (in(state, Account::wash_bottle) < volume_quanta(kBeakerRinse_cm3)) return Refusal::bottle_empty;
      return check_pouring(spec, state, volume_quanta(kBeakerRinse_cm3));
    case Deed::invert_volumetric:
      return refuse_if(in(state, standard_account(spec)) <= 0, Refusal::nothing_made_up);
    default:
      return std::nullopt;
  }
}

void prepare(const BenchSpec& spec, BenchState& state, Deed deed) {
  Ledger& ledger = state.ledger;
  switch (deed) {
    case Deed::dissolve_standard:
      ledger.transfer(Account::wash_bottle, Account::dissolving_beaker, dissolves_in(spec));
      break;
    case Deed::rinse_into_volumetric:
      ledger.transfer(Account::wash_bottle, Account::dissolving_beaker, volume_quanta(kBeakerRinse_cm3));
      pour_over(spec, state);
      break;
    case Deed::pour_into_volumetric:
      pour_over(spec, state);
      break;
    case Deed::invert_volumetric:
      turn_over(state);
      break;
    default:
      break;
  }
}

void work_preparation(const BenchSpec& spec, BenchState& state) {
  if (!spec.preparation.asked) return;
  tip_out(spec, state);
  fill_up(spec, state);
}

}  // namespace halfdrop
