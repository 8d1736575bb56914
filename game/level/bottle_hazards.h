#pragma once
// What the labels of a level's bottles have to warn of at the strengths they have in it.
//
// By the limits in assets/substances.json (CLP, Regulation (EC) 1272/2008: annex VI and generic limits of
// annex I), each substance for itself: that several weak irritants in one bottle add up is left out, as are
// the solvents of indicators and whatever a level does not name. An unknown is taken at the strongest it can
// be drawn, so nothing is given away and the label is on the safe side. Suppliers and schools disagree about
// weak solutions: a level may put its own words in the place of these.

#include <string>
#include <string_view>
#include <vector>

#include "game/level/level.h"

namespace halfdrop {

/// One substance in a bottle.
struct DissolvedHazard {
  std::string substance;                ///< "sodium hydroxide"
  double percent = 0.0;                 ///< by mass, at most
  std::vector<std::string> statements;  ///< "H314 1A"; empty: not classified at this strength
};

struct BottleHazards {
  std::string label;                       ///< as on the bottle
  bool at_most = false;                    ///< an unknown: its strength is the highest it can have
  std::vector<DissolvedHazard> dissolved;  ///< first what the bottle is named for
  std::string local;                       ///< the level's own words, which then stand alone; mostly empty
};

/// Titrant and sample. Precondition: the level is no drill.
[[nodiscard]] std::vector<BottleHazards> bottle_hazards(const Level& level);

/// "causes serious eye irritation" for "H319"; for "H314 1A" that of "H314". Empty for a code it does not
/// know. The phrases are those of CLP's annex III, in small letters.
[[nodiscard]] std::string_view statement_words(std::string_view statement);

/// "H319 causes serious eye irritation; H315 …", "not classified at this strength", or the level's own words.
[[nodiscard]] std::string hazard_words(const BottleHazards& bottle);

}  // namespace halfdrop
