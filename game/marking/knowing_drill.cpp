#include "game/marking/knowing_drill.h"

#include <algorithm>

namespace halfdrop {

int KnowingDrill::known() const {
  return static_cast<int>(
      std::count_if(pieces.begin(), pieces.end(), [](const PieceAsked& asked) { return asked.first_try(); }));
}

int KnowingDrill::wrong() const {
  std::size_t answers = 0;
  for (const PieceAsked& asked : pieces) answers += asked.wrong.size();
  return static_cast<int>(answers);
}

int KnowingDrill::used() const {
  return static_cast<int>(
      std::count_if(pieces.begin(), pieces.end(), [](const PieceAsked& asked) { return asked.used; }));
}

bool KnowingDrill::begun() const {
  return !pieces.empty() && (pieces.front().picked || pieces.front().told || !pieces.front().wrong.empty());
}

KnowingDrill knowing_drill(const Session& session) { return {apparatus_round(session).asked}; }

std::string found_words(const PieceAsked& asked) {
  if (asked.first_try()) return "found at first try";
  std::string words;
  for (const Piece piece : asked.wrong) {
    const std::string name(piece_name(piece));
    if (words.find(name) == std::string::npos) words += (words.empty() ? "taken for it: " : ", ") + name;
  }
  if (asked.told) words += words.empty() ? "not known" : "; not known";
  if (words.empty()) return "not asked for";
  return words + (asked.picked ? "" : "; not found");
}

std::string use_words(const PieceAsked& asked) {
  if (piece_use(asked.piece).empty() || !asked.picked) return {};
  return asked.used ? "put to use" : "not put to use";
}

}  // namespace halfdrop
