// What the drill "know your apparatus" says of each piece. Points are our own choice: one for finding it at
// first try, a half for later, none when it had to be told; one for its use.

#include "game/level/say.h"
#include "game/marking/drill_marks.h"
#include "game/marking/wording.h"

namespace halfdrop {

namespace {

constexpr double kLater = 0.5;

Finding of_piece(const PieceAsked& asked) {
  const std::string name(piece_name(asked.piece));
  const bool has_use = !piece_use(asked.piece).empty();
  Finding finding{Score::hand, "piece/" + name, false,        0.0, has_use ? 2.0 : 1.0,
                  "",          asked.tick,      std::nullopt, ""};
  if (asked.picked && !asked.told) finding.points = asked.wrong.empty() ? 1.0 : kLater;
  if (asked.used) finding.points += 1.0;
  finding.met = finding.points == finding.of;
  finding.judged = asked.picked || asked.told || !asked.wrong.empty();
  const std::string use = use_words(asked);
  finding.seen = sentence(std::string(piece_label(asked.piece))) + ": " + found_words(asked) +
                 (use.empty() ? "" : ", " + use) + ".";
  if (!finding.met)
    finding.advice = say("drill.knowing.there_to", {{"purpose", std::string(piece_purpose(asked.piece))}});
  return finding;
}

}  // namespace

void find_in_knowing(const KnowingDrill& drill, std::vector<Finding>& findings) {
  std::vector<Finding> hand;
  for (const PieceAsked& asked : drill.pieces) hand.push_back(of_piece(asked));
  append_findings(Score::hand, std::move(hand), findings, "drill.knowing.advice.go_on");
}

}  // namespace halfdrop
