#include "game/level/bottle_hazards.h"

#include <algorithm>
#include <array>
#include <utility>

namespace halfdrop {

namespace {

constexpr std::size_t kCodeLength = 4;

// Annex III of Regulation (EC) 1272/2008, from memory of it; small letters and category marks are ours.
constexpr std::array<std::pair<std::string_view, std::string_view>, 20> kStatements = {
    {{"H225", "highly flammable liquid and vapour"},
     {"H226", "flammable liquid and vapour"},
     {"H290", "may be corrosive to metals"},
     {"H301", "toxic if swallowed"},
     {"H302", "harmful if swallowed"},
     {"H311", "toxic in contact with skin"},
     {"H312", "harmful in contact with skin"},
     {"H314", "causes severe skin burns and eye damage"},
     {"H315", "causes skin irritation"},
     {"H317", "may cause an allergic skin reaction"},
     {"H318", "causes serious eye damage"},
     {"H319", "causes serious eye irritation"},
     {"H331", "toxic if inhaled"},
     {"H332", "harmful if inhaled"},
     {"H335", "may cause respiratory irritation"},
     {"H350", "may cause cancer"},
     {"H360FD", "may damage fertility; may damage the unborn child"},
     {"H361d", "suspected of damaging the unborn child"},
     {"H400", "very toxic to aquatic life"},
     {"H412", "harmful to aquatic life with long lasting effects"}}};

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
  const double second_mol_dm3 = level.then && level.then->beside ? level.then->beside->mol_dm3.high : 0.0;
  return {hazards_in(level.titrant, level.titrant_substance),
          hazards_in(sample_holding(level, second_mol_dm3), level.sample_substance)};
}

std::string_view statement_words(std::string_view statement) {
  const auto stands_for = [&](const auto& one) {
    return statement == one.first || (one.first.size() == kCodeLength && statement.starts_with(one.first) &&
                                      statement.substr(kCodeLength).starts_with(' '));  // a category
  };
  const auto found = std::find_if(kStatements.begin(), kStatements.end(), stands_for);
  return found == kStatements.end() ? std::string_view() : found->second;
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
  if (statements.empty()) return "not classified at this strength";
  std::string words;
  for (const std::string& statement : statements) words += (words.empty() ? "" : "; ") + in_words(statement);
  return words;
}

}  // namespace halfdrop
