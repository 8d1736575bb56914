#include "physics/bench/state_hash.h"

#include <doctest/doctest.h>

#include <functional>
#include <set>
#include <vector>

#include "tests/physics/bench/at_the_bench.h"

namespace halfdrop {

TEST_CASE("the state's hash notices a change of any field") {
  using Change = std::function<void(BenchState&)>;
  const std::vector<Change> changes = {
      [](BenchState&) {},
      [](BenchState& s) { s.tick = 1; },
      [](BenchState& s) {
        s.ledger.open(Account::sink, Parcel{1, {}});
      },
      [](BenchState& s) {
        s.ledger.open(Account::sink, Parcel{0, {1, 0, 0}});
      },
      [](BenchState& s) {
        s.ledger.open(Account::sink, Parcel{0, {0, 0, 1}});
      },
      [](BenchState& s) {
        s.ledger.open(Account::sink, Parcel{0, {0, 0, 0, 1}});
      },
      [](BenchState& s) {
        s.ledger.open(Account::air, Parcel{0, {0, 0, 0, 0, 1}});
      },
      [](BenchState& s) {
        s.ledger.open(Account::sink, Parcel{0, {0, 0, 0, 0, 0, 0, 1}});
      },
      [](BenchState& s) {
        s.ledger.open(Account::sink, Parcel{0, {0, 0, 0, 0, 0, 0, 0, 1}});
      },
      [](BenchState& s) {
        s.ledger.open(Account::second_indicator_bottle, Parcel{1, {}});
      },
      [](BenchState& s) { s.ledger.transfer(Account::titrant_bottle, Account::column, 1); },
      [](BenchState& s) { s.film.runs[1] = 1; },
      [](BenchState& s) { s.film.greasy[1] = 1; },
      [](BenchState& s) { s.flask.of(Source::fresh).assign(1, 1.0); },
      [](BenchState& s) { s.flask.of(Source::water).assign(1, 1.0); },
      [](BenchState& s) { s.flask.titrant.volume = 1; },
      [](BenchState& s) { s.flask.water.volume = 1; },
      [](BenchState& s) { s.flask.indicator.volume = 1; },
      [](BenchState& s) { s.flask.second_indicator.volume = 1; },
      [](BenchState& s) { s.flask.second_tint.liquid.volume = 1; },
      [](BenchState& s) { s.flask.of(Source::second_indicator).assign(1, 1.0); },
      [](BenchState& s) { s.flask.drops.liquid.volume = 1; },
      [](BenchState& s) { s.flask.drops.x_cm = 1.0; },
      [](BenchState& s) { s.flask.drops.momentum_g_cm_s = 1.0; },
      [](BenchState& s) { s.flask.washings.liquid.volume = 1; },
      [](BenchState& s) { s.flask.tint.liquid.volume = 1; },
      [](BenchState& s) { s.flask.laid_out = 1; },
      [](BenchState& s) { s.flask.flow.vorticity.assign(1, 1.0F); },
      [](BenchState& s) { s.flask.spin_rad_s = 1.0; },
      [](BenchState& s) { s.flask.impact_erg = 1.0; },
      [](BenchState& s) { s.wall.drops[1].liquid.volume = 1; },
      [](BenchState& s) { s.wall.drops[1].side = -1.0; },
      [](BenchState& s) { s.wall.drops[1].height_cm = 1.0; },
      [](BenchState& s) { s.wall.trail[0][1].volume = 1; },
      [](BenchState& s) { s.wall.trail[1][1].volume = 1; },
      [](BenchState& s) { s.slosh.turns = 0.5; },
      [](BenchState& s) { s.slosh.reach_cm = 0.5; },
      [](BenchState& s) { s.slosh.wave_cm = 0.5; },
      [](BenchState& s) { s.slosh.beyond = 0.5; },
      [](BenchState& s) { s.slosh.waits_cm3 = 0.01; },
      [](BenchState& s) { s.hands.tap = 0.5; },
      [](BenchState& s) { s.hands.eye_mm = 1.0; },
      [](BenchState& s) { s.hands.flask_x_cm = 1.0; },
      [](BenchState& s) { s.hands.flask_y_cm = 1.0; },
      [](BenchState& s) { s.hands.swirl = 1.0; },
      [](BenchState& s) { s.hands.wash = 1.0; },
      [](BenchState& s) { s.hands.pour = 1.0; },
      [](BenchState& s) { s.hands.tilt_degrees = 1.0; },
      [](BenchState& s) { s.hands.card_mm = 1.0; },
      [](BenchState& s) { s.hands.clamp_mm = 1.0; },
      [](BenchState& s) { s.plug = 0.5; },
      [](BenchState& s) { s.jet_below = 1; },
      [](BenchState& s) { s.jet_freed_until = 1; },
      [](BenchState& s) { s.coat_on = true; },
      [](BenchState& s) { s.goggles_on = true; },
      [](BenchState& s) { s.funnel_in = true; },
      [](BenchState& s) { s.beaker_under = true; },
      [](BenchState& s) { s.tile_laid = true; },
      [](BenchState& s) { s.over_edge = true; },
      [](BenchState& s) { s.in_hand = Bottle::sample; },
      [](BenchState& s) { s.in_hand = Bottle::water; },
      [](BenchState& s) { s.hands.valve = 1.0; },
      [](BenchState& s) { s.pipette_place = PipettePlace::dipped; },
      [](BenchState& s) { s.pipette_place = PipettePlace::at_wall; },
      [](BenchState& s) { s.pipette_air = 1; },
      [](BenchState& s) { s.funnel_drip_due = 1; },
      [](BenchState& s) { s.drill_step = 1; },
      [](BenchState& s) { s.drop_falls_at = 1; },
      [](BenchState& s) { s.falling[3].flying = true; },
      [](BenchState& s) { s.falling[3].liquid.volume = 1; },
      [](BenchState& s) { s.falling[3].x_cm = 1.0; },
      [](BenchState& s) { s.falling[3].fallen_cm = 1.0; },
      [](BenchState& s) { s.falling[3].across_cm_s = 1.0; },
      [](BenchState& s) { s.falling[3].speed_cm_s = 1.0; },
      [](BenchState& s) { s.hands.tip = 1.0; },
      [](BenchState& s) { s.hands.fill = 1.0; },
      [](BenchState& s) { s.preparation.on_top.volume = 1; },
      [](BenchState& s) { s.preparation.loosened_g = 1.0; },
      [](BenchState& s) { s.preparation.lumps = 1; },
      [](BenchState& s) { s.preparation.inversions = 1; }};
  std::set<std::string> hashes;
  for (const Change& change : changes) {
    BenchState state = lay_out(test::titration_bench());
    change(state);
    const std::string hash = state_hash(state);
    CHECK(hash.size() == 16);
    hashes.insert(hash);
  }
  CHECK(hashes.size() == changes.size());
}

TEST_CASE("a zero is a zero whatever its sign") {
  BenchState plus = lay_out(test::titration_bench());
  BenchState minus = plus;
  plus.hands.swirl = 0.0;
  minus.hands.swirl = -0.0;
  CHECK(state_hash(plus) == state_hash(minus));
}

}  // namespace halfdrop
