#pragma once
// The drill "know your apparatus": each piece, found at first try or later, and put to its use.

#include <vector>

#include "game/session/apparatus.h"

namespace halfdrop {

struct KnowingDrill {
  std::vector<PieceAsked> pieces;  ///< in the order asked; those that never were have no tick and no answer

  [[nodiscard]] int known() const;  ///< found at first try
  [[nodiscard]] int wrong() const;  ///< wrong answers in all
  [[nodiscard]] int used() const;
  [[nodiscard]] bool begun() const;
};

[[nodiscard]] KnowingDrill knowing_drill(const Session& session);

/// "taken for it: jet, tap", "at first try" and so on.
[[nodiscard]] std::string found_words(const PieceAsked& asked);
/// "put to use", "not put to use", or empty where there is no use for it.
[[nodiscard]] std::string use_words(const PieceAsked& asked);

}  // namespace halfdrop
