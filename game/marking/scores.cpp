#include "game/marking/scores.h"

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
    finding.seen = "The attempt has no closing line, so there is nothing to compare its replay with.";
    finding.advice = "Hand the sheet in: that writes the closing line.";
  } else if (finding.met) {
    finding.seen = "The replay ends as the attempt's closing line says.";
  } else {
    finding.seen = "The replay is not the attempt that was played: " + outcome.message + ".";
    finding.advice = "Hand in the file as the bench wrote it.";
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
