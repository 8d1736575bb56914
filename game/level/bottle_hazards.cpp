#include "game/level/bottle_hazards.h"

#include <algorithm>
#include <array>
#include <utility>

#include "game/level/say.h"

namespace halfdrop {

namespace {

constexpr std::size_t kCodeLength = 4;

// Annex III of Regulation (EC) 1272/2008, from memory of it; small letters and category marks are ours.
struct Statement {
  std::string_view code;
  Phrase words;
};
constexpr std::array<Statement, 20> kStatements = {
    {{"H225", "hazard.h225"}, {"H226", "hazard.h226"},     {"H290", "hazard.h290"},
     {"H301", "hazard.h301"}, {"H302", "hazard.h302"},     {"H311", "hazard.h311"},
     {"H312", "hazard.h312"}, {"H314", "hazard.h314"},     {"H315", "hazard.h315"},
     {"H317", "hazard.h317"}, {"H318", "hazard.h318"},     {"H319", "hazard.h319"},
     {"H331", "hazard.h331"}, {"H332", "hazard.h332"},     {"H335", "hazard.h335"},
     {"H350", "hazard.h350"}, {"H360FD", "hazard.h360fd"}, {"H361d", "hazard.h361d"},
     {"H400", "hazard.h400"}, {"H412", "hazard.h412"}}};

DissolvedHazard dissolved_in(const Substance& substance, double mol_dm3) {
  return {substance.name, mass_percent(substance, mol_dm3), hazard_statements(substance, mol_dm3)};
}

BottleHazards hazards_in(const LiquidSpec& liquid, const Substance& substance) {
  BottleHazards bottle;
  bottle.label = liquid.label;
  bottle.at_most = liquid.label_mol_dm3 == 0.0;
  bottle.local = liquid.hazard;
  bottle.dissolved.push_back(
      dissolved_in(substance, bottle.at_most ? liquid.unknown_mol_dm3.high : liquid.label_mol_dm3));
  for (const Beside& beside : liquid.also)
    bottle.dissolved.push_back(dissolved_in(beside.substance, beside.mol_dm3));
  return bottle;
}

std::string in_words(const std::string& statement) {
  const std::string_view words = statement_words(statement);
  return words.empty() ? statement : statement + " " + std::string(words);
}

}  // namespace

std::vector<BottleHazards> bottle_hazards(const Level& level) {
  return {hazards_in(level.titrant, level.titrant_substance),
          hazards_in(level.sample, level.sample_substance)};
}

std::string_view statement_words(std::string_view statement) {
  const auto stands_for = [&](const auto& one) {
    return statement == one.code || (one.code.size() == kCodeLength && statement.starts_with(one.code) &&
                                     statement.substr(kCodeLength).starts_with(' '));  // a category
  };
  const auto found = std::find_if(kStatements.begin(), kStatements.end(), stands_for);
  return found == kStatements.end() ? std::string_view() : std::string_view(found->words);
}

std::string hazard_words(const BottleHazards& bottle) {
  if (!bottle.local.empty()) return bottle.local;
  std::vector<std::string> statements;
  for (const DissolvedHazard& one : bottle.dissolved) {
    for (const std::string& statement : one.statements) {
      if (std::find(statements.begin(), statements.end(), statement) == statements.end())
        statements.push_back(statement);
    }
  }
  if (statements.empty()) return say("hazard.none");
  std::string words;
  for (const std::string& statement : statements) words += (words.empty() ? "" : "; ") + in_words(statement);
  return words;
}

}  // namespace halfdrop
