// Eye: recorded against true readings.

#include <array>
#include <cmath>

#include "game/marking/per_run.h"
#include "game/marking/wording.h"
#include "physics/burette/column.h"

namespace halfdrop {

namespace {

/// Parallax that still counts as a level eye: a fifth of a division (our own choice).
constexpr double kLevel_cm3 = 0.02;

double truly_cm3(const Case& marked, const ReadingMoment& moment) {
  return scale_reading_cm3(marked.session.spec().burette,
                           moment.bench.ledger.balance(Account::column).volume_cm3());
}

std::optional<Slip> eye_level(const Case& marked, const RunView& run) {
  std::optional<Slip> worst;
  for (const ReadingMoment* moment : {run.initial, run.final}) {
    if (moment == nullptr) continue;
    const bool first = moment == run.initial;
    const double parallax_cm3 = moment->apparent_cm3 - truly_cm3(marked, *moment);
    const double size = std::fabs(parallax_cm3);
    if (size <= kLevel_cm3 || (worst && size <= worst->size)) continue;
    worst = Slip{size,
                 std::string("the eye was ") + (parallax_cm3 < 0.0 ? "above" : "below") +
                     " the meniscus at the " + (first ? "initial" : "final") + " reading, which made it " +
                     cm3_text(size) + (parallax_cm3 < 0.0 ? " low" : " high"),
                 moment->bench.tick, run.cost(first ? Cause::parallax_initial : Cause::parallax_final)};
  }
  return worst;
}

std::optional<Slip> readings_right(const Case&, const RunView& run) {
  std::optional<Slip> worst;
  for (const ReadingMoment* moment : {run.initial, run.final}) {
    if (moment == nullptr || reading_allowed(moment->written_cm3, moment->apparent_cm3)) continue;
    const double off_cm3 = moment->written_cm3 - moment->apparent_cm3;
    if (worst && std::fabs(off_cm3) <= worst->size) continue;
    const bool edge = reading_allowed(moment->written_cm3, moment->apparent_edge_cm3);
    worst = Slip{std::fabs(off_cm3),
                 figure_text(moment->written_cm3, 2) + " was written where the eye saw " +
                     figure_text(moment->apparent_cm3, 2) +
                     (edge ? ": that is the upper edge of the meniscus" : ""),
                 moment->bench.tick, moment == run.initial ? -off_cm3 : off_cm3};
  }
  return worst;
}

/// Rounding to what the scale allows is no error of the eye.
double reading_error_cm3(const RunView& run) {
  const TitreBreakdown& parts = *run.breakdown;
  return parts.of(Cause::misreading) + parts.of(Cause::meniscus_edge) + parts.of(Cause::parallax_initial) +
         parts.of(Cause::parallax_final);
}

const std::array<RunRule, 2> kRules = {{
    {Score::eye, "eye-level", 1.0, Needs::initial, false,
     "The eye was level with the meniscus at every reading",
     "Move your head until the nearest ring of the scale shows as a line, then read.", eye_level},
    {Score::eye, "readings-right", 1.0, Needs::initial, false,
     "Every reading is what the eye saw, to 0.05 cm³",
     "Read the lowest point of the curve, downwards from the zero, to the nearest half division.",
     readings_right},
}};

}  // namespace

void mark_eye(const Case& marked, std::vector<Finding>& findings) {
  for (const RunRule& rule : kRules) findings.push_back(judge(marked, rule));
  if (marked.level().eye_bands.empty()) return;
  findings.push_back(judge_bands(
      marked,
      {Score::eye, "reading-error", "reading error of the titre, rounding apart",
       "Both readings want a level eye; a head that never moves makes the titre small.", reading_error_cm3},
      marked.level().eye_bands));
}

}  // namespace halfdrop
