// What was left in burette, pipette and flask: seen, priced, and told apart from what does no harm.

#include <doctest/doctest.h>

#include "physics/bench/pipette.h"
#include "physics/burette/rinsing.h"
#include "tests/support/bench_hands.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

using test::BenchHands;
using test::finding;
using test::held;

constexpr double kBuretteWet_cm3 = 0.3, kPipetteWet_cm3 = 0.2;

Level wet_level() {
  Level level = test::spirit_vinegar();
  level.burette.wet_cm3 = kBuretteWet_cm3;
  level.pipette.wet_cm3 = kPipetteWet_cm3;
  return level;
}

/// Twice with what is in hand, turned about and let out.
void rinse_burette(BenchHands& hands) {
  for (int i = 0; i < 2; ++i) {
    hands.fill_burette(45.0);
    hands.hold(held(&HandsChange::tilt_degrees, kFlat_degrees));
    hands.wait(6.0);
    hands.hold(held(&HandsChange::tilt_degrees, 0.0));
    hands.act(Deed::put_beaker_under);
    hands.hold(held(&HandsChange::tap, 1.0));
    hands.wait(40.0);
    hands.hold(held(&HandsChange::tap, 0.0));
    hands.act(Deed::take_beaker_away);
  }
}

struct Glass {
  bool burette_rinsed = true, pipette_rinsed = true;
};

BenchHands begun(const Glass& glass) {
  BenchHands hands(wet_level());
  hands.protect();
  if (glass.burette_rinsed) rinse_burette(hands);
  if (glass.pipette_rinsed) hands.act(Deed::rinse_pipette_with_sample);
  return hands;
}

MarkedAttempt two_runs(BenchHands& hands) {
  hands.run("1");
  hands.run("2");
  MarkedAttempt marked = mark(hands.hand_in());
  for (const TitreRow& row : marked.titres) {
    if (row.breakdown) CHECK_NEAR(row.breakdown->remainder_cm3, 0.0, 1e-9);
  }
  return marked;
}

double cause_cm3(const MarkedAttempt& marked, const std::string& run, Cause cause) {
  return test::titre(marked, run).breakdown.value().causes_cm3[static_cast<std::size_t>(cause)];
}

}  // namespace

TEST_CASE("wet glass rinsed with what it is to hold costs nothing") {
  BenchHands hands = begun({});
  const MarkedAttempt marked = two_runs(hands);
  CHECK(finding(marked, "burette-rinsed").met);
  CHECK(finding(marked, "pipette-rinsed").met);
  CHECK_NEAR(cause_cm3(marked, "1", Cause::titrant_strength), 0.0, 0.002);
}

TEST_CASE("a burette filled wet is seen, and raises the titre by the share that the water has") {
  BenchHands hands = begun({.burette_rinsed = false});
  const MarkedAttempt marked = two_runs(hands);
  CHECK(!finding(marked, "burette-rinsed").met);
  CHECK(finding(marked, "pipette-rinsed").met);
  CHECK(finding(marked, "burette-rinsed").seen.find("weaker than the bottle's") != std::string::npos);
  // 0.3 cm3 in a tube of some 53 cm3, in a titre of some 21 cm3: a part of it is still on the wall.
  const double raised_cm3 = cause_cm3(marked, "1", Cause::titrant_strength);
  CHECK(raised_cm3 > 0.05);
  CHECK(raised_cm3 < 21.5 * kBuretteWet_cm3 / 50.0);
}

TEST_CASE("a burette rinsed with the flask's solution is seen for what it is") {
  BenchHands hands(wet_level());
  hands.protect();
  hands.act(Deed::take_up_sample);
  rinse_burette(hands);
  hands.act(Deed::take_up_titrant);
  hands.act(Deed::rinse_pipette_with_sample);
  const MarkedAttempt marked = two_runs(hands);
  CHECK(!finding(marked, "burette-rinsed").met);
  CHECK(finding(marked, "burette-rinsed").seen.find("the flask's solution") != std::string::npos);
  CHECK(cause_cm3(marked, "1", Cause::titrant_strength) > 0.01);
}

// Arithmetic: what the pipette delivers is weaker by its water's share of what was drawn up.
TEST_CASE("a pipette used wet lowers the titre by the share that its water has") {
  BenchHands dry = begun({}), wet = begun({.pipette_rinsed = false});
  const MarkedAttempt right = two_runs(dry), marked = two_runs(wet);
  CHECK(!finding(marked, "pipette-rinsed").met);
  CHECK(finding(marked, "burette-rinsed").met);
  const BenchSpec& spec = wet.spec();
  const double titre_cm3 = spec.sample_in_titre_mol_dm3() * spec.pipette.true_cm3 * spec.titrant_per_analyte /
                           spec.breakdown_mol_dm3();
  const double share = kPipetteWet_cm3 / (spec.pipette.true_cm3 + kPipetteKeeps_cm3);
  CHECK_NEAR(cause_cm3(marked, "1", Cause::aliquot) - cause_cm3(right, "1", Cause::aliquot),
             -share * titre_cm3, 0.003);
  // The second aliquot finds the first one's leavings: it is as good as right.
  CHECK_NEAR(cause_cm3(marked, "2", Cause::aliquot), cause_cm3(right, "2", Cause::aliquot), 0.002);
}

TEST_CASE("a last drop blown out raises the titre by what it holds; left in, nothing is said of it") {
  const auto played = [](bool blown_out) {
    BenchHands hands = begun({});
    hands.fill_burette(0.5);
    hands.fill_jet();
    hands.prepare_flask(2);
    if (blown_out) hands.act(Deed::blow_out_pipette);
    hands.read("1/initial");
    hands.hold(held(&HandsChange::flask_x_cm, 0.0));
    hands.titrate({});
    hands.read("1/final");
    return mark(hands.hand_in());
  };
  const MarkedAttempt right = played(false), blown = played(true);
  CHECK(test::find(right, "last-drop-left") == nullptr);
  CHECK(!finding(blown, "last-drop-left").met);
  const BenchSpec spec = BenchHands(wet_level()).spec();
  const double per_cm3 = spec.sample_in_titre_mol_dm3() * spec.titrant_per_analyte / spec.breakdown_mol_dm3();
  CHECK_NEAR(cause_cm3(blown, "1", Cause::aliquot) - cause_cm3(right, "1", Cause::aliquot),
             kPipetteKeeps_cm3 * per_cm3, 0.001);
}

TEST_CASE("a flask rinsed with the sample raises the titre by what it kept, and is not clean") {
  BenchHands hands = begun({});
  hands.run("1");
  hands.act(Deed::rinse_flask_with_sample);
  hands.run("2");
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(!finding(marked, "flask-clean").met);
  CHECK(finding(marked, "flask-clean").seen.find("rinsed with the solution") != std::string::npos);
  const BenchSpec& spec = hands.spec();
  const double per_cm3 = spec.sample_in_titre_mol_dm3() * spec.titrant_per_analyte / spec.breakdown_mol_dm3();
  // What is shaken out keeps 0.3 cm3: of sample thinned by the water that the flask had kept before.
  const double thinned = spec.wrong_rinse_cm3 / (spec.wrong_rinse_cm3 + spec.rinse_left_cm3);
  CHECK_NEAR(cause_cm3(marked, "2", Cause::flask_residue), spec.rinse_left_cm3 * thinned * per_cm3, 0.001);
  CHECK_NEAR(cause_cm3(marked, "1", Cause::flask_residue), 0.0, 0.003);
}

TEST_CASE("tipped out, a flask that was rinsed with the sample is no cleaner, and its wetness not harmless") {
  BenchHands hands = begun({});
  hands.run("1");
  hands.act(Deed::rinse_flask_with_sample);
  hands.act(Deed::empty_flask);
  hands.run("2");
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(!finding(marked, "flask-clean").met);
  CHECK(test::find(marked, "harmless-wet-flask") == nullptr);
}

TEST_CASE("titrant tipped out of the burette between the readings missed the flask, and is nobody's drip") {
  BenchHands hands = begun({});
  hands.fill_burette(0.5);
  hands.fill_jet();
  hands.prepare_flask(2);
  hands.read("1/initial");
  hands.hold(held(&HandsChange::flask_x_cm, 0.0));
  hands.hold(held(&HandsChange::tap, 1.0));
  hands.wait(3.0);
  hands.hold(held(&HandsChange::tap, 0.0));
  hands.wait(2.0);
  hands.hold(held(&HandsChange::flask_x_cm, kFlaskReach_cm));
  const double held_cm3 = test::in(hands, Account::column);
  hands.hold(held(&HandsChange::tilt_degrees, kFlat_degrees));
  hands.wait(1.0);
  hands.hold(held(&HandsChange::tilt_degrees, 0.0));
  hands.wait(1.0);
  hands.read("1/final");
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(cause_cm3(marked, "1", Cause::missed_flask) > held_cm3 - kMostToRoll_cm3 - 0.5);
  CHECK_NEAR(cause_cm3(marked, "1", Cause::funnel_drips), 0.0, 1e-9);
  CHECK_NEAR(test::titre(marked, "1").breakdown->remainder_cm3, 0.0, 1e-9);
}

TEST_CASE("where the glass stood dry, nobody is asked to rinse it") {
  BenchHands hands;
  hands.whole_attempt();
  const MarkedAttempt marked = mark(hands.hand_in());
  CHECK(test::find(marked, "burette-rinsed") == nullptr);
  CHECK(test::find(marked, "pipette-rinsed") == nullptr);
}

}  // namespace halfdrop
