#include "game/marking/scores.h"

#include "game/level/say.h"

namespace halfdrop {

Finding closing_line(const ReplayOutcome& outcome, Tick end) {
  Finding finding{Score::record,
                  "closing-line",
                  outcome.compared && outcome.reproduced,
                  0.0,
                  0.0,
                  "",
                  end,
                  std::nullopt,
                  ""};
  if (!outcome.compared) {
    finding.seen = say("find.closing_line.none");
    finding.advice = say("find.closing_line.none.advice");
  } else if (finding.met) {
    finding.seen = say("find.closing_line.right");
  } else {
    finding.seen = say("find.closing_line.wrong", {{"why", outcome.message}});
    finding.advice = say("find.closing_line.wrong.advice");
  }
  return finding;
}

Marks add_up(const std::vector<Finding>& findings) {
  Marks marks;
  marks.safe = true;
  for (const Finding& finding : findings) {
    if (finding.score == Score::safety) {
      marks.safe = marks.safe && finding.met;
      continue;
    }
    Marks::Part& part = marks.parts[static_cast<std::size_t>(finding.score) - 1];
    part.points += finding.points;
    part.of += finding.of;
  }
  for (const Marks::Part& part : marks.parts) {
    marks.total += marks.safe ? part.points : 0.0;
    marks.of += part.of;
  }
  return marks;
}

std::string_view score_words(Score score) {
  switch (score) {
    case Score::safety:
      return say("score.safety");
    case Score::hand:
      return say("score.hand");
    case Score::eye:
      return say("score.eye");
    case Score::record:
      return say("score.record");
    case Score::arithmetic:
      return say("score.arithmetic");
  }
  return "";
}

std::string_view score_name(Score score) {
  switch (score) {
    case Score::safety:
      return "safety";
    case Score::hand:
      return "hand";
    case Score::eye:
      return "eye";
    case Score::record:
      return "record";
    case Score::arithmetic:
      return "arithmetic";
  }
  return "";
}

}  // namespace halfdrop
