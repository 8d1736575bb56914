// Mistakes that reach no titre: which criterion sees each of them, that it alone does, and what they make of
// the result.

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <map>
#include <string>

#include "game/demonstrator/mistakes.h"
#include "tests/support/against_faultless.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"
#include "tests/support/rounds.h"

namespace halfdrop {
namespace {

using test::AgainstFaultless;

struct Seen {
  std::string_view mistake;
  std::string_view unmet;  ///< every criterion that is not met, in order
  double points;           ///< lost
};

constexpr std::array kSeen = {
    Seen{"tap-open-while-filling", "tap-shut", 0.5},
    Seen{"filled-above-eye", "filled-below-eye", 0.0},
    Seen{"indicator-by-guess", "indicator", 0.5},
    Seen{"trial-in-mean", "trial-kept-out", 1.0},
    Seen{"trial-not-recorded", "table-complete", 1.0},
    Seen{"one-titre", "concordance", 2.0},
    Seen{"written-from-memory", "written-at-the-time", 1.0},
    Seen{"readings-swapped", "table-complete", 1.0},
    Seen{"three-decimals", "two-decimals, titres-subtracted", 2.0},
    Seen{"final-taken-for-titre", "titres-subtracted", 1.0},
    Seen{"dilution-left-out", "calculation/spirit vinegar", 1.0},
    Seen{"thousand-left-out", "calculation/moles of alkali", 1.0},
    Seen{"aliquot-for-titre", "calculation/moles of alkali, calculation/diluted vinegar", 2.0},
    Seen{"rounded-early", "significant-figures", 1.0},
    Seen{"every-figure-copied", "significant-figures", 1.0},
    Seen{"no-goggles", "eye-protection", 0.0},
    Seen{"goggles-off-early", "eye-protection", 0.0},
    Seen{"no-coat", "coat", 0.0},
    Seen{"spill-left", "spills-wiped", 0.0}};

const AgainstFaultless& bench_of(const std::string& level) {
  static std::map<std::string, AgainstFaultless> benches;
  return benches.try_emplace(level, level).first->second;
}

double result_over_right(const char* level, const char* mistake) {
  const AgainstFaultless& bench = bench_of(level);
  REQUIRE(has_room_for(bench.level(), mistake));
  return *bench.with(mistake).reported / *bench.right().reported;
}

double mean_titre_cm3(const char* level) { return *bench_of(level).right().mean_titre_cm3; }

constexpr const char* kVinegar = "levels/01-spirit-vinegar.json";
constexpr const char* kAlkali = "levels/02-standard-alkali.json";
constexpr const char* kAcid = "levels/03-standard-acid.json";
constexpr const char* kLimewater = "levels/07-limewater.json";
/// Results are written to three or four figures.
constexpr double kWritten = 0.004;

}  // namespace

TEST_CASE("a mistake that reaches no titre is seen by its own criteria and no other") {
  const AgainstFaultless& bench = bench_of(kVinegar);
  std::size_t played = 0;
  for (const Seen& seen : kSeen) {
    CAPTURE(seen.mistake);
    if (test::kSanitized && ++played > 2) break;  // the rest would find no other fault of memory
    REQUIRE(find_mistake(seen.mistake) != nullptr);
    const MarkedAttempt wrong = bench.with(seen.mistake);
    CHECK(test::unmet(wrong) == seen.unmet);
    CHECK_NEAR(test::points_lost(wrong), seen.points, 1e-12);
    CHECK(wrong.marks.safe == (find_mistake(seen.mistake)->family != "safety"));
  }
}

TEST_CASE("one decimal is no way to write a reading or a titre, and may be off by more than the eye was") {
  const MarkedAttempt wrong = bench_of(kVinegar).with("one-decimal");
  CHECK(!test::finding(wrong, "two-decimals").met);
  CHECK(!test::finding(wrong, "titres-subtracted").met);
  for (const TitreRow& row : wrong.titres) {
    CHECK(row.initial_text.size() - row.initial_text.find('.') == 2);
    CHECK(row.final_text.size() - row.final_text.find('.') == 2);
  }
}

TEST_CASE("without a trial the first run overshoots, and the sheet says that the trial is missing") {
  const MarkedAttempt wrong = bench_of(kVinegar).with("no-trial");
  CHECK(!test::finding(wrong, "table-complete").met);
  CHECK(!test::finding(wrong, "drop-by-drop").met);
  CHECK(test::find(wrong, "trial-kept-out")->met);
}

TEST_CASE("a hurried second run leaves the titres apart, or a figure that was changed so that they agree") {
  const AgainstFaultless& bench = bench_of(kVinegar);
  const MarkedAttempt apart = bench.with("not-concordant");
  CHECK(!test::finding(apart, "concordance").met);
  CHECK(test::finding(apart, "nothing-overwritten").met);
  CHECK_NEAR(*apart.mean_titre_cm3 - *bench.right().mean_titre_cm3,
             find_mistake("not-concordant")->typical_cm3, 0.06);
  const MarkedAttempt adjusted = bench.with("titres-adjusted");
  CHECK(test::finding(adjusted, "concordance").met);
  CHECK(!test::finding(adjusted, "nothing-overwritten").met);
  CHECK(!test::finding(adjusted, "readings-right").met);
  CHECK_NEAR(*test::titre(adjusted, "2").recorded_cm3, *test::titre(adjusted, "1").recorded_cm3, 1e-9);
}

// Our notes on practice, B 49: aliquot and titre swapped gives the result inverted, a ratio left out is a
// factor of 2, a dilution one of 10. Each way round by hand, with c = titrant x titre / aliquot and its
// inverse.

TEST_CASE("what is left out of the working with the unknown in the flask multiplies the result by that") {
  const double over_aliquot = mean_titre_cm3(kVinegar) / 25.0;
  CHECK_NEAR(result_over_right(kVinegar, "dilution-left-out"), 0.1, 0.1 * kWritten);
  CHECK_NEAR(result_over_right(kVinegar, "thousand-left-out"), 1000.0, 1000.0 * kWritten);
  CHECK_NEAR(result_over_right(kVinegar, "aliquot-for-titre") * over_aliquot * over_aliquot, 1.0, kWritten);
  CHECK_NEAR(result_over_right(kLimewater, "ratio-left-out"), 2.0, 2.0 * kWritten);
}

TEST_CASE("with the unknown in the burette the same slips go the other way") {
  const double over_aliquot = mean_titre_cm3(kAlkali) / 25.0;
  CHECK_NEAR(result_over_right(kAlkali, "thousand-left-out"), 0.001, 0.001 * kWritten);
  CHECK_NEAR(result_over_right(kAlkali, "aliquot-for-titre") / (over_aliquot * over_aliquot), 1.0, kWritten);
  CHECK_NEAR(result_over_right(kAcid, "ratio-left-out"), 0.5, 0.5 * kWritten);
}

TEST_CASE("a level has room for what its working and its liquids let one do wrong") {
  const Level vinegar = test::good_level();
  CHECK(has_room_for(vinegar, "dilution-left-out"));
  CHECK(!has_room_for(vinegar, "ratio-left-out"));
  const Level acid = read_level(test::source_file(kAcid)).value();
  CHECK(!has_room_for(acid, "dilution-left-out"));
  CHECK(has_room_for(acid, "ratio-left-out"));
  CHECK(!has_room_for(acid, "old-alkali-trusted"));
  const Level limewater = read_level(test::source_file(kLimewater)).value();
  CHECK(has_room_for(vinegar, "fade-chased"));
  Level dry = vinegar, wet = vinegar;
  dry.burette.wet_cm3 = 0.0;
  wet.burette.wet_cm3 = 0.3;
  CHECK(has_room_for(wet, "burette-not-rinsed"));
  CHECK(!has_room_for(vinegar, "filled-above-eye"));
  Level ruled = vinegar;
  ruled.filling_below_eye = true;
  CHECK(has_room_for(ruled, "filled-above-eye"));
  CHECK(!has_room_for(dry, "burette-not-rinsed"));
  CHECK(has_room_for(dry, "burette-rinsed-with-sample"));
  CHECK(!has_room_for(limewater, "fade-chased"));
}

}  // namespace halfdrop
