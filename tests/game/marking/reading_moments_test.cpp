// When a writing is a reading and when a correction, and whose liquid is in the flask: every case of the
// table in reading_moments.h, done with hands and a pencil.

#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <initializer_list>

#include "tests/support/bench_hands.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

using test::BenchHands;
using test::finding;
using test::titre;

constexpr double kExact_cm3 = 1e-9;

std::string text_of(double figure_cm3) {
  char text[16];
  std::snprintf(text, sizeof text, "%.2f", figure_cm3);
  return text;
}

/// A trial and two accurate runs, done well; handed in.
const Attempt& good_attempt() {
  static const Attempt attempt = [] {
    BenchHands hands;
    hands.whole_attempt();
    return hands.hand_in();
  }();
  return attempt;
}

const MarkedAttempt& good_marks() {
  static const MarkedAttempt marked = mark(good_attempt());
  return marked;
}

std::string stands_in(const std::string& cell) {
  const TitreRow& row = titre(good_marks(), cell.substr(0, cell.find('/')));
  return text_of(cell.ends_with("initial") ? *row.initial_cm3 : *row.final_cm3);
}

/// A later writing, in front of everything else that was written or done from its tick on.
struct Later {
  std::string cell, text;
  double after_s;
};

Attempt with(std::initializer_list<Later> writings) {
  Attempt attempt = good_attempt();
  for (const Later& later : writings)
    attempt = test::rewritten(attempt, later.cell, later.text, later.after_s);
  return attempt;
}

void check_same_causes(const MarkedAttempt& marked, std::initializer_list<const char*> runs) {
  for (const char* run : runs) {
    REQUIRE(titre(marked, run).breakdown);
    const TitreBreakdown& was = *titre(good_marks(), run).breakdown;
    const TitreBreakdown& is = *titre(marked, run).breakdown;
    for (std::size_t i = 0; i < kCauses; ++i) {
      CAPTURE(run);
      CAPTURE(std::string(cause_id(static_cast<Cause>(i))));
      CHECK_NEAR(is.causes_cm3.at(i), was.causes_cm3.at(i), kExact_cm3);
    }
    CHECK_NEAR(is.remainder_cm3, 0.0, kExact_cm3);
  }
}

constexpr double kAtTheEnd_s = 1e6;

TEST_CASE("a reading struck out and written again when all is over keeps its moment") {
  for (const std::string cell : {"1/initial", "1/final", "trial/final"}) {
    CAPTURE(cell);
    check_same_causes(mark(with({{cell, "", kAtTheEnd_s}, {cell, stands_in(cell), kAtTheEnd_s}})),
                      {"trial", "1", "2"});
  }
}

TEST_CASE("a reading changed by 0.05 when all is over changes what was misread, and nothing that happened") {
  const std::string figure = text_of(*titre(good_marks(), "1").initial_cm3 - 0.15);
  const MarkedAttempt marked =
      mark(with({{"1/initial", "", kAtTheEnd_s}, {"1/initial", figure, kAtTheEnd_s}}));
  const TitreBreakdown& was = *titre(good_marks(), "1").breakdown;
  const TitreBreakdown& is = *titre(marked, "1").breakdown;
  CHECK_NEAR(is.of(Cause::misreading) - was.of(Cause::misreading), 0.15, kExact_cm3);
  CHECK_NEAR(is.of(Cause::flask_residue), was.of(Cause::flask_residue), kExact_cm3);
  CHECK_NEAR(is.remainder_cm3, 0.0, kExact_cm3);
  check_same_causes(marked, {"trial", "2"});
}

TEST_CASE("what was no number when it was written was read all the same") {
  Attempt attempt = test::with_text(good_attempt(), "1/initial", "O.5O");
  attempt = test::rewritten(attempt, "1/initial", stands_in("1/initial"), kAtTheEnd_s);
  check_same_causes(mark(attempt), {"trial", "1", "2"});
}

TEST_CASE("a reading that was struck out and not written again is no reading") {
  const MarkedAttempt marked = mark(with({{"1/final", "", 1.0}}));
  CHECK(!titre(marked, "1").final_cm3);
  CHECK(!titre(marked, "1").breakdown);
  check_same_causes(marked, {"trial", "2"});
}

/// An attempt in which a cell is written a moment before another one is.
Attempt with_before(const std::string& cell, const std::string& text, const std::string& before,
                    bool struck_out) {
  Attempt attempt = good_attempt();
  for (auto change = attempt.changes.begin(); change != attempt.changes.end(); ++change) {
    const auto* writing = std::get_if<Writing>(&change->what);
    if (writing == nullptr || writing->cell != before) continue;
    const Tick tick = change->tick;
    if (struck_out) change = attempt.changes.insert(change, Change{tick, Writing{cell, ""}});
    attempt.changes.insert(change, Change{tick, Writing{cell, text}});
    return attempt;
  }
  throw std::runtime_error("nothing is written in " + before);
}

TEST_CASE("a final reading put into the wrong run's column leaves both runs as they were") {
  for (const bool struck_out : {true, false}) {
    CAPTURE(struck_out);
    const MarkedAttempt marked = mark(with_before("2/final", stands_in("1/final"), "1/final", struck_out));
    check_same_causes(marked, {"trial", "1", "2"});
    CHECK(finding(marked, "one-aliquot").met);
    CHECK(finding(marked, "flask-clean").met);
  }
}

TEST_CASE("an initial reading put into the wrong run's column does not stretch that run over two flasks") {
  check_same_causes(mark(with_before("2/initial", stands_in("1/initial"), "1/initial", true)),
                    {"trial", "1", "2"});
}

TEST_CASE("the final figure put into the initial cell and put right keeps the initial moment") {
  const MarkedAttempt marked = mark(with({{"1/initial", stands_in("1/final"), kAtTheEnd_s},
                                          {"1/initial", stands_in("1/initial"), kAtTheEnd_s}}));
  check_same_causes(marked, {"trial", "1", "2"});
}

TEST_CASE("a final reading retyped while the next run's meniscus shows the same figure keeps its own flask") {
  // The last run's meniscus stands within a division of the first's: titres agree.
  REQUIRE_NEAR(*titre(good_marks(), "1").final_cm3, *titre(good_marks(), "2").final_cm3, 0.5);
  const std::string figure = stands_in("2/final");
  const MarkedAttempt marked = mark(with({{"1/final", "", kAtTheEnd_s}, {"1/final", figure, kAtTheEnd_s}}));
  CHECK_NEAR(titre(marked, "1").breakdown->of(Cause::refill), 0.0, kExact_cm3);
  CHECK_NEAR(titre(marked, "1").breakdown->of(Cause::overshoot),
             titre(good_marks(), "1").breakdown->of(Cause::overshoot), kExact_cm3);
}

/// Dressed, filled, one aliquot in the flask, which stands under the jet; nothing read yet.
BenchHands ready_hands() {
  BenchHands hands;
  hands.protect();
  hands.act(Deed::lay_tile);
  hands.fill_burette(0.5);
  hands.fill_jet();
  hands.prepare_flask(2);
  return hands;
}

void flask_at(BenchHands& hands, double x_cm) {
  HandsChange change;
  change.flask_x_cm = x_cm;
  hands.hold(change);
}

void let_in(BenchHands& hands, double volume_cm3) {
  flask_at(hands, 0.0);
  HandsChange change;
  change.tap = hands.tap_for(8.0);
  hands.hold(change);
  const auto ran_cm3 = [&] { return hands.bench().ledger.moved(Account::column, Account::jet).volume_cm3(); };
  const double until_cm3 = ran_cm3() + volume_cm3;
  while (ran_cm3() < until_cm3) hands.wait(0.02);
  change.tap = 0.0;
  hands.hold(change);
  hands.wait(1.0);
}

double figure(const std::string& text) { return std::stod(text); }

TEST_CASE(
    "a small correction after the first drops stays with the first look; a new reading of them does not") {
  BenchHands hands = ready_hands();
  const double read_cm3 = figure(hands.read("trial/initial"));
  let_in(hands, 0.38);
  SUBCASE("put right by 0.05") {
    hands.write("trial/initial", text_of(read_cm3 - 0.05));
    let_in(hands, 5.0);
    hands.read("trial/final");
    const TitreBreakdown found = *titre(mark(hands.session().attempt()), "trial").breakdown;
    CHECK_NEAR(found.of(Cause::flask_residue), 0.0, kExact_cm3);
    CHECK_NEAR(found.remainder_cm3, 0.0, kExact_cm3);
  }
  SUBCASE("read again where the meniscus stands now") {
    hands.read("trial/initial");
    let_in(hands, 5.0);
    hands.read("trial/final");
    const MarkedAttempt marked = mark(hands.session().attempt());
    CHECK(titre(marked, "trial").breakdown->of(Cause::flask_residue) < -0.3);  // it was in the flask already
    CHECK(!finding(marked, "written-at-the-time").met);
  }
}

TEST_CASE("a final reading written too soon, a drop let in and read again was read the second time") {
  BenchHands hands = ready_hands();
  hands.read("trial/initial");
  let_in(hands, 5.0);
  hands.read("trial/final");
  let_in(hands, 0.12);
  hands.read("trial/final");
  const TitreRow row = titre(mark(hands.session().attempt()), "trial");
  CHECK_NEAR(row.breakdown->of(Cause::misreading), 0.0, kExact_cm3);
  CHECK_NEAR(row.breakdown->of(Cause::flask_residue), 0.0, kExact_cm3);
  CHECK_NEAR(row.breakdown->of(Cause::aliquot), titre(good_marks(), "1").breakdown->of(Cause::aliquot),
             kExact_cm3);
}

TEST_CASE("a final reading written after its flask was rinsed is of that flask, and accuses no other run") {
  for (const bool refilled : {false, true}) {
    CAPTURE(refilled);
    BenchHands hands = ready_hands();
    hands.read("1/initial");
    hands.hold([] {
      HandsChange swirl;
      swirl.swirl = 1.0;
      return swirl;
    }());
    let_in(hands, 20.0);
    const std::string before = hands.read("1/titre");  // looks, and writes it elsewhere
    flask_at(hands, 26.0);
    hands.act(Deed::rinse_flask);
    if (refilled) hands.fill_burette(1.0);
    hands.write("1/final", before);
    hands.run("2");
    const MarkedAttempt marked = mark(hands.session().attempt());
    for (const char* run : {"1", "2"}) {
      CAPTURE(run);
      const TitreBreakdown& found = *titre(marked, run).breakdown;
      CHECK_NEAR(found.of(Cause::aliquot), titre(good_marks(), "1").breakdown->of(Cause::aliquot),
                 kExact_cm3);
      CHECK_NEAR(found.of(Cause::flask_residue), 0.0, 0.005);
      CHECK_NEAR(found.of(Cause::misreading), 0.0, kExact_cm3);
      CHECK_NEAR(found.of(Cause::refill), 0.0, kExact_cm3);
      CHECK_NEAR(found.remainder_cm3, 0.0, kExact_cm3);
    }
    CHECK(finding(marked, "flask-clean").met);
    CHECK(finding(marked, "one-aliquot").met);
    CHECK(finding(marked, "written-at-the-time").seen.find("after the flask had been emptied") !=
          std::string::npos);
  }
}

TEST_CASE("a run whose flask got no titrant is not given the flask of the run before") {
  BenchHands hands;
  hands.protect();
  hands.run("1");
  hands.fill_burette(0.5);
  hands.prepare_flask(2);
  hands.read("2/initial");
  hands.act(Deed::put_beaker_under);  // everything goes into the beaker
  hands.hold([] {
    HandsChange open;
    open.tap = 1.0;
    return open;
  }());
  hands.wait(10.0);
  hands.hold([] {
    HandsChange shut;
    shut.tap = 0.0;
    return shut;
  }());
  hands.wait(1.0);
  hands.read("2/final");
  const MarkedAttempt marked = mark(hands.session().attempt());
  const TitreBreakdown& found = *titre(marked, "2").breakdown;
  CHECK(found.of(Cause::missed_flask) > 1.0);
  CHECK_NEAR(found.of(Cause::aliquot), titre(good_marks(), "1").breakdown->of(Cause::aliquot), kExact_cm3);
  CHECK(!finding(marked, "swirled").met);
}

TEST_CASE("a flask only emptied is not taken for rinsed, whatever was written in between") {
  BenchHands hands;
  hands.protect();
  test::RunPlan plan;
  plan.rinse_after = false;
  hands.run("trial", plan);
  hands.write("2/final", "36.00");
  hands.write("2/final", "");
  hands.act(Deed::empty_flask);
  hands.run("1");
  CHECK(!finding(mark(hands.session().attempt()), "flask-clean").met);
}

TEST_CASE("a second aliquot into the liquid of the run before begins a run of its own") {
  BenchHands hands;
  hands.protect();
  test::RunPlan plan;
  plan.rinse_after = false;
  plan.past_cm3 = 0.2;
  hands.run("1", plan);
  plan.past_cm3 = 0.1;
  hands.run("2", plan);
  const MarkedAttempt marked = mark(hands.session().attempt());
  const TitreBreakdown& first = *titre(marked, "1").breakdown;
  const TitreBreakdown& second = *titre(marked, "2").breakdown;
  CHECK_NEAR(second.of(Cause::aliquot), first.of(Cause::aliquot), kExact_cm3);
  // What run 1 had too much was in the flask when run 2 began.
  CHECK_NEAR(
      second.of(Cause::flask_residue),
      -(first.of(Cause::overshoot) + first.of(Cause::indicator_blank) + first.of(Cause::carbon_dioxide)),
      kExact_cm3);
  CHECK(finding(marked, "flask-clean").seen.find("still held") != std::string::npos);
  CHECK(finding(marked, "one-aliquot").met);
}

TEST_CASE("a flask poured away between the readings takes its titrant with it: that is no residue") {
  BenchHands hands = ready_hands();
  hands.read("trial/initial");
  let_in(hands, 5.0);
  const double entered_cm3 = hands.bench().ledger.moved(Account::in_flight, Account::flask).volume_cm3();
  flask_at(hands, 26.0);
  hands.act(Deed::rinse_flask);
  hands.prepare_flask(2);
  let_in(hands, 3.0);
  hands.read("trial/final");
  const TitreBreakdown found = *titre(mark(hands.session().attempt()), "trial").breakdown;
  const BenchSpec& spec = hands.spec();
  const double strength = spec.titrant.true_mol_dm3 / spec.breakdown_mol_dm3();
  CHECK_NEAR(found.of(Cause::missed_flask), entered_cm3 * strength, 1e-6);
  CHECK_NEAR(found.of(Cause::flask_residue), 0.0, 0.005);  // the heel after two rinses
  CHECK_NEAR(found.remainder_cm3, 0.0, kExact_cm3);
}

TEST_CASE("drops in the air at a reading count with what hangs, not with what missed") {
  BenchHands hands = ready_hands();
  hands.read("trial/initial");
  flask_at(hands, 0.0);
  hands.hold([] {
    HandsChange open;
    open.tap = 1.0;
    return open;
  }());
  for (int tick = 0; hands.bench().ledger.balance(Account::in_flight).volume_cm3() < 0.02; ++tick) {
    REQUIRE(tick < 10 * kTicksPerSecond);
    hands.session().tick();
  }
  hands.hold([] {
    HandsChange shut;
    shut.tap = 0.0;
    return shut;
  }());
  const double outside_cm3 = hands.bench().ledger.balance(Account::in_flight).volume_cm3() +
                             hands.bench().ledger.balance(Account::pendant_drop).volume_cm3();
  hands.write("trial/final", "1.00");
  hands.wait(1.0);
  const TitreBreakdown found = *titre(mark(hands.session().attempt()), "trial").breakdown;
  CHECK_NEAR(found.of(Cause::missed_flask), 0.0, kExact_cm3);
  CHECK_NEAR(found.of(Cause::hanging_drop), outside_cm3, 0.001);
  CHECK_NEAR(found.remainder_cm3, 0.0, kExact_cm3);
}

}  // namespace
}  // namespace halfdrop
