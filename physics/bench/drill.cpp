#include "physics/bench/drill.h"

#include <cassert>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/burette/column.h"

namespace halfdrop {

namespace {

/// The bottle gives what is wanting and takes back what is too much.
void set_meniscus(const BenchSpec& spec, Ledger& ledger, double reading_cm3) {
  const Quanta want = volume_quanta(column_volume_cm3(spec.burette, reading_cm3));
  const Quanta more = want - ledger.balance(Account::column).volume;
  if (more > 0) ledger.transfer(Account::titrant_bottle, Account::column, more);
  if (more < 0) ledger.transfer(Account::column, Account::titrant_bottle, -more);
}

void clear_jet(const BenchSpec& spec, BenchState& state) {
  state.hands.tap = state.plug = 0.0;
  state.ledger.transfer(Account::titrant_bottle, Account::jet, volume_quanta(spec.burette.jet_cm3));
}

void show_picture(const BenchSpec& spec, BenchState& state) {
  const auto index = static_cast<std::size_t>(state.drill_step);
  assert(index < spec.drill.pictures.size());
  const MeniscusPicture& picture = spec.drill.pictures[index];
  set_meniscus(spec, state.ledger, picture.reading_cm3);
  state.hands.eye_mm = picture.eye_mm;
  state.hands.card_mm = picture.card_mm;
}

}  // namespace

void lay_out_drill(const BenchSpec& spec, BenchState& state) {
  const DrillSpec& drill = spec.drill;
  if (drill.pictures.empty() && !drill.filled_to_cm3) return;
  clear_jet(spec, state);
  if (!drill.pictures.empty()) return show_picture(spec, state);
  set_meniscus(spec, state.ledger, *drill.filled_to_cm3);
  state.beaker_under = true;
}

bool has_further_picture(const BenchSpec& spec, const BenchState& state) {
  return state.drill_step + 1 < static_cast<std::int64_t>(spec.drill.pictures.size());
}

void turn_picture(const BenchSpec& spec, BenchState& state) {
  assert(has_further_picture(spec, state));
  ++state.drill_step;
  show_picture(spec, state);
}

}  // namespace halfdrop
