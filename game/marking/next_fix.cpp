#include "game/marking/next_fix.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "game/level/say.h"
#include "game/marking/cause_titles.h"
#include "game/marking/counted_runs.h"
#include "game/marking/wording.h"

namespace halfdrop {

namespace {

constexpr double kShows_cm3 = 0.01;
constexpr double kHalfDrop_cm3 = 0.5 * kOneDrop_cm3;

/// How a cause is mended: by which criteria it is seen, the root first, and what to do where none was missed.
struct Mend {
  Cause cause;
  std::array<const char*, 10> criteria{};
  Phrase too_high = {};  ///< advice where it raised the titre; null: only together with a criterion
  Phrase too_low = {};   ///< ... lowered it; null: the same
};

constexpr Phrase kReadAgain{"fix.read_again"};
constexpr Phrase kLevel{"fix.level"};

constexpr std::array kMends = {
    Mend{Cause::misreading, {"readings-right"}, kReadAgain, {}},
    Mend{Cause::meniscus_edge, {"readings-right"}, kReadAgain, {}},
    Mend{Cause::parallax_initial, {"eye-level"}, kLevel, {}},
    Mend{Cause::parallax_final, {"eye-level"}, kLevel, {}},
    Mend{Cause::film, {"waited"}, "fix.film", {}},
    Mend{Cause::jet_air, {"jet-filled"}, "fix.jet_air", {}},
    Mend{Cause::hanging_drop, {"hanging-drop"}, "fix.hanging_drop", {}},
    Mend{Cause::funnel_drips, {"funnel-out"}, "fix.funnel_drips", {}},
    Mend{Cause::refill, {"not-refilled"}, "fix.refill", {}},
    Mend{Cause::leak, {"tap-tight"}, "fix.leak", {}},
    Mend{Cause::missed_flask, {"into-the-flask"}, "fix.missed_flask", {}},
    Mend{Cause::flask_wall, {"washed-down"}, "fix.flask_wall", {}},
    Mend{Cause::titrant_strength,
         {"standard-weighed", "burette-rinsed", "washings-in", "made-to-mark", "turned-over"},
         "fix.titrant_strength",
         {}},
    Mend{Cause::aliquot,
         {"standard-weighed", "one-aliquot", "pipette-rinsed", "pipette-to-line", "pipette-wiped",
          "pipette-drained", "last-drop-left", "washings-in", "made-to-mark", "turned-over"},
         {},
         {}},
    Mend{Cause::flask_residue, {"flask-clean"}, "fix.flask_residue", {}},
    Mend{Cause::swirled_out, {"nothing-over-the-rim"}, "fix.swirled_out", {}},
    Mend{Cause::overshoot,
         {"swirled", "endpoint-reached", "fade-let-be", "drop-by-drop", "white-tile", "same-shade"},
         "fix.overshoot",
         "fix.not_reached"}};

const Finding* unmet(const MarkedAttempt& marked, const std::string& criterion) {
  const auto found = std::find_if(marked.findings.begin(), marked.findings.end(), [&](const Finding& f) {
    return f.criterion == criterion && !f.met && f.judged;
  });
  return found == marked.findings.end() ? nullptr : &*found;
}

const Finding* unmet(const MarkedAttempt& marked, const Mend& mend) {
  for (const char* criterion : mend.criteria) {
    if (criterion == nullptr) break;
    if (const Finding* finding = unmet(marked, std::string(criterion))) return finding;
  }
  return nullptr;
}

std::string what_it_did(Cause cause, double mean_cm3) {
  const std::string title(cause_title(cause, mean_cm3)), size = cm3_text(std::fabs(mean_cm3), 3);
  return mean_cm3 > 0.0 ? say("fix.raised", {{"cause", title}, {"size", size}})
                        : say("fix.lowered", {{"cause", title}, {"size", size}});
}

NextFix of_finding(const Finding& finding) {
  return {finding.criterion,           finding.seen, finding.advice, std::nullopt,
          finding.of - finding.points, finding.tick};
}

std::optional<NextFix> of_cause(const MarkedAttempt& marked, const Mend& mend, double mean_cm3) {
  const Finding* finding = unmet(marked, mend);
  const double size_cm3 = std::fabs(mean_cm3);
  const double least_cm3 = mend.cause == Cause::overshoot ? kOneDrop_cm3 : kHalfDrop_cm3;
  if (size_cm3 < (finding != nullptr ? kShows_cm3 : least_cm3)) return std::nullopt;
  if (finding == nullptr && mend.too_high.empty()) return std::nullopt;
  NextFix fix = finding != nullptr ? of_finding(*finding) : NextFix{};
  fix.why = what_it_did(mend.cause, mean_cm3);
  fix.gain_cm3 = size_cm3;
  if (finding == nullptr) {
    fix.id = cause_id(mend.cause);
    fix.advice = mean_cm3 < 0.0 && !mend.too_low.empty() ? mend.too_low : mend.too_high;
  }
  return fix;
}

/// The criterion that speaks of a part of the result; empty where none does.
std::string criterion_of(const ResultPart& part) {
  switch (part.of) {
    case ResultPartOf::choice:
      return "trial-kept-out";
    case ResultPartOf::subtraction:
      return "titres-subtracted";
    case ResultPartOf::mean:
      return "mean-titre";
    case ResultPartOf::slip:
      return part.cell;
    default:
      return {};
  }
}

/// What went wrong on the paper, at its worth in the titre.
void add_of_paper(const MarkedAttempt& marked, std::vector<NextFix>& fixes) {
  if (!marked.result_split) return;
  for (const ResultPart& part : marked.result_split->parts) {
    const Finding* finding = unmet(marked, criterion_of(part));
    const double worth_cm3 = marked.ideal_titre_cm3 * std::fabs(part.percent) / 100.0;
    if (finding == nullptr || worth_cm3 < kShows_cm3) continue;
    NextFix fix = of_finding(*finding);
    fix.gain_cm3 = worth_cm3;
    fixes.push_back(std::move(fix));
  }
}

std::vector<NextFix> candidates(const MarkedAttempt& marked) {
  std::vector<NextFix> fixes;
  const auto runs = counted_runs(marked.titres);
  if (!runs.empty()) {
    const auto means = mean_causes_cm3(runs);
    for (const Mend& mend : kMends) {
      if (auto fix = of_cause(marked, mend, means[static_cast<std::size_t>(mend.cause)])) {
        fixes.push_back(std::move(*fix));
      }
    }
  }
  add_of_paper(marked, fixes);
  for (const Finding& finding : marked.findings) {
    if (finding.met) continue;
    fixes.push_back(of_finding(finding));
    if (marked.drill) fixes.back().gain_cm3 = finding.cost_cm3;
  }
  return fixes;
}

double shown_ul(const NextFix& fix) {
  const double gain_cm3 = std::fabs(fix.gain_cm3.value_or(0.0));
  return gain_cm3 < kShows_cm3 ? 0.0 : std::round(1000.0 * gain_cm3);
}

}  // namespace

std::optional<NextFix> next_fix(const MarkedAttempt& marked) {
  for (const Finding& finding : marked.findings) {
    if (finding.score == Score::safety && !finding.met) return of_finding(finding);
  }
  std::vector<NextFix> fixes = candidates(marked);
  if (fixes.empty()) return std::nullopt;
  return *std::max_element(fixes.begin(), fixes.end(), [](const NextFix& one, const NextFix& other) {
    const double one_ul = shown_ul(one), other_ul = shown_ul(other);
    return one_ul != other_ul ? one_ul < other_ul : one.marks < other.marks;
  });
}

std::string next_fix_text(const NextFix& fix) {
  return fix.advice.empty() ? fix.why : fix.advice + " " + fix.why;
}

}  // namespace halfdrop
