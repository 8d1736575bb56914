#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <string>

#include "physics/bench/state_hash.h"
#include "tests/physics/bench/at_the_bench.h"
#include "tests/physics/bench/random_hands.h"
#include "tests/support/rounds.h"

namespace halfdrop {

using namespace test;

namespace {

constexpr int kTicks = 3000;

int seeds() { return test::rounds(30, 10000); }

bool negative(const Parcel& parcel) {
  for (const Quanta amount : parcel.amounts) {
    if (amount < 0) return true;
  }
  return parcel.volume < 0;
}

/// What is wrong with the books, in words; empty when nothing is.
std::string fault_in_books(const Ledger& opened, const Ledger& now) {
  if (!(now.total() == opened.total())) return "liquid was made or lost";
  for (std::size_t i = 0; i < kAccounts; ++i) {
    const auto account = static_cast<Account>(i);
    const Parcel& balance = now.balance(account);
    if (account != Account::reactions && negative(balance))
      return "account " + std::to_string(i) + " is overdrawn";
    if (!(balance == opened.balance(account) + now.entered(account) - now.left(account))) {
      return "account " + std::to_string(i) + " is not what moved in and out of it";
    }
  }
  const Parcel& reactions = now.balance(Account::reactions);
  if (reactions.amount(Component::carbon_dioxide) + reactions.amount(Component::carbonate) != 0)
    return "carbon was made or lost in a reaction";
  if (reactions.amount(Component::indicator) + reactions.amount(Component::faded_indicator) != 0)
    return "indicator was made or lost in fading";
  if (reactions.amount(Component::second_indicator) + reactions.amount(Component::faded_second_indicator) !=
      0)
    return "the second indicator was made or lost in fading";
  return {};
}

/// What stands fuller than it can.
std::string overfull(const BenchSpec& spec, const BenchState& state) {
  if (quanta(state, Account::column) > volume_quanta(column_capacity_cm3(spec.burette)))
    return "tube over its rim";
  if (quanta(state, Account::jet) > volume_quanta(spec.burette.jet_cm3)) return "jet over its volume";
  if (quanta(state, Account::funnel) > volume_quanta(spec.funnel_keeps_cm3)) return "funnel";
  // What flows in while a drop necks hangs too; from the stream's flow on nothing does.
  const double necking_cm3 = spec.settled.stream_from_cm3_s * seconds(spec.settled.necking + 1);
  if (cm3(state, Account::pendant_drop) > spec.settled.largest_drop_cm3 + necking_cm3) return "hanging drop";
  return quanta(state, Account::flask) > volume_quanta(spec.flask.capacity_cm3) ? "flask over its rim" : "";
}

Quanta all_film(const WallFilm& film) {
  Quanta sum = 0;
  for (std::size_t i = 0; i < kFilmLengths; ++i) sum += film.runs[i] + film.greasy[i];
  return sum;
}

Parcel all_falling(const BenchState& state) {
  Parcel sum;
  for (const FallingDrop& drop : state.falling) sum += drop.liquid;
  return sum;
}

Parcel all_on_wall(const FlaskWall& wall) {
  Parcel sum;
  for (const ClingingDrop& drop : wall.drops) sum += drop.liquid;
  for (const Trail& trail : wall.trail)
    for (const Parcel& length : trail) sum += length;
  return sum;
}

/// What lies in the flask's cells is what was laid into them, by source.
bool cells_hold_what_came(const FlaskLiquid& flask) {
  Quanta titrant = 0;
  for (const Source stage : {Source::fresh, Source::meeting, Source::titrant})
    titrant += total(flask.of(stage));
  return titrant == flask.titrant.volume && total(flask.of(Source::water)) == flask.water.volume &&
         total(flask.of(Source::indicator)) == flask.indicator.volume &&
         total(flask.of(Source::second_indicator)) == flask.second_indicator.volume;
}

/// A burette with every fault a level may give it, and two indicators, the second of which fades too: what
/// moves liquid in a good one moves it here too.
BenchSpec poor_bench() {
  BenchSpec spec;
  spec.titrant.substance = sodium_hydroxide();
  spec.sample.substance = ethanoic_acid();
  spec.indicator = phenolphthalein();
  spec.then = SecondEndpoint{phenolphthalein(), 2.0, true};
  spec.burette.grease = 1.0;
  spec.tap.stiff_degrees = 3.0;
  spec.tap.loose_degrees = 4.0;
  spec.tap.leak_cm3_min = 2.0;
  spec.tap.grease_in_bore = 0.3;
  spec.pipette.by_hand = true;
  spec.flask.fineness = 0.25;
  settle(spec);
  return spec;
}

/// The same with its standard still to be weighed out and made up.
BenchSpec making_up_bench() {
  BenchSpec spec = poor_bench();
  spec.unknown_in_flask = false;
  spec.preparation.asked = true;
  spec.preparation.solid_g = 3.0;
  spec.preparation.bottle_g = 20.0;
  settle(spec);
  return spec;
}

std::string first_fault(const BenchSpec& spec, std::uint64_t seed) {
  BenchState state = lay_out(spec);
  const Ledger opened = state.ledger;
  RandomHands hands(seed);
  for (int i = 0; i < kTicks; ++i) {
    step(spec, state, hands.act(spec, state));
    std::string fault = fault_in_books(opened, state.ledger);
    if (fault.empty()) fault = overfull(spec, state);
    if (fault.empty() && !(all_falling(state) == state.ledger.balance(Account::in_flight)))
      fault = "drops in the air";
    if (fault.empty() && all_film(state.film) != quanta(state, Account::wall_film))
      fault = "film on the wall";
    if (fault.empty() && !(all_on_wall(state.wall) == state.ledger.balance(Account::flask_wall)))
      fault = "drops on the flask's wall";
    if (fault.empty() && !cells_hold_what_came(state.flask)) fault = "the flask's cells";
    if (!fault.empty()) return fault + " after tick " + std::to_string(i);
  }
  return {};
}

std::string hash_after(const BenchSpec& spec, std::uint64_t seed) {
  BenchState state = lay_out(spec);
  RandomHands hands(seed);
  for (int i = 0; i < kTicks; ++i) step(spec, state, hands.act(spec, state));
  return state_hash(state);
}

}  // namespace

TEST_CASE(
    "whatever the hands do, the books balance to the last bit at every tick and nothing is overdrawn or "
    "overfull") {
  const BenchSpec spec = titration_bench();
  const BenchSpec poor = poor_bench();
  const BenchSpec making_up = making_up_bench();
  for (int seed = 0; seed < seeds(); ++seed) {
    const BenchSpec& bench = seed % 3 == 0 ? spec : seed % 3 == 1 ? poor : making_up;
    const std::string fault = first_fault(bench, static_cast<std::uint64_t>(seed));
    CHECK_MESSAGE(fault.empty(), "seed " << seed << ": " << fault);
  }
}

TEST_CASE("the same hands leave the same bench") {
  const BenchSpec spec = titration_bench();
  for (std::uint64_t seed = 100; seed < 105; ++seed) CHECK(hash_after(spec, seed) == hash_after(spec, seed));
  CHECK(hash_after(spec, 100) != hash_after(spec, 101));
}

TEST_CASE("a copied bench goes on exactly as its original, with drops in the air or without") {
  const BenchSpec spec = titration_bench();
  for (std::uint64_t seed = 200; seed < 206; ++seed) {
    BenchState state = lay_out(spec);
    RandomHands hands(seed);
    for (int i = 0; i < kTicks; ++i) step(spec, state, hands.act(spec, state));
    BenchState copy = state;
    RandomHands copied_hands = hands;
    for (int i = 0; i < kTicks; ++i) {
      step(spec, state, hands.act(spec, state));
      step(spec, copy, copied_hands.act(spec, copy));
    }
    CHECK(copy == state);
    CHECK(state_hash(copy) == state_hash(state));
  }
}

// The books are only as good as the hands that try them: all accounts must have been used. How many pairs of
// hands that takes is chance (a drop on the flask's wall is rare); that some do is not.
TEST_CASE("random hands get liquid into every account of the bench") {
  constexpr std::uint64_t kMostHands = 300;
  const BenchSpec poor = poor_bench(), making_up = making_up_bench();
  std::array<bool, kAccounts> used{};
  const auto all = [](bool was) { return was; };
  for (std::uint64_t seed = 0; seed < kMostHands && !std::all_of(used.begin(), used.end(), all); ++seed) {
    const BenchSpec& spec = seed % 2 == 0 ? poor : making_up;
    BenchState state = lay_out(spec);
    RandomHands hands(seed);
    for (int i = 0; i < kTicks; ++i) step(spec, state, hands.act(spec, state));
    for (std::size_t i = 0; i < kAccounts; ++i) {
      used[i] = used[i] || !(state.ledger.entered(static_cast<Account>(i)) == Parcel{}) ||
                !(state.ledger.left(static_cast<Account>(i)) == Parcel{});
    }
  }
  for (std::size_t i = 0; i < kAccounts; ++i) CHECK_MESSAGE(used[i], "account " << i);
}

}  // namespace halfdrop
