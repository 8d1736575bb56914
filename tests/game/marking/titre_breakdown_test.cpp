#include "physics/eye/sight_line.h"
#include "tests/game/marking/by_the_books.h"

namespace halfdrop {
namespace {

using namespace test;

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
  constexpr double kAbove_mm = 20.0;
  const double shift_cm3 = -apparent_reading_cm3(sight_geometry(Run(0.0, 1.0).spec), kAbove_mm, 0.0);
  // Snell by hand: glass and liquid shift the axis by 0.310 mm, the tangent to the bowl passes it 0.011
  // lower.
  CHECK_NEAR(shift_cm3, (0.310 - 0.011) / 11.0, 2e-4);
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

TEST_CASE(
    "titrant left on the burette's wall makes the titre high, as far as the scale does not allow for it") {
  Run run(1.00, 21.36);
  run.aliquot();
  run.read_initial(1.00);
  run.run_in(21.36);
  run.books().transfer(Account::column, Account::wall_film, volume_quanta(0.04));
  SUBCASE("a scale that allows for none") { check_only(run.finish(22.40, 22.40), Cause::film, 0.04); }
  SUBCASE("a scale that allows for it has the meniscus stand higher, and reads what was delivered") {
    run.spec.burette.film_linear_cm3 = 0.04 * 50.0 / 21.36;
    const TitreBreakdown found = run.finish(22.40, 22.40);
    CHECK_NEAR(found.of(Cause::film), 0.0, 1e-3);
    CHECK_NEAR(found.remainder_cm3, 0.0, kExact_cm3);
  }
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
    run.let_drop_fall(volume_quanta(0.04), Account::flask);
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
    washed.books().transfer(Account::wash_bottle, Account::flask, volume_quanta(5.0));
    washed.books().transfer(Account::flask_wall, Account::flask, volume_quanta(0.10));
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
    run.books().transfer(Account::sample_bottle, Account::flask, volume_quanta(0.50));
    run.aliquot();
    run.read_initial(1.00);
    run.run_in(20.40);
    check_only(run.finish(21.40, 21.40), Cause::flask_residue, 0.40);
  }
  SUBCASE("heel of an overshot run") {
    Run run(1.00, 20.0);
    run.books().transfer(Account::titrant_bottle, Account::flask, volume_quanta(0.10));
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
  run.story.lost = run.books().transfer(Account::flask, Account::bench_top, volume_quanta(0.25));
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
  run.books().transfer(Account::flask, Account::sink, volume_quanta(1.40));
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
