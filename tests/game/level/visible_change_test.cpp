#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <string>

#include "game/level/assets.h"
#include "physics/flask/visible_change.h"
#include "tests/support/good_level.h"
#include "tests/support/near.h"
#include "tests/support/shelf.h"

namespace halfdrop::test {
namespace {

struct Pair {
  const char* flask;
  const char* burette;
};

constexpr Pair kPairs[] = {{"hydrochloric acid", "sodium hydroxide"},
                           {"ethanoic acid", "sodium hydroxide"},
                           {"sodium hydroxide", "hydrochloric acid"},
                           {"ammonia", "hydrochloric acid"},
                           {"sodium carbonate", "hydrochloric acid"}};

/// 25.00 cm3 in the flask, 25 C.
Titration titration(const Pair& pair, const std::string& indicator, int drops = 3, double flask_mol_dm3 = 0.1,
                    double burette_mol_dm3 = 0.0) {
  TitrationSpec spec;
  spec.flask = shelf().substances.at(pair.flask).value;
  spec.burette = shelf().substances.at(pair.burette).value;
  spec.flask_mol_dm3 = flask_mol_dm3;
  spec.burette_mol_dm3 = burette_mol_dm3 > 0.0 ? burette_mol_dm3 : flask_mol_dm3;
  spec.indicator = shelf().indicators.at(indicator).value;
  spec.drops = drops;
  return Titration(spec);
}

std::vector<VisibleChange> all_seen(const Pair& pair, const std::string& indicator, int drops = 3,
                                    Viewing viewing = {}) {
  return visible_changes(titration(pair, indicator, drops), viewing);
}

VisibleChange seen(const Pair& pair, const std::string& indicator, int drops = 3, Viewing viewing = {}) {
  const auto changes = all_seen(pair, indicator, drops, viewing);
  REQUIRE_FALSE(changes.empty());
  return best_of(changes);
}

std::string signed_cm3(double value) {
  char text[32];
  const double thousandths = std::round(value * 1000.0);
  std::snprintf(text, sizeof text, "%+.3f", thousandths == 0.0 ? 0.0 : thousandths / 1000.0);
  return text;
}

/// Of each change "first/middle/last fit", from the nearest equivalence.
std::string in_words(const std::vector<VisibleChange>& changes) {
  if (changes.empty()) return "no change";
  std::string words;
  for (const VisibleChange& change : changes) {
    const double from = change.nearest.volume_cm3;
    words += (words.empty() ? "" : ", then ") + signed_cm3(change.first_cm3 - from) + "/" +
             signed_cm3(change.middle_cm3 - from) + "/" + signed_cm3(change.last_cm3 - from) +
             (change.fit == Fit::fits ? " fit" : " unfit");
  }
  return words;
}

bool fits(const Pair& pair, const std::string& indicator) {
  const auto changes = all_seen(pair, indicator);
  return !changes.empty() && best_of(changes).fit == Fit::fits;
}

constexpr const Pair& kHydrochloric = kPairs[0];
constexpr const Pair& kEthanoic = kPairs[1];
constexpr const Pair& kAlkali = kPairs[2];
constexpr const Pair& kAmmonia = kPairs[3];
constexpr const Pair& kCarbonate = kPairs[4];

}  // namespace

TEST_CASE("the table of visible changes: indicator, acid, tile or bench, drops, colour vision") {
  std::string table =
      "first/middle/last sight of the change, cm3 past the nearest equivalence; 25.00 cm3 and "
      "burette 0.100 mol/dm3, 25 C, CIEDE2000 3\n";
  std::size_t rows = 0;
  for (const Pair& pair : kPairs) {
    table += std::string(pair.flask) + " with " + pair.burette + "\n";
    for (const auto& [name, entry] : shelf().indicators) {
      for (const int drops : {1, 3, 20}) {
        table += "  " + name + ", " + std::to_string(drops) + " drops: tile " +
                 in_words(all_seen(pair, name, drops)) + "; bench " +
                 in_words(all_seen(pair, name, drops, {Backdrop::bare_bench, Vision::normal})) + "\n";
        ++rows;
      }
      for (const Vision vision : {Vision::protan, Vision::deutan, Vision::tritan}) {
        for (const int drops : {1, 3, 20}) {
          table += "    " + std::string(name_of(vision)) + ", " + std::to_string(drops) + " drops: tile " +
                   in_words(all_seen(pair, name, drops, {Backdrop::white_tile, vision})) + "; bench " +
                   in_words(all_seen(pair, name, drops, {Backdrop::bare_bench, vision})) + "\n";
        }
      }
    }
  }
  MESSAGE(table);
  CHECK(rows == 5 * shelf().indicators.size() * 3);
  CHECK(table.find("-0.000") == std::string::npos);
}

// Source: common practice, the pairs that every textbook has with their colours; 0.05 cm3 is a drop.
TEST_CASE("known pairs of the table stand where textbooks have them, in sign and order of magnitude") {
  const auto past_cm3 = [](const VisibleChange& change, double volume_cm3) {
    return volume_cm3 - change.nearest.volume_cm3;
  };
  // The first pink is a drop's work either side, and deepens past the equivalence.
  const VisibleChange pink = seen(kEthanoic, "phenolphthalein");
  CHECK(pink.turn == Turn::gains_colour);
  CHECK(pink.endpoint == Sight::first);
  CHECK_NEAR(past_cm3(pink, pink.endpoint_cm3()), 0.0, 0.05);
  CHECK(past_cm3(pink, pink.last_cm3) > 0.0);
  CHECK(past_cm3(pink, pink.last_cm3) < 0.25);
  // Methyl orange is yellow long before a weak acid is used up.
  const VisibleChange yellow = seen(kEthanoic, "methyl orange");
  CHECK(past_cm3(yellow, yellow.last_cm3) < -5.0);
  CHECK(past_cm3(yellow, yellow.first_cm3) < -20.0);
  // In a strong acid it is yellow just before the end, in alkali orange just after.
  const VisibleChange from_red = seen(kHydrochloric, "methyl orange");
  CHECK(past_cm3(from_red, from_red.last_cm3) < 0.0);
  CHECK_NEAR(past_cm3(from_red, from_red.last_cm3), 0.0, 0.1);
  const VisibleChange from_yellow = seen(kAlkali, "methyl orange");
  CHECK(past_cm3(from_yellow, from_yellow.first_cm3) > 0.0);
  CHECK_NEAR(past_cm3(from_yellow, from_yellow.first_cm3), 0.0, 0.1);
  // Methyl red spans the equivalence of ammonia; phenolphthalein has gone colourless long before it.
  const VisibleChange red = seen(kAmmonia, "methyl red");
  CHECK_NEAR(past_cm3(red, red.first_cm3), 0.0, 0.1);
  CHECK_NEAR(past_cm3(red, red.last_cm3), 0.0, 0.1);
  CHECK(past_cm3(red, red.first_cm3) < past_cm3(red, red.last_cm3));
  const VisibleChange gone = seen(kAmmonia, "phenolphthalein");
  CHECK(past_cm3(gone, gone.last_cm3) < -1.0);
  // Strong against strong any of the middle indicators is right to a drop.
  for (const char* indicator : {"bromothymol blue", "phenol red", "phenolphthalein"}) {
    CAPTURE(indicator);
    const VisibleChange strong = seen(kHydrochloric, indicator);
    CHECK_NEAR(past_cm3(strong, strong.endpoint_cm3()), 0.0, 0.05);
  }
  CHECK(seen(kCarbonate, "methyl orange").nearest.volume_cm3 > 45.0);
}

// Common practice; textbooks' choice of indicator, e.g. OpenStax Chemistry 2e, section 14.7.
TEST_CASE("methyl orange is unfit for ethanoic acid: it changes long before equivalence") {
  const VisibleChange change = seen(kEthanoic, "methyl orange");
  CHECK(change.fit == Fit::too_far);
  CHECK(change.last_cm3 < 25.0 - 5.0);
}

// Common practice, as above.
TEST_CASE("phenolphthalein is unfit for ammonia: its pink goes long before equivalence") {
  const VisibleChange change = seen(kAmmonia, "phenolphthalein");
  CHECK(change.fit == Fit::too_far);
  CHECK(change.turn == Turn::loses_colour);
  CHECK(change.middle_cm3 < 25.0 - 5.0);
  CHECK(change.last_cm3 < 25.0 - 0.5);
}

// Common practice, as above.
TEST_CASE("the indicators that are taught come out fit") {
  CHECK(fits(kEthanoic, "phenolphthalein"));
  CHECK(fits(kHydrochloric, "phenolphthalein"));
  CHECK(fits(kHydrochloric, "bromothymol blue"));
  CHECK(fits(kAlkali, "phenolphthalein"));
  CHECK(fits(kAlkali, "methyl orange"));
  CHECK(fits(kAlkali, "methyl red"));
  CHECK(fits(kHydrochloric, "methyl orange"));
  CHECK(fits(kAmmonia, "methyl red"));
  CHECK(fits(kAmmonia, "bromocresol green"));
  CHECK_FALSE(fits(kEthanoic, "methyl red"));
  CHECK_FALSE(fits(kAmmonia, "thymolphthalein"));
}

// Common practice: what textbooks pair for other strengths and acids, with the colour that they stop at.
TEST_CASE("textbook pairs fit at other strengths too, at the first sight of the other colour") {
  struct Taught {
    Pair pair;
    double flask_mol_dm3, burette_mol_dm3;
    const char* indicator;
    std::size_t equivalence;
  };
  const Taught taught[] = {{{"sodium hydroxide", "hydrochloric acid"}, 0.05, 0.05, "methyl orange", 0},
                           {{"hydrochloric acid", "sodium hydroxide"}, 0.05, 0.05, "methyl orange", 0},
                           {{"sulfuric acid", "sodium hydroxide"}, 0.05, 0.1, "methyl orange", 1},
                           {{"sodium hydroxide", "sulfuric acid"}, 0.1, 0.05, "methyl orange", 0},
                           {{"calcium hydroxide", "hydrochloric acid"}, 0.02, 0.04, "methyl orange", 0},
                           {{"calcium hydroxide", "hydrochloric acid"}, 0.02, 0.04, "phenolphthalein", 0},
                           {{"phosphoric acid", "sodium hydroxide"}, 0.1, 0.1, "thymolphthalein", 1},
                           {{"phosphoric acid", "sodium hydroxide"}, 0.1, 0.1, "bromocresol green", 0},
                           {{"oxalic acid", "sodium hydroxide"}, 0.05, 0.1, "phenolphthalein", 1},
                           {{"borax", "hydrochloric acid"}, 0.05, 0.1, "methyl red", 0}};
  for (const auto& [pair, flask, burette, indicator, equivalence] : taught) {
    CAPTURE(pair.flask);
    CAPTURE(indicator);
    const Titration whole = titration(pair, indicator, 3, flask, burette);
    const auto changes = visible_changes(whole, {});
    REQUIRE_FALSE(changes.empty());
    const VisibleChange& best = best_of(changes);
    CHECK(best.fit == Fit::fits);
    CHECK_NEAR(best.nearest.volume_cm3, whole.equivalences().at(equivalence).volume_cm3, 1e-9);
  }
}

// Common practice: a colour that has been going since long before is hard to call, though its last trace goes
// where it should.
TEST_CASE("a change that is drawn out is gradual, whichever of its sights is the endpoint") {
  const VisibleChange last = seen(kAmmonia, "phenol red");
  CHECK(last.endpoint == Sight::last);
  CHECK(last.gradual());
  CHECK(seen(kHydrochloric, "methyl orange").fit == Fit::fits);
  CHECK(seen(kHydrochloric, "methyl orange").gradual());
  CHECK(seen(kAlkali, "methyl orange").endpoint == Sight::first);
  CHECK(seen(kAlkali, "methyl orange").gradual());
  CHECK(seen(kCarbonate, "methyl orange").endpoint == Sight::middle);
  CHECK(seen(kCarbonate, "methyl orange").gradual());
  CHECK_FALSE(seen(kEthanoic, "phenolphthalein").gradual());
  CHECK_FALSE(seen(kHydrochloric, "bromothymol blue").gradual());
}

// Source: Vogel, Quantitative Inorganic Analysis, from memory: the first equivalence of sodium carbonate is
// not sharp, phenolphthalein's pink fades slowly towards it and is about a part in a hundred off; for the
// whole, methyl orange or its screened kind.
TEST_CASE("sodium carbonate's first equivalence is drawn out, its second has an indicator that fits") {
  const VisibleChange half = seen(kCarbonate, "phenolphthalein");
  CHECK(half.turn == Turn::loses_colour);
  CHECK_NEAR(half.nearest.volume_cm3, 25.0, 1e-9);
  CHECK(half.gradual());
  CHECK_NEAR(half.endpoint_cm3(), 25.0, 0.02 * 25.0);
  for (const char* indicator : {"methyl orange", "screened methyl orange"}) {
    CAPTURE(indicator);
    const VisibleChange whole = seen(kCarbonate, indicator);
    CHECK_NEAR(whole.nearest.volume_cm3, 50.0, 1e-9);
    CHECK(whole.fit == Fit::fits);
  }
}

// Source: the indicator's two handbook ranges, 1.2 to 2.8 and 8.0 to 9.6; strong acid against strong alkali
// jumps from about 3 to 11 (textbook curve).
TEST_CASE("thymol blue changes twice in a strong acid: red to yellow early, yellow to blue where it should") {
  const auto changes = all_seen(kHydrochloric, "thymol blue");
  REQUIRE(changes.size() == 2);
  CHECK(changes[0].fit == Fit::too_far);
  CHECK(changes[0].last_cm3 < 25.0 - 0.25);
  CHECK(changes[1].fit == Fit::fits);
  CHECK(changes[1].first_cm3 > 25.0 - 0.05);
  CHECK(best_of(changes).first_cm3 == changes[1].first_cm3);
  const auto back = all_seen(kAlkali, "thymol blue");
  REQUIRE(back.size() == 2);
  CHECK(back[0].fit == Fit::fits);
  CHECK(back[1].fit == Fit::too_far);
}

// Source: common practice: an acid whose steps lie close together has no break between them to see.
TEST_CASE("an equivalence without a jump has no indicator, wherever the colour may change") {
  const Pair citric{"citric acid", "sodium hydroxide"};
  const auto changes = visible_changes(titration(citric, "methyl red", 3, 0.02), {});
  REQUIRE(changes.size() == 1);
  CHECK_NEAR(changes[0].nearest.volume_cm3, 50.0, 1e-9);
  CHECK(changes[0].nearest.jump_ph < kLeastJump);
  CHECK(changes[0].fit != Fit::fits);
  CHECK(fits(citric, "phenolphthalein"));
}

TEST_CASE("more indicator and a white tile show the first pink sooner") {
  const auto first = [](int drops, Backdrop backdrop) {
    return seen(kEthanoic, "phenolphthalein", drops, {backdrop, Vision::normal}).first_cm3;
  };
  CHECK(first(20, Backdrop::white_tile) < first(3, Backdrop::white_tile));
  CHECK(first(3, Backdrop::white_tile) < first(1, Backdrop::white_tile));
  CHECK(first(3, Backdrop::white_tile) < first(3, Backdrop::bare_bench));
}

// Source: what the deficiencies are (Machado and co-workers 2009): without long-wave cones red and orange
// differ less.
TEST_CASE("who lacks long-wave cones sees methyl orange leave its yellow later") {
  const VisibleChange normal = seen(kAlkali, "methyl orange");
  const VisibleChange protan = seen(kAlkali, "methyl orange", 3, {Backdrop::white_tile, Vision::protan});
  CHECK(protan.first_cm3 > normal.first_cm3);
}

}  // namespace halfdrop::test
