#pragma once
// One run on a bench without faults, moved through the books by hand so that every amount is known.

#include <doctest/doctest.h>

#include <string>

#include "game/marking/titre_breakdown.h"
#include "game/session/view.h"
#include "physics/burette/column.h"
#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"
#include "tests/support/near.h"

namespace halfdrop::test {

inline constexpr double kAliquot_cm3 = 25.0;
inline constexpr double kExact_cm3 = 1e-9;

inline BenchSpec perfect_bench() {
  BenchSpec spec;
  spec.titrant.substance = {"alkali", {{"Na+", 1}}, {}};
  spec.titrant.label_mol_dm3 = spec.titrant.true_mol_dm3 = 0.1;
  spec.sample.substance = {"acid", {}, {{1, {4.756, 0, 0}, 0}}};
  spec.indicator.system = {2, {9.05, 9.50, 0}, 0};
  spec.indicator.bands = {{2, 552.0, 28.0, 3.0e4}};
  spec.indicator.stock_mol_dm3 = 0.00314;
  spec.pipette.true_cm3 = kAliquot_cm3;
  spec.air = false;
  settle(spec);
  return spec;
}

inline double mm_level_with(double reading_cm3) { return -11.0 * reading_cm3; }

/// One run, moved through the books by hand so that every amount is known.
struct Run {
  BenchSpec spec = perfect_bench();
  BenchState bench;
  ReadingMoment initial, final;
  FlaskStory story;

  /// The meniscus stands at `initial_cm3`, the jet is full, and `ideal_cm3` of good titrant are needed.
  Run(double initial_cm3, double ideal_cm3) {
    spec.sample.true_mol_dm3 = spec.sample.label_mol_dm3 = 0.1 * ideal_cm3 / kAliquot_cm3;
    spec.burette.film_linear_cm3 = spec.burette.film_bow_cm3 =
        0.0;  // nothing clings here unless a test says so
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
    books().move(Account::pipette, Account::flask, all);
    story.from_pipette += all;
  }

  ReadingMoment read(double written_cm3) const {
    const ReadingSeen seen = reading_seen(spec, bench);
    return {written_cm3, seen.bottom_cm3, seen.edge_cm3, bench};
  }
  void read_initial(double written_cm3) { initial = read(written_cm3); }

  void run_in(double volume_cm3, Account target = Account::flask) {
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

inline void check_only(const TitreBreakdown& found, Cause expected, double size_cm3) {
  CHECK_NEAR(found.remainder_cm3, 0.0, kExact_cm3);
  for (std::size_t i = 0; i < kCauses; ++i) {
    const auto cause = static_cast<Cause>(i);
    CAPTURE(std::string(cause_id(cause)));
    CHECK_NEAR(found.of(cause), cause == expected ? size_cm3 : 0.0, kExact_cm3);
  }
  CHECK_NEAR(found.recorded_cm3 - found.ideal_cm3, size_cm3, kExact_cm3);
}

}  // namespace halfdrop::test
