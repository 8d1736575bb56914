#include "physics/bench/drill.h"

#include <doctest/doctest.h>

#include "physics/burette/column.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

BenchSpec with_pictures() {
  BenchSpec spec = titration_bench();
  spec.drill.pictures = {{12.34, -100.0, -130.0}, {45.06, -520.0, 60.0}, {0.58, 30.0, -20.0}};
  return spec;
}

double meniscus_cm3(const BenchSpec& spec, const BenchState& state) {
  return scale_reading_cm3(spec.burette, state.ledger.balance(Account::column).volume_cm3());
}

}  // namespace

TEST_CASE("a drill in reading begins with its first picture, the tap shut and the jet clear") {
  const BenchSpec spec = with_pictures();
  const BenchState state = lay_out(spec);
  CHECK_NEAR(meniscus_cm3(spec, state), 12.34, 1e-9);
  CHECK(state.hands.tap == 0.0);
  CHECK(state.hands.eye_mm == -100.0);
  CHECK(state.hands.card_mm == -130.0);
  CHECK_NEAR(state.ledger.balance(Account::jet).volume_cm3(), spec.burette.jet_cm3, 1e-9);
}

TEST_CASE("pictures are turned over one by one, and after the last there is no further one") {
  const BenchSpec spec = with_pictures();
  BenchState state = lay_out(spec);
  for (const MeniscusPicture& picture : {spec.drill.pictures[1], spec.drill.pictures[2]}) {
    REQUIRE(!check(spec, state, Deed::next_picture));
    apply(spec, state, Deed::next_picture);
    CHECK_NEAR(meniscus_cm3(spec, state), picture.reading_cm3, 1e-9);
    CHECK(state.hands.eye_mm == picture.eye_mm);
  }
  CHECK(check(spec, state, Deed::next_picture) == Refusal::last_picture);
}

TEST_CASE("turning a picture over creates no liquid and loses none") {
  const BenchSpec spec = with_pictures();
  BenchState state = lay_out(spec);
  const Parcel before = state.ledger.total();
  apply(spec, state, Deed::next_picture);
  apply(spec, state, Deed::next_picture);
  CHECK(state.ledger.total() == before);
}

TEST_CASE("the meniscus of a picture stands still, and lays no film when it is turned over") {
  const BenchSpec spec = with_pictures();
  BenchState state = lay_out(spec);
  apply(spec, state, Deed::next_picture);  // far down
  const double at_first_cm3 = meniscus_cm3(spec, state);
  for (int i = 0; i < 5 * kTicksPerSecond; ++i) step(spec, state, Hands(state.hands));
  CHECK_NEAR(meniscus_cm3(spec, state), at_first_cm3, 1e-9);
  CHECK(state.ledger.balance(Account::wall_film).empty());
}

TEST_CASE("a drill in delivering begins filled to its mark with the beaker under the jet") {
  BenchSpec spec = titration_bench();
  spec.drill.volumes = 2;
  spec.drill.filled_to_cm3 = 0.63;
  const BenchState state = lay_out(spec);
  CHECK_NEAR(meniscus_cm3(spec, state), 0.63, 1e-9);
  CHECK(state.beaker_under);
  CHECK(state.ledger.balance(Account::beaker).empty());
}

TEST_CASE("a volume is not closed while something still falls, nor more often than asked") {
  BenchSpec spec = titration_bench();
  spec.drill.volumes = 1;
  spec.drill.filled_to_cm3 = 0.5;
  BenchState state = lay_out(spec);
  Hands hands = state.hands;
  hands.tap = 0.6;
  for (int i = 0; i < 10 * kTicksPerSecond && state.ledger.balance(Account::in_flight).empty(); ++i)
    step(spec, state, hands);
  CHECK(check(spec, state, Deed::close_volume) == Refusal::still_falls);
  hands.tap = 0.0;
  for (int i = 0; i < kTicksPerSecond; ++i) step(spec, state, hands);
  REQUIRE(!check(spec, state, Deed::close_volume));
  const Ledger books = state.ledger;
  apply(spec, state, Deed::close_volume);
  CHECK(state.ledger == books);
  CHECK(check(spec, state, Deed::close_volume) == Refusal::no_volume_left);
}

TEST_CASE("a bench without a drill has neither picture nor volume") {
  const BenchSpec spec = titration_bench();
  const BenchState state = lay_out(spec);
  CHECK(check(spec, state, Deed::next_picture) == Refusal::last_picture);
  CHECK(check(spec, state, Deed::close_volume) == Refusal::no_volume_left);
}

}  // namespace halfdrop
