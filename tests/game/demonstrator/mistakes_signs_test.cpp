// Which way each mistake pushes titre and result, against the trade's own table, with the unknown in the
// flask and with the unknown in the burette; and which criterion sees it.

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "game/demonstrator/mistakes.h"
#include "game/marking/calculation.h"
#include "tests/support/against_faultless.h"
#include "tests/support/json.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"
#include "tests/support/rounds.h"

namespace halfdrop {
namespace {

using test::AgainstFaultless;

/// Which way the reported concentration goes: down, either way, up.
enum class Goes { down = -1, either = 0, up = 1 };

struct InPractice {
  std::string_view mistake;
  int row;  ///< of the table that the signs are typed in from
  Goes unknown_in_flask, unknown_in_burette;
  std::string_view criterion;  ///< that sees it; empty: no one who watches can
};

/// See its own test.
constexpr std::string_view kBenchDisagrees = "too-much-indicator";

/// Signs typed in from our notes on practice, B, column "F / B": what each of 55 mistakes does to the
/// concentration when the unknown is in the flask (F) and in the burette (B). From memory of the trade; row
/// 25 adds that an eye below reverses the sign.
constexpr std::array kInPractice = {
    InPractice{"washings-left-out", 1, Goes::up, Goes::up, "washings-in"},
    InPractice{"flask-overfilled", 2, Goes::up, Goes::up, "made-to-mark"},
    InPractice{"top-on-the-mark", 3, Goes::down, Goes::down, "made-to-mark"},
    InPractice{"flask-not-inverted", 4, Goes::either, Goes::either, "turned-over"},
    InPractice{"old-alkali-trusted", 6, Goes::up, Goes::up, ""},
    InPractice{"burette-not-rinsed", 7, Goes::up, Goes::down, "burette-rinsed"},
    InPractice{"burette-rinsed-with-sample", 8, Goes::up, Goes::down, "burette-rinsed"},
    InPractice{"pipette-not-rinsed", 9, Goes::down, Goes::up, "pipette-rinsed"},
    InPractice{"flask-rinsed-with-sample", 10, Goes::up, Goes::down, "flask-clean"},
    InPractice{"flask-not-rinsed", 12, Goes::down, Goes::up, "flask-clean"},
    InPractice{"last-drop-blown-out", 13, Goes::up, Goes::down, "last-drop-left"},
    InPractice{"pipette-held-free", 14, Goes::down, Goes::up, "pipette-drained"},
    InPractice{"pipette-not-drained", 14, Goes::down, Goes::up, "pipette-drained"},
    InPractice{"line-read-from-below", 15, Goes::up, Goes::down, "pipette-to-line"},
    InPractice{"line-read-from-above", 15, Goes::down, Goes::up, "pipette-to-line"},
    InPractice{"air-drawn-up", 16, Goes::down, Goes::up, "pipette-to-line"},
    InPractice{"pipette-not-wiped", 19, Goes::up, Goes::down, "pipette-wiped"},
    InPractice{"bubble-left-in-jet", 20, Goes::up, Goes::down, "jet-filled"},
    InPractice{"jet-not-filled", 21, Goes::up, Goes::down, "jet-filled"},
    InPractice{"jet-filled-after-reading", 21, Goes::up, Goes::down, "jet-filled"},
    InPractice{"funnel-left-in", 22, Goes::down, Goes::up, "funnel-out"},
    InPractice{"drop-left-at-start", 23, Goes::down, Goes::up, "hanging-drop"},
    InPractice{"drop-left-at-end", 24, Goes::up, Goes::down, "hanging-drop"},
    InPractice{"eye-too-high-at-start", 25, Goes::up, Goes::down, "eye-level"},
    InPractice{"eye-too-low-at-start", 25, Goes::down, Goes::up, "eye-level"},
    InPractice{"eye-too-high-at-end", 25, Goes::down, Goes::up, "eye-level"},
    InPractice{"eye-too-low-at-end", 25, Goes::up, Goes::down, "eye-level"},
    InPractice{"eye-never-moves", 25, Goes::down, Goes::up, "eye-level"},
    InPractice{"top-read-at-start", 26, Goes::either, Goes::either, "readings-right"},
    InPractice{"top-read-at-end", 26, Goes::either, Goes::either, "readings-right"},
    InPractice{"scale-read-upwards", 27, Goes::either, Goes::either, "readings-right"},
    InPractice{"zero-not-read", 28, Goes::either, Goes::either, "readings-right"},
    InPractice{"read-at-once", 30, Goes::up, Goes::down, "waited"},
    InPractice{"tap-leaks", 31, Goes::up, Goes::down, "tap-tight"},
    InPractice{"tap-opened-too-soon", 31, Goes::up, Goes::down, "into-the-flask"},
    InPractice{"flask-off-line", 31, Goes::up, Goes::down, "into-the-flask"},
    InPractice{"started-above-zero", 32, Goes::down, Goes::up, "readings-right"},
    InPractice{"topped-up-in-run", 33, Goes::either, Goes::either, "not-refilled"},
    InPractice{"overshoot", 36, Goes::up, Goes::down, "drop-by-drop"},
    InPractice{"stopped-at-flash", 37, Goes::down, Goes::up, "endpoint-reached"},
    InPractice{"fade-chased", 38, Goes::up, Goes::down, "fade-let-be"},
    InPractice{"no-swirling", 39, Goes::either, Goes::either, "swirled"},
    InPractice{"drops-left-on-wall", 40, Goes::up, Goes::down, "washed-down"},
    InPractice{"swirled-too-hard", 41, Goes::down, Goes::up, "nothing-over-the-rim"},
    InPractice{kBenchDisagrees, 44, Goes::up, Goes::down, "indicator"},
    InPractice{"no-tile", 45, Goes::up, Goes::down, "white-tile"},
    InPractice{"shade-differs", 45, Goes::up, Goes::down, "same-shade"}};

const InPractice* in_practice(std::string_view mistake) {
  const auto found = std::find_if(kInPractice.begin(), kInPractice.end(),
                                  [&](const InPractice& row) { return row.mistake == mistake; });
  return found == kInPractice.end() ? nullptr : &*found;
}

/// Twice the step of a reading: from here on the figures on the paper must show it, whatever rounding does.
constexpr double kShowsOnPaper_cm3 = 0.1;

void check_sign(double change, int sign) {
  if (sign != 0) CHECK(change * sign > 0.0);
}

/// The named cause is the one that changed most, and it moved the titre the way that is listed.
void check_titre(const AgainstFaultless& bench, const Mistake& mistake, const MarkedAttempt& wrong) {
  CHECK(cause_id(bench.changed_most(wrong)) == cause_id(*mistake.cause));
  const double mean_cm3 = bench.change_of(*mistake.cause, wrong).mean_cm3;
  check_sign(mean_cm3, mistake.titre == "high" ? 1 : mistake.titre == "low" ? -1 : 0);
}

/// On average over the titres that count.
double counted_cm3(const MarkedAttempt& marked, Cause cause) {
  double sum_cm3 = 0.0;
  int runs = 0;
  for (const TitreRow& row : marked.titres) {
    if (!row.used || !row.breakdown) continue;
    sum_cm3 += row.breakdown->of(cause);
    ++runs;
  }
  REQUIRE(runs > 0);
  return sum_cm3 / runs;
}

/// The cause's change alone, put through the level's own calculation; and where it is large in the titres
/// that count, the result as it was reported.
void check_result(const AgainstFaultless& bench, Cause cause, const MarkedAttempt& wrong, Goes expected) {
  const MarkedAttempt& right = bench.right();
  const double mean_cm3 = *right.mean_titre_cm3;
  const double changed_cm3 = mean_cm3 + bench.change_of(cause, wrong).mean_cm3;
  const double change =
      *result_from_mean(bench.level(), changed_cm3) - *result_from_mean(bench.level(), mean_cm3);
  check_sign(change, static_cast<int>(expected));
  if (std::fabs(counted_cm3(wrong, cause) - counted_cm3(right, cause)) < kShowsOnPaper_cm3) return;
  REQUIRE(wrong.reported.has_value());
  check_sign(*wrong.reported - *right.reported, static_cast<int>(expected));
}

/// As the catalogue says: the middle half of ten seeds lies within a quarter of the listed size.
void check_size(const AgainstFaultless& bench, const Mistake& mistake, const MarkedAttempt& wrong) {
  const double size_cm3 = std::fabs(bench.change_of(*mistake.cause, wrong).largest_cm3);
  const double share = mistake.titre == "either" ? 1.0 : 0.25;
  CHECK(size_cm3 > mistake.typical_cm3 / 2.0);
  CHECK_NEAR(size_cm3, mistake.typical_cm3, 0.02 + share * mistake.typical_cm3);
}

/// Mistakes that reach a titre and have room in the level, one of each cause or all. Sanitized three: the
/// rest would find no other fault of memory.
std::vector<const Mistake*> to_try(const Level& level, bool all) {
  std::vector<const Mistake*> found;
  for (const Mistake& mistake : mistakes()) {
    if (!mistake.cause || !has_room_for(level, mistake.name) || mistake.name == kBenchDisagrees) continue;
    const auto same_cause = [&](const Mistake* other) { return other->cause == mistake.cause; };
    if (all || std::none_of(found.begin(), found.end(), same_cause)) found.push_back(&mistake);
  }
  if (test::kSanitized) found.resize(3);
  return found;
}

/// Of the shelf, its pipette left to practised hands. What a missing tile costs is a part-drop or nothing, as
/// the drops happen to fall, and the time that a pipette takes moves that: with seed 3 nothing is left of it.
Level practised(const std::string& path) {
  const Result<Level> level = read_level(test::source_file(path));
  REQUIRE_MESSAGE(level.has_value(), test::why_not(level));
  const Result<Level> left = with_values(*level, R"({"pipette":{"by_hand":false}})");
  REQUIRE_MESSAGE(left.has_value(), test::why_not(left));
  return *left;
}

/// No level of the shelf has alkali as the standard in the flask: this one does, with an acid to be measured.
AgainstFaultless acid_by_alkali(const std::string& carbonate) {
  const std::string patch =
      R"([{"op":"replace","path":"/titrant/substance","value":"hydrochloric acid"},
          {"op":"replace","path":"/sample","value":{"substance":"sodium hydroxide",
           "label":"Sodium hydroxide, 0.1000 mol dm⁻³","mol_dm3":0.1)" +
      carbonate +
      R"(}},
          {"op":"replace","path":"/endpoint","value":{"colour":"the last pink gone","gains_colour":false}},
          {"op":"remove","path":"/constants"},
          {"op":"remove","path":"/calculation/1"},
          {"op":"replace","path":"/calculation/1","value":{"cell":"calculation/standard in aliquot",
           "prompt":"Alkali in an aliquot","unit":"mol","least_figures":4,
           "multiply":["sample_mol_dm3","aliquot_cm3"],"divide":[1000]}}])";
  const test::TemporaryFolder folder;
  const std::string alkali = test::text_of(test::source_file("levels/02-standard-alkali.json"));
  const Result<Level> level = read_level(folder.file("acid.json", test::patched(alkali, patch)));
  REQUIRE_MESSAGE(level.has_value(), test::why_not(level));
  return AgainstFaultless(*level);
}

/// Level one with its alkali weighed out as if it were a standard fit for that: the unknown is in the flask.
Level standard_in_burette() {
  const std::string patch = R"({"titrant":{"mol_dm3":0.1},"weighed_standard":{"mass_g":[0.9,1.1]},
    "calculation":[{"cell":"calculation/mean titre","prompt":"Mean","unit":"cm³","least_figures":4},
      {"cell":"calculation/alkali","prompt":"Alkali weighed out","unit":"g","least_figures":4,
       "plus":["standard/bottle before"],"minus":["standard/bottle after"]},
      {"cell":"calculation/moles","prompt":"Alkali in the mean titre","unit":"mol","least_figures":4,
       "multiply":["calculation/alkali","calculation/mean titre"],"divide":[40.00,"volumetric_flask_cm3"]},
      {"cell":"calculation/acid","prompt":"Acid, diluted","unit":"mol dm⁻³","least_figures":4,
       "multiply":["calculation/moles",1000],"divide":["aliquot_cm3"]}]})";
  const Result<Level> level = read_level(test::source_file("levels/01-spirit-vinegar.json"));
  REQUIRE_MESSAGE(level.has_value(), test::why_not(level));
  const Result<Level> made = with_values(*level, patch);
  REQUIRE_MESSAGE(made.has_value(), test::why_not(made));
  return *made;
}

}  // namespace

TEST_CASE("every mistake that reaches a titre has its row in the trade's table") {
  for (const Mistake& mistake : mistakes()) {
    if (mistake.family == "two endpoints") continue;  // two_endpoints_test
    CAPTURE(mistake.name);
    CHECK((in_practice(mistake.name) != nullptr) == mistake.cause.has_value());
  }
}

TEST_CASE(
    "unknown in the flask: each mistake changes its cause most, by its size, and pushes titre and result as "
    "in practice") {
  const AgainstFaultless bench(practised("levels/01-spirit-vinegar.json"));
  CHECK(test::unmet(bench.right()) == "");
  for (const Mistake* mistake : to_try(bench.level(), true)) {
    CAPTURE(mistake->name);
    const InPractice* const row = in_practice(mistake->name);
    REQUIRE(row != nullptr);
    // Where nothing is swirled, the fineness of the grid tells in the titre: half a player's, or all of it.
    const double fineness = mistake->name == "no-swirling" ? 0.5 * test::rounds(1, 2) : 0.25;
    const MarkedAttempt wrong = bench.performed({std::string(mistake->name)}, fineness);
    check_titre(bench, *mistake, wrong);
    check_size(bench, *mistake, wrong);
    check_result(bench, *mistake->cause, wrong, row->unknown_in_flask);
    if (!row->criterion.empty()) CHECK(!test::finding(wrong, std::string(row->criterion)).met);
  }
}

TEST_CASE(
    "unknown in the burette: each mistake changes its cause most, and pushes the result the other way") {
  const AgainstFaultless bench("levels/02-standard-alkali.json");
  CHECK(test::unmet(bench.right()) == "");
  for (const Mistake* mistake : to_try(bench.level(), test::rounds(0, 1) > 0)) {
    CAPTURE(mistake->name);
    const MarkedAttempt wrong = bench.with(mistake->name);
    check_titre(bench, *mistake, wrong);
    check_result(bench, *mistake->cause, wrong, in_practice(mistake->name)->unknown_in_burette);
  }
}

TEST_CASE(
    "worked by hand the pipette's mistakes show in its aliquot, with the unknown in flask and burette") {
  for (const char* path : {"levels/01-spirit-vinegar.json", "levels/02-standard-alkali.json"}) {
    const AgainstFaultless bench{std::string(path)};
    CHECK(test::unmet(bench.right()) == "");
    for (const Mistake* mistake : to_try(bench.level(), true)) {
      if (mistake->family != "pipetting") continue;
      CAPTURE(mistake->name);
      const InPractice& row = *in_practice(mistake->name);
      const MarkedAttempt wrong = bench.with(mistake->name);
      const bool in_flask = bench.level().unknown_in_flask;
      check_titre(bench, *mistake, wrong);
      check_result(bench, *mistake->cause, wrong, in_flask ? row.unknown_in_flask : row.unknown_in_burette);
      if (in_flask) check_size(bench, *mistake, wrong);
      const Finding& finding = test::finding(wrong, std::string(row.criterion));
      CHECK(!finding.met);
      REQUIRE(finding.cost_cm3.has_value());
      CHECK_NEAR(*finding.cost_cm3, bench.change_of(Cause::aliquot, wrong).largest_cm3, 0.005);
    }
  }
}

// What is made up is pipetted at level three. Poured into the burette it moves the titre the other way, and
// the result the same way.
TEST_CASE("a standard made up wrongly pushes the result one way, whichever vessel holds the unknown") {
  const AgainstFaultless pipetted("levels/03-standard-acid.json"), poured(standard_in_burette());
  CHECK(test::unmet(pipetted.right()) == "");
  CHECK(test::unmet(poured.right()) == "");
  for (const Mistake* mistake : to_try(pipetted.level(), true)) {
    const InPractice& row = *in_practice(mistake->name);
    if (row.row > 4) continue;
    CAPTURE(mistake->name);
    const MarkedAttempt low = pipetted.with(mistake->name), high = poured.with(mistake->name);
    check_titre(pipetted, *mistake, low);
    check_size(pipetted, *mistake, low);
    check_result(pipetted, Cause::aliquot, low, row.unknown_in_burette);
    CHECK(cause_id(poured.changed_most(high)) == "titrant_strength");
    check_result(poured, Cause::titrant_strength, high, row.unknown_in_flask);
    for (const auto* marked : {&low, &high}) {
      const Finding& finding = test::finding(*marked, std::string(row.criterion));
      CHECK(!finding.met);
      for (const TitreRow& titre : marked->titres) CHECK_NEAR(titre.breakdown->remainder_cm3, 0.0, 1e-9);
      if (!finding.cost_cm3) continue;
      const bool is_low = marked == &low;
      const auto change =
          is_low ? pipetted.change_of(Cause::aliquot, low) : poured.change_of(Cause::titrant_strength, high);
      CHECK_NEAR(*finding.cost_cm3, change.largest_cm3, 0.01);
    }
  }
}

TEST_CASE("old alkali trusted as the standard raises the result from the burette and from the flask") {
  const AgainstFaultless fresh = acid_by_alkali("");
  const MarkedAttempt old = acid_by_alkali(R"(,"carbonate_mol_dm3":0.002)").right();
  CHECK(*old.mean_titre_cm3 < *fresh.right().mean_titre_cm3 - kShowsOnPaper_cm3);
  CHECK(*old.reported > *fresh.right().reported);
  CHECK(cause_id(fresh.changed_most(old)) == cause_id(*find_mistake("old-alkali-trusted")->cause));
}

// The table has too much indicator raise the titre by 0.02 to 0.1 cm3, as what the dye itself takes up would
// where one goes on to the usual shade. The bench's endpoint is the first sight of a change (its stated
// difference from the colour before), and nine times the dye is seen sooner.
TEST_CASE("too much indicator shows its first change sooner, against the trade's table") {
  const AgainstFaultless vinegar("levels/01-spirit-vinegar.json");
  const MarkedAttempt pink = vinegar.with(kBenchDisagrees);
  CHECK(!test::finding(pink, "indicator").met);
  CHECK_NEAR(vinegar.change_of(Cause::indicator_blank, pink).mean_cm3,
             -find_mistake(kBenchDisagrees)->typical_cm3, 0.003);
  const AgainstFaultless soda("levels/04-washing-soda.json");
  const MarkedAttempt orange = soda.with(kBenchDisagrees);
  CHECK(cause_id(soda.changed_most(orange)) == "indicator_blank");
  CHECK(soda.change_of(Cause::indicator_blank, orange).mean_cm3 < -0.05);
}

}  // namespace halfdrop
