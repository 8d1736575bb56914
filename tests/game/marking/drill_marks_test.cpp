// Drills played through a session and marked from their replay.

#include "game/marking/drill_marks.h"

#include <doctest/doctest.h>

#include <cmath>
#include <set>

#include "game/marking/wording.h"
#include "physics/burette/column.h"
#include "tests/support/drill_level.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {

using namespace test;

namespace {

/// Hands at a drill that may look into the state.
struct AtDrill {
  explicit AtDrill(DrillKind kind, std::uint64_t seed = 5) : session(unruled(kind), seed, "Wren") {}
  static Level unruled(DrillKind kind) {
    Level level = drill_level(kind);
    level.filling_below_eye = false;  // these hands lower nothing
    return level;
  }

  void hold(std::optional<double> HandsChange::*hand, double value) {
    HandsChange change;
    change.*hand = value;
    const auto refused = session.set_hands(change);
    REQUIRE_MESSAGE(!refused, refused.value_or(""));
  }
  void act(Deed deed) {
    const auto refused = session.act(deed);
    REQUIRE_MESSAGE(!refused, refused.value_or(""));
  }
  void write(const std::string& cell, const std::string& text) { REQUIRE(!session.write({cell, text})); }
  void wait(double seconds) {
    for (int i = 0; i < static_cast<int>(seconds * kTicksPerSecond); ++i) session.tick();
  }
  void dress() {
    act(Deed::put_on_coat);
    act(Deed::put_on_goggles);
  }
  [[nodiscard]] double in(Account account) const {
    return session.state().ledger.balance(account).volume_cm3();
  }
  [[nodiscard]] double meniscus_cm3() const {
    return scale_reading_cm3(session.spec().burette, in(Account::column));
  }
  void level_eye(double above_mm = 0.0) {
    const BuretteSpec& burette = session.spec().burette;
    hold(&HandsChange::eye_mm, above_mm - meniscus_cm3() * burette.scale_length_mm / burette.nominal_cm3);
  }
  MarkedAttempt hand_in() {
    session.end("handed in");
    return mark(session.attempt());
  }

  Session session;
};

const DeliveryDrill& delivery(const MarkedAttempt& marked) { return std::get<DeliveryDrill>(*marked.drill); }
const FillingDrill& filling(const MarkedAttempt& marked) { return std::get<FillingDrill>(*marked.drill); }

/// Pours through the funnel, clears the jet, and stands ready unless told otherwise.
AtDrill filled(bool clear_jet, bool lift_funnel_out) {
  AtDrill hands(DrillKind::fill_without_air);
  hands.dress();
  hands.act(Deed::put_beaker_under);
  hands.hold(&HandsChange::tap, 0.0);
  hands.act(Deed::put_in_funnel);
  hands.hold(&HandsChange::pour, 1.0);
  for (int i = 0;
       i < 1000 && hands.in(Account::column) < column_volume_cm3(hands.session.spec().burette, -0.5); ++i)
    hands.wait(0.05);
  hands.hold(&HandsChange::pour, 0.0);
  if (lift_funnel_out) hands.act(Deed::lift_out_funnel);
  if (clear_jet) {
    hands.hold(&HandsChange::tap, 1.0);
    for (int i = 0; i < 400 && hands.meniscus_cm3() < 0.6; ++i) hands.wait(0.05);
    hands.hold(&HandsChange::tap, 0.0);
    hands.wait(1.0);
    if (hands.in(Account::pendant_drop) > 0.0) hands.act(Deed::touch_off_drop);
  }
  hands.level_eye();
  return hands;
}

}  // namespace

TEST_CASE("what was delivered is what the beaker got since the last volume, by the ledger") {
  AtDrill hands(DrillKind::deliver_exactly);
  hands.dress();
  std::vector<double> beaker = {0.0};
  for (const double for_s : {3.0, 1.0}) {
    hands.hold(&HandsChange::tap, 0.6);
    hands.wait(for_s);
    hands.hold(&HandsChange::tap, 0.0);
    hands.wait(1.0);
    hands.act(Deed::close_volume);
    beaker.push_back(hands.in(Account::beaker));
  }
  const MarkedAttempt marked = hands.hand_in();
  CHECK(marked.outcome.reproduced);
  const auto& volumes = delivery(marked).volumes;
  REQUIRE(volumes.size() == 4);
  for (std::size_t i = 0; i < 2; ++i) {
    CHECK(beaker[i + 1] > beaker[i]);
    CHECK_NEAR(*volumes[i].delivered_cm3, beaker[i + 1] - beaker[i], 1e-9);
  }
  CHECK(!volumes[2].delivered_cm3);
  CHECK(!finding(marked, "volume-3").met);
  CHECK(finding(marked, "volume-3").points == 0.0);
}

TEST_CASE("a drop that is left hanging is not delivered, and is said") {
  AtDrill hands(DrillKind::deliver_exactly);
  hands.dress();
  hands.hold(&HandsChange::tap, 0.47);
  for (int i = 0; i < 60 * kTicksPerSecond && hands.in(Account::pendant_drop) < 0.035; ++i)
    hands.session.tick();
  hands.hold(&HandsChange::tap, 0.0);
  hands.wait(1.0);
  const double hanging_cm3 = hands.in(Account::pendant_drop), in_beaker_cm3 = hands.in(Account::beaker);
  hands.act(Deed::close_volume);
  hands.act(Deed::touch_off_drop);
  hands.act(Deed::close_volume);
  const MarkedAttempt marked = hands.hand_in();
  CHECK_NEAR(*delivery(marked).volumes[0].delivered_cm3, in_beaker_cm3, 1e-9);
  CHECK_NEAR(delivery(marked).volumes[0].hanging_cm3, hanging_cm3, 1e-9);
  CHECK(finding(marked, "volume-1").seen.find("left hanging at the tip") != std::string::npos);
  CHECK_NEAR(*delivery(marked).volumes[1].delivered_cm3, hanging_cm3, 1e-9);
}

TEST_CASE("what ran onto the bench is neither delivered nor safe") {
  AtDrill hands(DrillKind::deliver_exactly);
  hands.dress();
  hands.act(Deed::take_beaker_away);
  hands.hold(&HandsChange::tap, 1.0);
  hands.wait(2.0);
  hands.hold(&HandsChange::tap, 0.0);
  hands.wait(1.0);
  hands.act(Deed::put_beaker_under);
  hands.act(Deed::close_volume);
  const MarkedAttempt marked = hands.hand_in();
  CHECK(*delivery(marked).volumes[0].delivered_cm3 == 0.0);
  CHECK(!finding(marked, "spills-wiped").met);
  CHECK(!marked.marks.safe);
  CHECK(marked.marks.total == 0.0);
}

TEST_CASE(
    "a volume that falls short is as wrong as one that goes over, and nothing delivered earns nothing") {
  AtDrill hands(DrillKind::deliver_exactly);
  hands.dress();
  hands.hold(&HandsChange::tap, 1.0);
  hands.wait(3.0);
  hands.hold(&HandsChange::tap, 0.0);
  hands.wait(1.0);
  for (int i = 0; i < 4; ++i) hands.act(Deed::close_volume);
  const MarkedAttempt marked = hands.hand_in();
  CHECK(*delivery(marked).volumes[0].error_cm3() < -5.0);
  CHECK(unmet(marked) == "volume-1, volume-2, volume-3, volume-4");
  CHECK(marked.marks.total == 0.0);
}

TEST_CASE("one drop is what falls here of a slow one, half a drop about 0.02 cm3") {
  const BenchSpec spec = bench_spec(drill_level(DrillKind::deliver_exactly), 1);
  CHECK(asked_cm3(spec, {Delivery::What::one_drop, 0.0}) == spec.settled.full_drop_cm3);
  CHECK(asked_cm3(spec, {Delivery::What::half_drop, 0.0}) == 0.02);
  CHECK(asked_cm3(spec, {Delivery::What::volume, 3.7}) == 3.7);
  CHECK(asked_text({Delivery::What::volume, 3.7}) == "3.70 cm³");
}

TEST_CASE("a burette that stands ready earns every mark of the filling drill") {
  AtDrill hands = filled(true, true);
  hands.write("reading/1", figure_text(std::round(hands.meniscus_cm3() * 20.0) / 20.0, 2));
  const MarkedAttempt marked = hands.hand_in();
  CHECK(unmet(marked) == "");
  CHECK(marked.marks.total == marked.marks.of);
  CHECK(marked.titres.empty());
  CHECK(std::isnan(marked.ideal_titre_cm3));
}

TEST_CASE("each thing left undone at the first reading is what is not met, at its size") {
  AtDrill dry = filled(false, true);
  dry.hold(&HandsChange::tap, 0.0);
  dry.write("reading/1", "0.00");
  const double jet_cm3 = dry.session.spec().burette.jet_cm3;
  const MarkedAttempt no_jet = dry.hand_in();
  CHECK(!finding(no_jet, "jet-filled").met);
  CHECK_NEAR(*finding(no_jet, "jet-filled").cost_cm3, jet_cm3, 1e-9);
  CHECK(!finding(no_jet, "on-scale").met);  // it was filled past the zero and never let down

  AtDrill funnel = filled(true, false);
  funnel.write("reading/1", figure_text(std::round(funnel.meniscus_cm3() * 20.0) / 20.0, 2));
  const double on_it_cm3 = funnel.in(Account::funnel);
  const MarkedAttempt left_in = funnel.hand_in();
  CHECK(unmet(left_in) == "funnel-out");
  CHECK_NEAR(*finding(left_in, "funnel-out").cost_cm3, -on_it_cm3, 1e-9);

  AtDrill high = filled(true, true);
  high.level_eye(100.0);
  high.write("reading/1", figure_text(std::round(high.meniscus_cm3() * 20.0) / 20.0, 2));
  const MarkedAttempt from_above = high.hand_in();
  CHECK(unmet(from_above) == "eye-level");
  CHECK(*finding(from_above, "eye-level").cost_cm3 > 0.05);  // a first reading too low: a titre too high

  AtDrill hangs = filled(true, true);
  hangs.hold(&HandsChange::tap, 0.5);
  while (hangs.in(Account::pendant_drop) < 0.03) hangs.session.tick();
  hangs.hold(&HandsChange::tap, 0.0);
  hangs.write("reading/1", figure_text(std::round(hangs.meniscus_cm3() * 20.0) / 20.0, 2));
  const double hanging_cm3 = hangs.in(Account::pendant_drop);
  const MarkedAttempt with_drop = hangs.hand_in();
  CHECK(unmet(with_drop) == "no-drop");
  CHECK_NEAR(*finding(with_drop, "no-drop").cost_cm3, -hanging_cm3, 1e-9);

  AtDrill short_text = filled(true, true);
  short_text.write("reading/1", figure_text(short_text.meniscus_cm3(), 3));
  CHECK(unmet(short_text.hand_in()) == "half-divisions");
}

TEST_CASE("a reading written while the tap still runs is no ready burette") {
  AtDrill hands = filled(true, true);
  hands.hold(&HandsChange::tap, 1.0);
  hands.wait(0.5);
  hands.write(reading_cell(1), "0.60");
  hands.hold(&HandsChange::tap, 0.0);
  const MarkedAttempt marked = hands.hand_in();
  CHECK(filling(marked).running);
  const Finding* const stood = find(marked, "on-scale");
  REQUIRE(stood);
  CHECK_FALSE(stood->met);
  CHECK(stood->seen.find("was not shut") != std::string::npos);
}

TEST_CASE("nothing in the beaker is said to be that, and what was left open is counted") {
  AtDrill hands(DrillKind::deliver_exactly);
  hands.dress();
  hands.act(Deed::close_volume);
  const MarkedAttempt marked = hands.hand_in();
  const Finding* const first = find(marked, "volume-1");
  REQUIRE(first);
  CHECK(first->advice.starts_with("Nothing came into the beaker"));
  const Finding* const open = find(marked, "hand-not-judged");
  REQUIRE(open);
  CHECK(open->seen.starts_with("Only 1 of 4 were said to be delivered"));
}

TEST_CASE("a first reading written too low costs what one written too high does") {
  for (const double off_cm3 : {-0.3, 0.3}) {
    CAPTURE(off_cm3);
    AtDrill hands = filled(true, true);
    hands.write("reading/1", figure_text(std::round(hands.meniscus_cm3() * 20.0) / 20.0 + off_cm3, 2));
    const MarkedAttempt marked = hands.hand_in();
    CHECK(unmet(marked) == "reading-error");
    CHECK(finding(marked, "reading-error").points == 0.0);
    CHECK(*finding(marked, "reading-error").cost_cm3 * off_cm3 < 0.0);
  }
}

TEST_CASE("what is done after the first reading was written does not change what it saw") {
  AtDrill hands = filled(true, true);
  hands.write("reading/1", figure_text(std::round(hands.meniscus_cm3() * 20.0) / 20.0, 2));
  hands.act(Deed::put_in_funnel);
  const MarkedAttempt marked = hands.hand_in();
  CHECK(unmet(marked) == "");
  CHECK(!filling(marked).funnel_in);
}

TEST_CASE("a filling drill without a reading has nothing to judge but safety") {
  AtDrill hands = filled(true, true);
  const MarkedAttempt marked = hands.hand_in();
  CHECK(marked.marks.total == 0.0);
  CHECK(finding(marked, "hand-not-judged").of == 7.0);
  CHECK(finding(marked, "hand-not-judged").advice == "Fill the burette, read it and write what you read.");
  CHECK(!key_figures(*marked.drill).front().value);
}

TEST_CASE("in a reading drill no liquid is handled: nobody has to dress for it") {
  AtDrill hands(DrillKind::read_meniscus);
  hands.wait(1.0);
  hands.act(Deed::next_picture);
  const MarkedAttempt marked = hands.hand_in();
  CHECK(marked.marks.safe);
  CHECK(find(marked, "eye-protection") == nullptr);
  CHECK(finding(marked, "readings-written").seen == "0 of 30 pictures read.");
}

TEST_CASE("a second go is compared with the first by figures that differ for sure") {
  ReadingDrill before, after;
  before.errors = {30, 0.040, 0.030, 0.0055, 0.0039};
  after.errors = {30, 0.008, 0.028, 0.0051, 0.0037};
  before.off_level = 9;
  after.off_level = 2;
  const auto verdict = [&](const std::string& id) {
    for (const FigureChange& change : compare_goes(before, after)) {
      if (change.first.id == id) return change.verdict;
    }
    return std::string("no such figure");
  };
  CHECK(verdict("bias_cm3") == "nearer to nought");
  CHECK(verdict("sd_cm3") == "no change that can be told from chance");  // 0.002 ± 0.0054
  CHECK(verdict("off_level") == "nearer to nought");
  CHECK(verdict("slips") == "the same");
  after.slips = 1;
  after.errors.mean = 0.022;  // 0.018 less, each ± 0.0055 and 0.0075: ± 0.0093 together
  after.errors.mean_error = 0.0075;
  CHECK(verdict("slips") == "further from nought");
  CHECK(verdict("bias_cm3") == "no change that can be told from chance");
}

TEST_CASE("another go is one at the same drill by the same person") {
  const Attempt first{drill_level(DrillKind::read_meniscus), 1, "Wren", {}};
  Attempt second = first;
  second.seed = 2;
  CHECK(same_drill(first, second));
  second.alias = "Finch";
  CHECK(!same_drill(first, second));
  second = first;
  second.level.drill->to_cm3 = 0.01;
  CHECK(!same_drill(first, second));
  second = first;
  second.level.drill.reset();
  CHECK(!same_drill(first, second));
}

TEST_CASE("every key figure of every drill is one of the ids that a table has columns for") {
  const auto ids = key_figure_ids();
  CHECK(ids.size() == 16);
  CHECK(std::set<std::string>(ids.begin(), ids.end()).size() == ids.size());
}

TEST_CASE("volumes have the hand's bands, drops their own, and the advice says which way it went") {
  const Level level = drill_level(DrillKind::deliver_exactly);
  const auto delivered = [](Delivery::What what, double asked_cm3, double cm3) {
    VolumeDelivered volume{{what, asked_cm3}, asked_cm3, {}, 0.0, 0};
    volume.delivered_cm3 = cm3;
    return volume;
  };
  DeliveryDrill drill;
  drill.volumes = {
      delivered(Delivery::What::volume, 10.0, 10.04), delivered(Delivery::What::volume, 3.7, 3.61),
      delivered(Delivery::What::one_drop, 0.0475, 0.0675), delivered(Delivery::What::half_drop, 0.02, 0.008)};
  std::vector<Finding> found;
  find_in_delivery(drill, level, found);
  REQUIRE(found.size() == 4);
  CHECK(found[0].points == 3.0);
  CHECK(found[1].points == 2.0);
  CHECK(found[2].points == 1.0);
  CHECK(found[3].points == 2.0);
  CHECK(found[0].advice.find("Slow down") != std::string::npos);
  CHECK(found[1].advice.find("Read again") != std::string::npos);
  CHECK(found[2].advice.find("Turn the tap back") != std::string::npos);
  CHECK(found[3].advice.find("Let it swell") != std::string::npos);
  const std::vector<DrillFigure> figures = key_figures(drill);
  CHECK_NEAR(*figures[1].value, -0.09, 1e-9);
  CHECK_NEAR(*figures[2].value, 0.02, 1e-9);
}

TEST_CASE(
    "emptying the beaker takes nothing from what was delivered, wiping the bench nothing from a spill") {
  AtDrill hands(DrillKind::deliver_exactly);
  hands.dress();
  hands.hold(&HandsChange::tap, 1.0);
  hands.wait(2.0);
  hands.hold(&HandsChange::tap, 0.0);
  hands.wait(1.0);
  const double in_beaker_cm3 = hands.in(Account::beaker);
  hands.act(Deed::empty_beaker);
  hands.act(Deed::close_volume);
  CHECK_NEAR(*delivery(hands.hand_in()).volumes[0].delivered_cm3, in_beaker_cm3, 1e-9);

  AtDrill wet = filled(true, true);
  wet.act(Deed::take_beaker_away);
  wet.hold(&HandsChange::tap, 1.0);
  wet.wait(1.0);
  wet.hold(&HandsChange::tap, 0.0);
  wet.wait(1.0);
  const double spilt_cm3 = wet.in(Account::bench_top);
  REQUIRE(spilt_cm3 > 0.1);
  wet.act(Deed::wipe_bench);
  CHECK_NEAR(filling(wet.hand_in()).spilt_cm3, spilt_cm3, 1e-9);
}

}  // namespace halfdrop
