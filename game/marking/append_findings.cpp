// What could not be judged is said once, not once a criterion.

#include <algorithm>
#include <string>

#include "game/level/say.h"
#include "game/marking/criteria.h"

namespace halfdrop {

namespace {

std::string advice_for(Score score) {
  switch (score) {
    case Score::record:
      return say("find.none_judged.record");
    case Score::arithmetic:
      return say("find.none_judged.arithmetic");
    default:
      return say("find.none_judged");
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
  const std::string what(score_words(score));
  once.seen =
      all ? say("find.nothing_to_judge", {{"why", why}, {"score", what}})
          : say("find.others_not_judged", {{"why", why}, {"count", std::to_string(count)}, {"score", what}});
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
