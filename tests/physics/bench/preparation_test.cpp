#include "physics/bench/preparation.h"

#include <doctest/doctest.h>

#include <cmath>

#include "physics/bench/pipette.h"
#include "physics/random.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

constexpr double kMolar_g = 105.99, kSolid_g = 2.0, kTare_g = 20.3456;

/// Something weighed out for the flask's side, the unknown in the burette.
BenchSpec making_up() {
  BenchSpec spec = titration_bench();
  spec.unknown_in_flask = false;
  spec.preparation.asked = true;
  spec.preparation.molar_mass_g_mol = kMolar_g;
  spec.preparation.solid_g = kSolid_g;
  spec.preparation.bottle_g = kTare_g;
  spec.preparation.true_flask_cm3 = 250.0;
  spec.preparation.balance_error_g.assign(200, 0.0);
  settle(spec);
  return spec;
}

/// Hands at the balance and the flask; the tap is shut.
class Hand {
 public:
  explicit Hand(const BenchSpec& spec) : spec_(spec), state(lay_out(spec)) {
    state.hands.tap = 0.0;
    state.hands.eye_mm = kNeckLine_mm;
  }
  void act(Deed deed) {
    const auto refused = check(spec_, state, deed);
    REQUIRE_MESSAGE(!refused.has_value(), static_cast<int>(*refused));
    apply(spec_, state, deed);
  }
  void tip(double how_far, double for_s) {
    state.hands.tip = how_far;
    run(spec_, state, state.hands, for_s);
    state.hands.tip = 0.0;
    run(spec_, state, state.hands, 0.1);
  }
  void fill_to(double level_mm) {
    state.hands.fill = 1.0;
    while (neck_level_mm(spec_, state) < level_mm - 1.0) step(spec_, state, Hands(state.hands));
    state.hands.fill = 0.02;
    while (neck_level_mm(spec_, state) < level_mm) step(spec_, state, Hands(state.hands));
    state.hands.fill = 0.0;
  }
  void make_up(int rinses, double level_mm, int inversions) {
    tip(1.0, 6.0);
    act(Deed::dissolve_standard);
    act(Deed::pour_into_volumetric);
    for (int i = 0; i < rinses; ++i) act(Deed::rinse_into_volumetric);
    fill_to(level_mm);
    for (int i = 0; i < inversions; ++i) act(Deed::invert_volumetric);
  }
  /// mol/dm3 of what a pipette takes.
  double taken_mol_dm3() {
    act(Deed::rinse_pipette_with_sample);
    act(Deed::fill_pipette);
    const Parcel& taken = state.ledger.balance(Account::pipette);
    return 1000.0 * taken.amount_mol(Component::analyte) / taken.volume_cm3();
  }
  /// mol/dm3 that all the solid that was tipped out makes in 250 cm3.
  [[nodiscard]] double whole_mol_dm3() const { return tipped_out_g(spec_, state) / kMolar_g / 0.250; }

 private:
  const BenchSpec& spec_;

 public:
  BenchState state;
};

}  // namespace

TEST_CASE("rinsed in, filled to the line and turned over, the flask holds all that was weighed out") {
  const BenchSpec spec = making_up();
  Hand hand(spec);
  hand.make_up(3, 0.0, 20);
  CHECK(tipped_out_g(spec, hand.state) > 1.0);
  CHECK_NEAR(hand.taken_mol_dm3() / hand.whole_mol_dm3(), 1.0, 3e-6);
}

// A film of 0.5 cm3 keeps its share of 100 cm3; each rinse of 20 cm3 leaves 0.5 of 20.5 of that.
TEST_CASE("what clings to the beaker is lost unless it is rinsed in, by dilution each time") {
  for (const int rinses : {0, 1, 2}) {
    const BenchSpec spec = making_up();
    Hand hand(spec);
    hand.make_up(rinses, 0.0, 20);
    const double lost = 0.005 * std::pow(0.5 / 20.5, rinses);
    CHECK_NEAR(1.0 - hand.taken_mol_dm3() / hand.whole_mol_dm3(), lost, 3e-6);
  }
}

TEST_CASE("filled past its line the flask is as much weaker as it holds more") {
  const BenchSpec spec = making_up();
  Hand hand(spec);
  hand.make_up(3, 5.0, 20);
  CHECK_NEAR(hand.taken_mol_dm3() / hand.whole_mol_dm3(), 250.0 / (250.0 + 5.0 * 0.18), 3e-6);
}

// 40 mm of neck, 7.2 cm3 of water: what stands below is so much stronger, and each turn takes in half.
TEST_CASE("what stands in the neck is missing below until the flask is turned over") {
  for (const int turns : {0, 1, 5, 10}) {
    const BenchSpec spec = making_up();
    Hand hand(spec);
    hand.make_up(3, 0.0, turns);
    const double unmixed_cm3 = 7.2 / std::pow(2.0, turns);
    CHECK_NEAR(hand.taken_mol_dm3() / hand.whole_mol_dm3(), 250.0 / (250.0 - unmixed_cm3), 1e-5);
  }
}

TEST_CASE("once all below is taken, what lay on top comes, and not a quantum is lost") {
  const BenchSpec spec = making_up();
  Hand hand(spec);
  hand.make_up(3, 0.0, 0);
  const Parcel before = hand.state.ledger.total();
  const Parcel all = hand.state.ledger.balance(Account::sample_bottle);
  Parcel taken;
  while (!hand.state.ledger.balance(Account::sample_bottle).empty())
    taken += take_from_bottle(spec, hand.state, Account::sample_bottle, Account::sink, volume_quanta(37.0));
  CHECK(taken == all);
  CHECK(hand.state.preparation.on_top.empty());
  CHECK(hand.state.ledger.total() == before);
}

TEST_CASE("beyond its brim water runs over on to the bench, and the books balance to the bit") {
  const BenchSpec spec = making_up();
  Hand hand(spec);
  const Parcel before = hand.state.ledger.total();
  hand.make_up(1, 54.0, 0);
  hand.state.hands.fill = 1.0;
  run(spec, hand.state, hand.state.hands, 2.0);
  CHECK_NEAR(neck_level_mm(spec, hand.state), 55.0, 1e-6);
  CHECK(cm3(hand.state, Account::bench_top) > 5.0);
  CHECK(hand.state.ledger.total() == before);
}

TEST_CASE("whatever is done in whatever order, the books balance to the bit") {
  const BenchSpec spec = making_up();
  constexpr Deed kDeedsOfIt[] = {Deed::dissolve_standard,     Deed::pour_into_volumetric,
                                 Deed::rinse_into_volumetric, Deed::invert_volumetric,
                                 Deed::fill_pipette,          Deed::deliver_aliquot};
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    Random random = Random::stream(seed, 0, Purpose::drill);
    BenchState state = lay_out(spec);
    state.hands.tap = 0.0;
    const Parcel before = state.ledger.total();
    for (int i = 0; i < 200; ++i) {
      state.hands.tip = random.uniform() < 0.3 ? random.uniform() : 0.0;
      state.hands.fill = random.uniform() < 0.3 ? random.uniform() : 0.0;
      run(spec, state, state.hands, 0.2);
      const Deed deed = kDeedsOfIt[static_cast<std::size_t>(random.uniform() * 6.0)];
      if (!check(spec, state, deed)) apply(spec, state, deed);
      CHECK(state.preparation.on_top.volume <= state.ledger.balance(Account::sample_bottle).volume);
    }
    CHECK(state.ledger.total() == before);
  }
}

TEST_CASE("the balance shows a milligram, within its linearity and half of that") {
  BenchSpec spec = making_up();
  Random random = Random::stream(7, 0, Purpose::balance);
  for (double& error : spec.preparation.balance_error_g) error = random.uniform(-0.002, 0.002);
  Hand hand(spec);
  double largest_g = 0.0;
  for (int i = 0; i < 60; ++i) {
    const double shown_g = balance_shows_g(spec, hand.state);
    CHECK_NEAR(shown_g * 1000.0, std::round(shown_g * 1000.0), 1e-6);
    const double off_g = std::fabs(shown_g - weighing_bottle_g(spec, hand.state));
    CHECK(off_g <= 0.0025 + 1e-9);
    largest_g = std::max(largest_g, off_g);
    hand.tip(0.4, 1.0);
  }
  CHECK(largest_g > 0.0005);
  CHECK_NEAR(weighing_bottle_g(making_up(), lay_out(making_up())), kTare_g + kSolid_g, 1e-9);
}

TEST_CASE("solid falls in lumps, the same for the same seed, quicker the further the bottle is tilted") {
  const BenchSpec spec = making_up();
  Hand gently(spec), again(spec), fully(spec);
  gently.tip(0.3, 10.0);
  again.tip(0.3, 10.0);
  fully.tip(1.0, 4.0);
  CHECK(gently.state.ledger == again.state.ledger);
  // 0.3 squared of a quarter of a gram a second; a lump or two more or less.
  CHECK_NEAR(tipped_out_g(spec, gently.state), 0.225, 0.03);
  CHECK_NEAR(tipped_out_g(spec, fully.state), 1.0, 0.03);
  fully.tip(1.0, 60.0);
  CHECK_NEAR(tipped_out_g(spec, fully.state), kSolid_g, 1e-9);
  BenchSpec other = spec;
  other.preparation.lumps_seed = 5;
  Hand elsewhere(other);
  elsewhere.tip(0.3, 10.0);
  CHECK(!(elsewhere.state.ledger == gently.state.ledger));
}

// An even wall is climbed by the square root of 2 capillary lengths, 3.86 mm of water; a bore of 15 mm lifts
// its middle too, and shows less.
TEST_CASE(
    "an eye level with the line sees the meniscus where it stands, its edge less than a wall's climb above") {
  const BenchSpec spec = making_up();
  const NeckSeen level = neck_seen_from(spec, 0.0, 0.0);
  CHECK_NEAR(level.bottom_mm, 0.0, 0.02);
  CHECK(level.edge_mm > 1.5);
  CHECK(level.edge_mm < 3.86);
  // Who looks down on it sees it higher on the neck's front, by less than the tangent over its radius says.
  const NeckSeen above = neck_seen_from(spec, 0.0, 150.0), below = neck_seen_from(spec, 0.0, -150.0);
  CHECK(above.bottom_mm > 1.0);
  CHECK(above.bottom_mm < 9.1 * 0.5);
  CHECK(below.bottom_mm < -1.0);
  CHECK(neck_seen_from(spec, -60.0, 0.0).bottom_mm == -60.0);
}

TEST_CASE("what makes no sense at the bench is refused") {
  const BenchSpec spec = making_up();
  Hand hand(spec);
  CHECK(check(spec, hand.state, Deed::fill_pipette) == Refusal::nothing_made_up);
  CHECK(check(spec, hand.state, Deed::rinse_pipette_with_sample) == Refusal::nothing_made_up);
  CHECK(check(spec, hand.state, Deed::dissolve_standard) == Refusal::nothing_to_dissolve);
  CHECK(check(spec, hand.state, Deed::pour_into_volumetric) == Refusal::nothing_to_pour);
  CHECK(check(spec, hand.state, Deed::invert_volumetric) == Refusal::nothing_made_up);
  hand.tip(1.0, 4.0);
  hand.act(Deed::dissolve_standard);
  CHECK(check(spec, hand.state, Deed::dissolve_standard) == Refusal::already_done);
  hand.act(Deed::pour_into_volumetric);
  CHECK(check(spec, hand.state, Deed::pour_into_volumetric) == Refusal::nothing_to_pour);
  hand.fill_to(50.0);
  CHECK(check(spec, hand.state, Deed::rinse_into_volumetric) == Refusal::volumetric_full);
  CHECK(check(titration_bench(), lay_out(titration_bench()), Deed::dissolve_standard) == Refusal::not_there);
}

TEST_CASE("where the unknown is in the flask, what is made up is poured into the burette") {
  BenchSpec spec = making_up();
  spec.unknown_in_flask = true;
  Hand hand(spec);
  hand.make_up(3, 0.0, 20);
  CHECK(standard_account(spec) == Account::titrant_bottle);
  hand.state.funnel_in = true;
  hand.state.hands.pour = 1.0;
  run(spec, hand.state, hand.state.hands, 4.0);
  const Parcel& column = hand.state.ledger.balance(Account::column);
  CHECK(column.volume_cm3() > 20.0);
  CHECK_NEAR(1000.0 * column.amount_mol(Component::titrant) / column.volume_cm3() / hand.whole_mol_dm3(), 1.0,
             1e-5);
}

}  // namespace halfdrop
