#include "game/marking/knowing_drill.h"
#include "game/level/say.h"

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
  if (asked.first_try()) return say("drill.knowing.first_try");
  std::string words;
  for (const Piece piece : asked.wrong) {
    const std::string name(piece_label(piece));
    if (words.find(name) == std::string::npos) words += (words.empty() ? "" : ", ") + name;
  }
  if (!words.empty()) words = say("drill.knowing.taken_for_it", {{"pieces", words}});
  if (asked.told) words += (words.empty() ? "" : "; ") + say("drill.knowing.not_known");
  if (words.empty()) return say("drill.knowing.not_asked");
  return words + (asked.picked ? "" : "; " + say("drill.knowing.not_found"));
}

std::string use_words(const PieceAsked& asked) {
  if (piece_use(asked.piece).empty() || !asked.picked) return {};
  return asked.used ? say("drill.knowing.used") : say("drill.knowing.not_used");
}

}  // namespace halfdrop
