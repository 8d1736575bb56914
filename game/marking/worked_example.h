#pragma once
// The level's calculation worked on other figures: what another bench might have had.

#include <string>
#include <vector>

#include "game/level/level.h"
#include "game/marking/results_sheet.h"

namespace halfdrop {

struct WorkedLine {
  std::string cell, prompt;
  std::string words;    ///< "titrant's strength × mean titre ÷ 1000"
  std::string figures;  ///< "0.1200 × 18.40 ÷ 1000 = 0.002208 mol"
  double value = 0.0;   ///< as printed
};

struct WorkedExample {
  std::vector<std::string> given;  ///< the other bench's figures: "titres 18.35 and 18.45 cm³", ...
  std::vector<WorkedLine> lines;   ///< one a step, the mean included
};

/// Titres, strengths, volumes, masses and dilution are others than the level's, drawn from the seed by a
/// stream of its own; ratio, molar masses and the plain numbers of the calculation are the level's. Each line
/// goes on with the figures that the one before prints. Every value is positive. Empty where a level has no
/// calculation.
[[nodiscard]] WorkedExample worked_example(const Level& level, std::uint64_t seed);

/// Cells of the lines that were written rightly, on the player's own figures, in one attempt's sheet.
[[nodiscard]] std::vector<std::string> lines_done_rightly(const Level& level, const ResultsSheet& sheet);

/// Lines of the example that are withdrawn after so many attempts, each given by what was done rightly in it,
/// oldest first: each attempt withdraws one more, the last in the working of those that it did rightly and
/// that still stood.
[[nodiscard]] std::vector<std::string> lines_withdrawn(
    const Level& level, const std::vector<std::vector<std::string>>& done_rightly);

}  // namespace halfdrop
