// The shelf's hazard limits against the regulation's, typed in here a second time.

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <tuple>
#include <vector>

#include "tests/support/near.h"
#include "tests/support/shelf.h"

namespace halfdrop::test {
namespace {

/// One statement in one band of per cent by mass; `below` is 101 where there is no upper end.
using Limit = std::tuple<std::string, double, double>;

std::string in_words(const std::vector<Limit>& limits) {
  std::string words;
  for (const auto& [statement, from, below] : limits)
    words += statement + " from " + number_text(from) + " below " + number_text(below) + "; ";
  return words;
}

bool is_h290(const Limit& limit) { return std::get<0>(limit) == "H290"; }

std::vector<Limit> limits_of(const Substance& substance) {
  std::vector<Limit> limits;
  for (const Hazard& hazard : substance.hazards) {
    for (const std::string& statement : hazard.statements)
      limits.emplace_back(statement, hazard.from_percent, hazard.below_percent);
  }
  std::sort(limits.begin(), limits.end());
  return limits;
}

struct Labelled {
  const char* substance;
  std::vector<Limit> limits;
};

std::vector<Limit> without_h290(std::vector<Limit> limits) {
  std::erase_if(limits, is_h290);
  return limits;
}

/// CLP's generic limits of a mixture for skin that is burnt (category 1) and eyes that are damaged.
std::vector<Limit> generic_corrosive(const char* burns) {
  return {{"H315", 1, 3}, {"H319", 1, 3}, {"H315", 3, 5}, {"H318", 3, 5}, {burns, 5, 101}};
}

const double kNoEnd = 101;

std::vector<Labelled> published() {
  std::vector<Labelled> all = {
      {"hydrochloric acid",
       {{"H314 1B", 25, kNoEnd}, {"H315", 10, 25}, {"H319", 10, 25}, {"H335", 10, kNoEnd}}},
      {"nitric acid",
       {{"H314 1A", 20, kNoEnd},
        {"H314 1B", 5, 20},
        {"H315", 1, 3},
        {"H319", 1, 3},
        {"H315", 3, 5},
        {"H318", 3, 5}}},
      {"sulfuric acid", {{"H314 1A", 15, kNoEnd}, {"H315", 5, 15}, {"H319", 5, 15}}},
      {"ethanoic acid",
       {{"H314 1A", 90, kNoEnd},
        {"H226", 90, kNoEnd},
        {"H314 1B", 25, 90},
        {"H315", 10, 25},
        {"H319", 10, 25}}},
      {"lactic acid", generic_corrosive("H314 1C")},
      {"citric acid", {{"H319", 10, kNoEnd}, {"H335", 20, kNoEnd}}},
      {"tartaric acid", {{"H318", 3, kNoEnd}, {"H319", 1, 3}}},
      {"malic acid", {{"H319", 10, kNoEnd}}},
      {"oxalic acid", {{"H318", 3, kNoEnd}, {"H319", 1, 3}, {"H302", 5, kNoEnd}, {"H312", 5, kNoEnd}}},
      {"benzoic acid", {{"H318", 3, kNoEnd}, {"H319", 1, 3}}},
      {"phosphoric acid", {{"H314 1B", 25, kNoEnd}, {"H315", 10, 25}, {"H319", 10, 25}}},
      {"carbonic acid", {}},
      {"calcium hydroxide",
       {{"H318", 3, kNoEnd}, {"H319", 1, 3}, {"H315", 10, kNoEnd}, {"H335", 20, kNoEnd}}},
      {"sodium carbonate", {{"H319", 10, kNoEnd}}},
      {"sodium hydrogencarbonate", {}},
      {"borax", {{"H360FD", 0.3, kNoEnd}, {"H319", 10, kNoEnd}}},
      {"potassium hydrogen phthalate", {}},
      {"sodium ethanoate", {}},
      {"sodium salicylate", {{"H361d", 3, kNoEnd}, {"H319", 10, kNoEnd}, {"H302", 25, kNoEnd}}}};
  for (const char* alkali : {"sodium hydroxide", "potassium hydroxide"})
    all.push_back({alkali, {{"H314 1A", 5, kNoEnd}, {"H314 1B", 2, 5}, {"H315", 0.5, 2}, {"H319", 0.5, 2}}});
  all.push_back({"ammonia", generic_corrosive("H314 1B")});
  all.back().limits.emplace_back("H335", 5, kNoEnd);
  return all;
}

}  // namespace

// Source: Regulation (EC) 1272/2008 (CLP), annex VI and the generic limits of annex I. Seen in copies: sodium
// hydroxide and hydrochloric acid (opettajankoulutus.fi, p=181), ethanoic acid (formpak-software.com), nitric
// acid's 5 and 20 % (gischem.de), phosphoric acid's 10 and 25 % (gunnarlindgren.com). The rest from memory of
// it.
TEST_CASE("a label's limits are the regulation's") {
  for (Labelled one : published()) {
    CAPTURE(one.substance);
    std::sort(one.limits.begin(), one.limits.end());
    const std::vector<Limit> shelved = without_h290(limits_of(shelf().substances.at(one.substance).value));
    CHECK_MESSAGE(shelved == one.limits, in_words(shelved));
  }
}

// Our own choice (the regulation has no limit for it): H290 begins where those of skin and eyes do.
TEST_CASE("what may corrode metals says so from where it first needs a label") {
  std::vector<std::string> corrosive;
  for (const auto& [name, shelved] : shelf().substances) {
    const std::vector<Limit> limits = limits_of(shelved.value);
    const auto h290 = std::find_if(limits.begin(), limits.end(), is_h290);
    if (h290 == limits.end()) continue;
    corrosive.push_back(name);
    double first = 101.0;
    for (const auto& [statement, from, below] : without_h290(limits)) first = std::min(first, from);
    CAPTURE(name);
    CHECK(*h290 == Limit{"H290", first, 101});
  }
  for (const char* name : {"hydrochloric acid", "nitric acid", "sulfuric acid", "phosphoric acid",
                           "sodium hydroxide", "potassium hydroxide"}) {
    CAPTURE(name);
    CHECK(std::count(corrosive.begin(), corrosive.end(), name) == 1);
  }
}

}  // namespace halfdrop::test
