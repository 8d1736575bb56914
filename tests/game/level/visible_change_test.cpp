#include <doctest/doctest.h>

#include <cstdio>
#include <string>

#include "game/level/assets.h"
#include "physics/flask/titration.h"
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

/// 25.00 cm3 and burette both of 0.100 mol/dm3, 25 C.
Titration titration(const Pair& pair, const std::string& indicator, int drops) {
  TitrationSpec spec;
  spec.flask = shelf().substances.at(pair.flask).value;
  spec.burette = shelf().substances.at(pair.burette).value;
  spec.indicator = shelf().indicators.at(indicator).value;
  spec.drops = drops;
  return Titration(spec);
}

struct Seen {
  VisibleChange change;
  Fitness fitness;
};

std::optional<Seen> seen(const Pair& pair, const std::string& indicator, int drops = 3,
                         Viewing viewing = {}) {
  const Titration whole = titration(pair, indicator, drops);
  const auto change = whole.visible_change(viewing);
  if (!change) return std::nullopt;
  return Seen{*change, fitness_of(*change, whole.equivalences_cm3())};
}

std::string signed_cm3(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%+.3f", value);
  return text;
}

/// "first/middle/last fit", from the nearest equivalence.
std::string in_words(const std::optional<Seen>& what) {
  if (!what) return "no change";
  const double from = what->fitness.equivalence_cm3;
  return signed_cm3(what->change.first_cm3 - from) + "/" + signed_cm3(what->change.middle_cm3 - from) + "/" +
         signed_cm3(what->change.last_cm3 - from) + (what->fitness.fit ? " fit" : " unfit");
}

bool fits(const Pair& pair, const std::string& indicator) {
  const auto what = seen(pair, indicator);
  return what && what->fitness.fit;
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
                 in_words(seen(pair, name, drops)) + "; bench " +
                 in_words(seen(pair, name, drops, {Backdrop::bare_bench, Vision::normal})) + "\n";
        ++rows;
      }
      for (const Vision vision : {Vision::protan, Vision::deutan, Vision::tritan})
        table += "    " + std::string(name_of(vision)) + ", 3 drops, tile " +
                 in_words(seen(pair, name, 3, {Backdrop::white_tile, vision})) + "\n";
    }
  }
  MESSAGE(table);
  CHECK(rows == 5 * shelf().indicators.size() * 3);
}

// Common practice; textbooks' choice of indicator, e.g. OpenStax Chemistry 2e, section 14.7.
TEST_CASE("methyl orange is unfit for ethanoic acid: it changes long before equivalence") {
  const auto what = seen(kEthanoic, "methyl orange");
  REQUIRE(what.has_value());
  CHECK_FALSE(what->fitness.fit);
  CHECK(what->change.last_cm3 < 25.0 - 5.0);
}

// Common practice, as above.
TEST_CASE("phenolphthalein is unfit for ammonia: its pink goes long before equivalence") {
  const auto what = seen(kAmmonia, "phenolphthalein");
  REQUIRE(what.has_value());
  CHECK_FALSE(what->fitness.fit);
  CHECK(what->change.middle_cm3 < 25.0 - 5.0);
  CHECK(what->change.last_cm3 < 25.0 - 0.5);
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

// Common practice: phenolphthalein for the first half of sodium carbonate, methyl orange for the whole.
TEST_CASE("sodium carbonate's two equivalences each have their indicator") {
  const auto half = seen(kCarbonate, "phenolphthalein");
  const auto whole = seen(kCarbonate, "screened methyl orange");
  REQUIRE(half.has_value());
  REQUIRE(whole.has_value());
  CHECK_NEAR(half->fitness.equivalence_cm3, 25.0, 1e-9);
  CHECK_NEAR(whole->fitness.equivalence_cm3, 50.0, 1e-9);
  CHECK(whole->fitness.fit);
  CHECK(fits(kCarbonate, "methyl orange"));
}

TEST_CASE("more indicator and a white tile show the first pink sooner") {
  const auto first = [](int drops, Backdrop backdrop) {
    return seen(kEthanoic, "phenolphthalein", drops, {backdrop, Vision::normal})->change.first_cm3;
  };
  CHECK(first(20, Backdrop::white_tile) < first(3, Backdrop::white_tile));
  CHECK(first(3, Backdrop::white_tile) < first(1, Backdrop::white_tile));
  CHECK(first(3, Backdrop::white_tile) < first(3, Backdrop::bare_bench));
}

// Source: what the deficiencies are (Machado and co-workers 2009): without long-wave cones red and orange
// differ less.
TEST_CASE("who lacks long-wave cones sees methyl orange leave its yellow later") {
  const auto normal = seen(kAlkali, "methyl orange");
  const auto protan = seen(kAlkali, "methyl orange", 3, {Backdrop::white_tile, Vision::protan});
  REQUIRE(normal.has_value());
  REQUIRE(protan.has_value());
  CHECK(protan->change.first_cm3 > normal->change.first_cm3);
}

}  // namespace halfdrop::test
