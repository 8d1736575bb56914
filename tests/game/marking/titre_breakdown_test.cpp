#include "game/marking/titre_breakdown.h"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "game/session/view.h"
#include "physics/burette/column.h"
#include "physics/flask/contents.h"
#include "physics/flask/mixing.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

constexpr double kAliquot_cm3 = 25.0;
constexpr double kExact_cm3 = 1e-9;

BenchSpec perfect_bench() {
  BenchSpec spec;
  spec.titrant.substance = {"alkali", {{"Na+", 1}}, {}};
  spec.titrant.label_mol_dm3 = spec.titrant.true_mol_dm3 = 0.1;
  spec.sample.substance = {"acid", {}, {{1, {4.756, 0, 0}, 0}}};
  spec.indicator.system = {2, {9.05, 9.50, 0}, 0};
  spec.indicator.bands = {{2, 552.0, 28.0, 3.0e4}};
  spec.indicator.stock_mol_dm3 = 0.00314;
  spec.pipette.true_cm3 = kAliquot_cm3;
  settle(spec);
  return spec;
}

double mm_level_with(double reading_cm3) { return -11.0 * reading_cm3; }

/// One run, moved through the books by hand so that every amount is known.
struct Run {
  BenchSpec spec = perfect_bench();
  BenchState bench;
  ReadingMoment initial, final;
  FlaskStory story;

  /// The meniscus stands at `initial_cm3`, the jet is full, and `ideal_cm3` of good titrant are needed.
  Run(double initial_cm3, double ideal_cm3) {
    spec.sample.true_mol_dm3 = spec.sample.label_mol_dm3 = 0.1 * ideal_cm3 / kAliquot_cm3;
    bench = lay_out(spec);
    stand_at(initial_cm3);
    bench.ledger.transfer(Account::titrant_bottle, Account::jet, volume_quanta(spec.burette.jet_cm3));
    bench.ledger.transfer(Account::sample_bottle, Account::pipette, volume_quanta(spec.pipette.true_cm3));
    bench.hands.eye_mm = mm_level_with(initial_cm3);
  }

  Ledger& books() { return bench.ledger; }

  void stand_at(double reading_cm3) {
    const double wanted = column_volume_cm3(spec.burette, reading_cm3);
    const Quanta more = volume_quanta(wanted) - books().balance(Account::column).volume;
    books().transfer(Account::titrant_bottle, Account::column, more);
  }

  void aliquot() {
    const Parcel all = books().balance(Account::pipette);
    books().move(Account::pipette, Account::flask_rest, all);
    story.analyte_from_pipette += all.amount(Component::analyte);
  }

  ReadingMoment read(double written_cm3) const {
    const ReadingSeen seen = reading_seen(spec, bench);
    return {written_cm3, seen.bottom_cm3, seen.edge_cm3, bench};
  }
  void read_initial(double written_cm3) { initial = read(written_cm3); }

  void run_in(double volume_cm3, Account target = Account::flask_landing) {
    const Quanta volume = volume_quanta(volume_cm3);
    books().transfer(Account::column, Account::jet, volume);
    const Quanta over = books().balance(Account::jet).volume - volume_quanta(spec.burette.jet_cm3);
    books().transfer(Account::jet, Account::pendant_drop, over);
    let_drop_fall(over, target);
  }
  void let_drop_fall(Quanta volume, Account target) {
    const Parcel drop = books().transfer(Account::pendant_drop, Account::in_flight, volume);
    books().move(Account::in_flight, target, drop);
  }

  TitreBreakdown finish(double written_cm3, double final_cm3) {
    bench.hands.eye_mm = mm_level_with(final_cm3);
    return finish_as_seen(written_cm3);
  }
  TitreBreakdown finish_as_seen(double written_cm3) {
    final = read(written_cm3);
    return break_down(spec, kAliquot_cm3, initial, final, story);
  }
};

void check_only(const TitreBreakdown& found, Cause expected, double size_cm3) {
  CHECK_NEAR(found.remainder_cm3, 0.0, kExact_cm3);
  for (std::size_t i = 0; i < kCauses; ++i) {
    const auto cause = static_cast<Cause>(i);
    CAPTURE(std::string(cause_id(cause)));
    CHECK_NEAR(found.of(cause), cause == expected ? size_cm3 : 0.0, kExact_cm3);
  }
  CHECK_NEAR(found.recorded_cm3 - found.ideal_cm3, size_cm3, kExact_cm3);
}

TEST_CASE("a faultless run records the ideal titre and no cause") {
  Run run(1.00, 21.40);
  run.aliquot();
  run.read_initial(1.00);
  run.run_in(21.40);
  const TitreBreakdown found = run.finish(22.40, 22.40);
  CHECK_NEAR(found.ideal_cm3, 21.40, kExact_cm3);
  check_only(found, Cause::rounding, 0.0);
}

TEST_CASE("writing the nearest 0.05 comes back as rounding") {
  Run run(1.02, 21.38);
  run.aliquot();
  run.read_initial(1.00);
  run.run_in(21.38);
  check_only(run.finish(22.40, 22.40), Cause::rounding, 0.02);
}

TEST_CASE("a reading that was misread comes back as misreading") {
  Run run(1.00, 21.40);
  run.aliquot();
  run.read_initial(1.00);
  run.run_in(21.40);
  check_only(run.finish(22.60, 22.40), Cause::misreading, 0.20);
}

TEST_CASE("the top of the meniscus read at the end comes back as meniscus edge") {
  Run run(1.00, 21.40);
  run.spec.burette.meniscus_height_mm = 3.30;  // 0.30 cm3
  run.aliquot();
  run.read_initial(1.00);
  run.run_in(21.40);
  run.bench.hands.eye_mm = mm_level_with(22.40);
  const double edge_cm3 = reading_seen(run.spec, run.bench).edge_cm3;
  const TitreBreakdown found = run.finish_as_seen(22.10);
  CHECK_NEAR(found.of(Cause::meniscus_edge), edge_cm3 - 22.40, kExact_cm3);
  CHECK_NEAR(found.of(Cause::meniscus_edge) + found.of(Cause::rounding), -0.30, kExact_cm3);
  CHECK_NEAR(found.of(Cause::misreading), 0.0, kExact_cm3);
  CHECK_NEAR(found.remainder_cm3, 0.0, kExact_cm3);
}

TEST_CASE("an eye too high at the first reading makes the titre high, at the last reading low") {
  constexpr double kDepth =
      6.4 / 306.4;  // straight sight line: depth of the axis over distance of the eye to it
  constexpr double kAbove_mm = 20.0;
  const double shift_cm3 = kAbove_mm * kDepth / 11.0;
  SUBCASE("first") {
    Run run(1.00 + shift_cm3, 21.40 - shift_cm3);
    run.aliquot();
    run.bench.hands.eye_mm = mm_level_with(1.00 + shift_cm3) + kAbove_mm;
    run.read_initial(1.00);
    run.run_in(21.40 - shift_cm3);
    check_only(run.finish(22.40, 22.40), Cause::parallax_initial, shift_cm3);
  }
  SUBCASE("last") {
    Run run(1.00, 21.40 + shift_cm3);
    run.aliquot();
    run.read_initial(1.00);
    run.run_in(21.40 + shift_cm3);
    run.bench.hands.eye_mm = mm_level_with(22.40 + shift_cm3) + kAbove_mm;
    check_only(run.finish_as_seen(22.40), Cause::parallax_final, -shift_cm3);
  }
}

TEST_CASE("a burette whose marks lie too far apart records a low titre") {
  BuretteSpec wide;
  wide.scale_linear_cm3 = 0.05;  // 50 marked are 50.05 truly
  const double true_cm3 = true_volume_cm3(wide, 21.40);
  Run run(0.00, true_cm3);
  run.spec.burette = wide;
  run.stand_at(0.00);
  run.aliquot();
  run.read_initial(0.00);
  run.run_in(true_cm3);
  check_only(run.finish(21.40, 21.40), Cause::burette_scale, 21.40 - true_cm3);
  CHECK_NEAR(true_cm3, 21.40 + 0.05 * 21.40 / 50.0, kExact_cm3);
}

TEST_CASE("air in the jet at the first reading comes back as jet air") {
  Run run(1.00, 21.20);
  run.books().transfer(Account::jet, Account::sink, volume_quanta(0.20));
  run.aliquot();
  run.read_initial(1.00);
  run.run_in(21.40);
  check_only(run.finish(22.40, 22.40), Cause::jet_air, 0.20);
}

TEST_CASE("a drop left hanging at the end makes the titre high, one that hung at the start low") {
  SUBCASE("end") {
    Run run(1.00, 21.36);
    run.aliquot();
    run.read_initial(1.00);
    run.run_in(21.36);
    run.books().transfer(Account::column, Account::pendant_drop, volume_quanta(0.04));
    check_only(run.finish(22.40, 22.40), Cause::hanging_drop, 0.04);
  }
  SUBCASE("start") {
    Run run(1.00, 21.44);
    run.books().transfer(Account::titrant_bottle, Account::pendant_drop, volume_quanta(0.04));
    run.aliquot();
    run.read_initial(1.00);
    run.let_drop_fall(volume_quanta(0.04), Account::flask_landing);
    run.run_in(21.40);
    check_only(run.finish(22.40, 22.40), Cause::hanging_drop, -0.04);
  }
}

TEST_CASE("what a funnel drips in between the readings makes the titre low") {
  Run run(1.00, 21.49);
  run.books().transfer(Account::titrant_bottle, Account::funnel, volume_quanta(0.15));
  run.aliquot();
  run.read_initial(1.00);
  run.books().transfer(Account::funnel, Account::column, volume_quanta(0.09));
  run.run_in(21.49);
  check_only(run.finish(22.40, 22.40), Cause::funnel_drips, -0.09);
}

TEST_CASE("a burette filled up between the readings comes back as refill") {
  Run run(1.00, 31.40);
  run.aliquot();
  run.read_initial(1.00);
  run.run_in(20.0);
  run.books().transfer(Account::titrant_bottle, Account::column, volume_quanta(10.0));
  run.run_in(11.40);
  check_only(run.finish(22.40, 22.40), Cause::refill, -10.0);
}

TEST_CASE("titrant that misses the flask or stays on its wall makes the titre high") {
  Run run(1.00, 21.30);
  run.aliquot();
  run.read_initial(1.00);
  run.run_in(21.30);
  SUBCASE("missed") {
    run.run_in(0.10, Account::bench_top);
    check_only(run.finish(22.40, 22.40), Cause::missed_flask, 0.10);
  }
  SUBCASE("on the wall") {
    run.run_in(0.10, Account::flask_wall);
    check_only(run.finish(22.40, 22.40), Cause::flask_wall, 0.10);
  }
  SUBCASE("washed down again costs nothing") {
    Run washed(1.00, 21.40);
    washed.aliquot();
    washed.read_initial(1.00);
    washed.run_in(21.30);
    washed.run_in(0.10, Account::flask_wall);
    washed.books().transfer(Account::wash_bottle, Account::flask_rest, volume_quanta(5.0));
    washed.books().transfer(Account::flask_wall, Account::flask_landing, volume_quanta(0.10));
    check_only(washed.finish(22.40, 22.40), Cause::rounding, 0.0);
  }
}

TEST_CASE("titrant weaker than its label makes the titre high") {
  Run run(1.00, 20.0);
  run.spec.titrant.true_mol_dm3 = 0.08;
  run.bench = lay_out(run.spec);
  run.bench.hands.eye_mm = mm_level_with(1.00);
  run.stand_at(1.00);
  run.books().transfer(Account::titrant_bottle, Account::jet, volume_quanta(run.spec.burette.jet_cm3));
  run.books().transfer(Account::sample_bottle, Account::pipette, volume_quanta(25.0));
  run.aliquot();
  run.read_initial(1.00);
  run.run_in(25.0);
  const TitreBreakdown found = run.finish(26.00, 26.00);
  check_only(found, Cause::titrant_strength, 5.0);
}

TEST_CASE("a pipette that delivers too much makes the titre high") {
  Run run(1.00, 20.0);
  run.books().transfer(Account::sample_bottle, Account::pipette, volume_quanta(0.0625));
  run.aliquot();
  run.read_initial(1.00);
  run.run_in(20.05);
  check_only(run.finish(21.05, 21.05), Cause::aliquot, 0.05);
}

TEST_CASE("sample that was in the flask before makes the titre high, titrant makes it low") {
  SUBCASE("rinsed with sample") {
    Run run(1.00, 20.0);
    run.books().transfer(Account::sample_bottle, Account::flask_rest, volume_quanta(0.50));
    run.aliquot();
    run.read_initial(1.00);
    run.run_in(20.40);
    check_only(run.finish(21.40, 21.40), Cause::flask_residue, 0.40);
  }
  SUBCASE("heel of an overshot run") {
    Run run(1.00, 20.0);
    run.books().transfer(Account::titrant_bottle, Account::flask_rest, volume_quanta(0.10));
    run.aliquot();
    run.read_initial(1.00);
    run.run_in(19.90);
    check_only(run.finish(20.90, 20.90), Cause::flask_residue, -0.10);
  }
}

TEST_CASE("analyte lost over the rim makes the titre low") {
  Run run(1.00, 20.0);
  run.aliquot();
  run.read_initial(1.00);
  run.story.lost = run.books().transfer(Account::flask_rest, Account::bench_top, volume_quanta(0.25));
  run.run_in(19.80);
  check_only(run.finish(20.80, 20.80), Cause::swirled_out, -0.20);
}

TEST_CASE("one drop too many comes back as overshoot; stopping early is negative") {
  for (const double past_cm3 : {0.05, -0.10}) {
    Run run(1.00, 20.0);
    run.aliquot();
    run.read_initial(1.00);
    run.run_in(20.0 + past_cm3);
    check_only(run.finish(21.0 + past_cm3, 21.0 + past_cm3), Cause::overshoot, past_cm3);
  }
}

/// The flask's mixed liquid on its tile against the same liquid without titrant, as someone looks who stirs
/// well.
double change_seen(const Run& run) {
  const Parcel liquid = flask_liquid(run.bench.ledger);
  Parcel before = liquid;
  before.amounts.at(static_cast<std::size_t>(Component::titrant)) = 0;
  const double path_cm = sight_path_cm(run.spec.flask, liquid.volume_cm3());
  const auto seen = [&](const Parcel& parcel) {
    return to_lab(colour_of(run.spec, parcel, path_cm, Backdrop::white_tile));
  };
  return ciede2000(seen(liquid), seen(before));
}

TEST_CASE(
    "who stops at the first change that is seen has no overshoot: past equivalence, all was the "
    "indicator's") {
  constexpr double kStep_cm3 = 0.001;
  Run run(1.00, 20.0);
  run.aliquot();
  run.books().transfer(Account::indicator_bottle, Account::flask_rest, volume_quanta(0.12));
  run.read_initial(1.00);
  run.run_in(19.95);
  REQUIRE(change_seen(run) < kFirstVisibleChange);
  double ran_cm3 = 19.95;
  while (change_seen(run) < kFirstVisibleChange && ran_cm3 < 20.5) {
    run.run_in(kStep_cm3);
    ran_cm3 += kStep_cm3;
  }
  const TitreBreakdown found = run.finish(21.0, 21.0);
  CHECK_NEAR(found.of(Cause::overshoot), 0.5 * kStep_cm3, 0.5 * kStep_cm3);
  CHECK_NEAR(found.of(Cause::indicator_blank) + found.of(Cause::overshoot), ran_cm3 - 20.0, kExact_cm3);
  run.run_in(0.05);  // a drop more is overshoot
  const TitreBreakdown later = run.finish(21.0, 21.0);
  CHECK_NEAR(later.of(Cause::overshoot) - found.of(Cause::overshoot), 0.05, 1e-4);
}

TEST_CASE("a funnel that drips into a burette full to the rim changes nothing: what drips in runs over") {
  Run run(1.00, 21.40);
  run.books().transfer(Account::titrant_bottle, Account::funnel, volume_quanta(0.15));
  run.aliquot();
  run.read_initial(1.00);
  run.books().transfer(Account::funnel, Account::column, volume_quanta(0.15));
  run.books().transfer(Account::column, Account::bench_top, volume_quanta(0.15));
  run.run_in(21.40);
  check_only(run.finish(22.40, 22.40), Cause::rounding, 0.0);
}

TEST_CASE("a drop in the air at a reading counts with what hangs") {
  Run run(1.00, 21.36);
  run.aliquot();
  run.read_initial(1.00);
  run.run_in(21.36);
  run.books().transfer(Account::column, Account::pendant_drop, volume_quanta(0.04));
  run.books().transfer(Account::pendant_drop, Account::in_flight, volume_quanta(0.04));
  check_only(run.finish(22.40, 22.40), Cause::hanging_drop, 0.04);
}

TEST_CASE("titrant poured away with an earlier flask is missed, and no residue") {
  Run run(1.00, 20.0);
  run.read_initial(1.00);
  run.run_in(1.40);
  run.story.poured_away = into_the_flask(run.books()) - into_the_flask(run.initial.bench.ledger);
  run.books().transfer(Account::flask_landing, Account::sink, volume_quanta(1.40));
  run.aliquot();
  run.run_in(20.0);
  check_only(run.finish(22.40, 22.40), Cause::missed_flask, 1.40);
}

TEST_CASE("the trade accepts the nearest 0.05 and the 5 between two marks") {
  CHECK(reading_allowed(21.40, 21.42));
  CHECK(reading_allowed(21.45, 21.42));
  CHECK(reading_allowed(21.45, 21.48));
  CHECK_FALSE(reading_allowed(21.40, 21.44));
  CHECK_FALSE(reading_allowed(21.45, 21.399));
  CHECK_FALSE(reading_allowed(21.42, 21.42));
  CHECK_FALSE(reading_allowed(21.50, 21.42));
}

}  // namespace
}  // namespace halfdrop
