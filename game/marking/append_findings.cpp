// What could not be judged is said once, not once a criterion.

#include <algorithm>
#include <string>

#include "game/marking/criteria.h"

namespace halfdrop {

namespace {

std::string advice_for(Score score) {
  switch (score) {
    case Score::record:
      return "Write down what you read, when you read it.";
    case Score::arithmetic:
      return "Work the sheet down to its last line.";
    default:
      return "Make a trial run and accurate runs, and write both readings of each: then there is something "
             "to "
             "judge.";
  }
}

bool not_judged(const Finding& finding) { return !finding.judged; }

Finding said_once(Score score, const std::vector<Finding>& of_score, std::ptrdiff_t count,
                  std::string_view advice) {
  Finding once{score,        std::string(score_name(score)) + "-not-judged",          false, 0.0, 0.0, "", 0,
               std::nullopt, advice.empty() ? advice_for(score) : std::string(advice)};
  once.judged = false;
  std::string why;
  for (const Finding& finding : of_score) {
    if (finding.judged) continue;
    once.of += finding.of;
    once.tick = std::max(once.tick, finding.tick);
    why = finding.seen.substr(0, finding.seen.rfind('.'));
  }
  const bool all = count == static_cast<std::ptrdiff_t>(of_score.size());
  once.seen = why + (all ? ": there is nothing of the " + std::string(score_name(score)) + " to judge."
                         : ": the other " + std::to_string(count) + " criteria of the " +
                               std::string(score_name(score)) + " could not be judged.");
  return once;
}

}  // namespace

void append_findings(Score score, std::vector<Finding> of_score, std::vector<Finding>& findings,
                     std::string_view advice) {
  const std::ptrdiff_t count = std::count_if(of_score.begin(), of_score.end(), not_judged);
  std::optional<Finding> once;
  if (count >= kSaidOnce) {
    once = said_once(score, of_score, count, advice);
    std::erase_if(of_score, not_judged);
  }
  findings.insert(findings.end(), of_score.begin(), of_score.end());
  if (once) findings.push_back(std::move(*once));
}

}  // namespace halfdrop
