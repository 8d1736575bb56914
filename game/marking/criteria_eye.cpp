// Eye: recorded against true readings.

#include <array>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/per_run.h"
#include "game/marking/wording.h"
#include "physics/burette/column.h"

namespace halfdrop {

namespace {

double truly_cm3(const Case& marked, const ReadingMoment& moment) {
  return scale_reading_cm3(marked.session.spec().burette,
                           moment.bench.ledger.balance(Account::column).volume_cm3());
}

const char* name_of(const RunView& run, const ReadingMoment* moment) {
  if (moment == run.initial) return "initial";
  return moment == run.final ? "final" : "first endpoint";
}

std::string off_level_text(bool above, std::string_view which, const std::string& size) {
  if (which == "initial")
    return above ? say("find.eye_level.above_initial", {{"size", size}})
                 : say("find.eye_level.below_initial", {{"size", size}});
  if (which == "final")
    return above ? say("find.eye_level.above_final", {{"size", size}})
                 : say("find.eye_level.below_final", {{"size", size}});
  return above ? say("find.eye_level.above_first", {{"size", size}})
               : say("find.eye_level.below_first", {{"size", size}});
}

/// In the titre that the reading belongs to.
std::optional<double> parallax_cost(const RunView& run, const ReadingMoment* moment) {
  if (moment == run.initial) return run.cost(Cause::parallax_initial);
  if (moment == run.final) return run.cost(Cause::parallax_final);
  if (run.first_breakdown == nullptr) return std::nullopt;
  return run.first_breakdown->of(Cause::parallax_final);
}

std::optional<Slip> eye_level(const Case& marked, const RunView& run) {
  std::optional<Slip> worst;
  for (const ReadingMoment* moment : {run.initial, run.first_end, run.final}) {
    if (moment == nullptr) continue;
    const double parallax_cm3 = moment->apparent_cm3 - truly_cm3(marked, *moment);
    const double size = std::fabs(parallax_cm3);
    if (size <= kLevelEye_cm3 || (worst && size <= worst->size)) continue;
    worst = Slip{size, off_level_text(parallax_cm3 < 0.0, name_of(run, moment), cm3_text(size)),
                 moment->bench.tick, parallax_cost(run, moment)};
  }
  return worst;
}

/// A reading within one half division is right: that is the trade's own allowance for it (common practice,
/// +-0.05).
constexpr double kReadRightly_cm3 = 0.05;

bool close(double written_cm3, double seen_cm3) {
  return std::fabs(written_cm3 - seen_cm3) <= kReadRightly_cm3 + kSameFigure_cm3;
}

/// Off the half division nearest to what the eye saw; nought for a reading that is right.
double off_cm3(const ReadingMoment& moment) {
  constexpr double kHalfDivision_cm3 = 0.05;
  if (close(moment.written_cm3, moment.apparent_cm3)) return 0.0;
  return moment.written_cm3 - std::round(moment.apparent_cm3 / kHalfDivision_cm3) * kHalfDivision_cm3;
}

std::optional<Slip> readings_right(const Case& marked, const RunView& run) {
  if (readings_swapped(run)) return std::nullopt;  // read rightly, written into the wrong place
  std::optional<Slip> worst;
  for (const ReadingMoment* moment : {run.initial, run.first_end, run.final}) {
    if (moment == nullptr || off_cm3(*moment) == 0.0) continue;
    const double off = off_cm3(*moment);
    if (worst && std::fabs(off) <= worst->size) continue;
    const bool first = moment == run.initial;
    const bool edge = close(moment->written_cm3, moment->apparent_edge_cm3);
    const std::string text = as_written(marked.sheet.text(run.name + "/" + name_of(run, moment))),
                      seen = figure_text(moment->apparent_cm3, 2);
    worst = Slip{std::fabs(off),
                 edge ? say("find.readings_right.edge", {{"text", text}, {"seen", seen}})
                      : say("find.readings_right.wrong", {{"text", text}, {"seen", seen}}),
                 moment->bench.tick, first ? -off : off};
  }
  return worst;
}

/// Rounding to what the scale allows is no error of the eye, nor is a figure in the wrong place.
double reading_error_cm3(const RunView& run) {
  const TitreBreakdown& parts = *run.breakdown;
  const double written = readings_swapped(run) ? 0.0 : off_cm3(*run.final) - off_cm3(*run.initial);
  const double whole = written + parts.of(Cause::parallax_initial) + parts.of(Cause::parallax_final);
  if (run.first_breakdown == nullptr) return whole;
  const TitreBreakdown& first_parts = *run.first_breakdown;
  const double first = off_cm3(*run.first_end) - off_cm3(*run.initial) +
                       first_parts.of(Cause::parallax_initial) + first_parts.of(Cause::parallax_final);
  return std::fabs(first) > std::fabs(whole) ? first : whole;  // of two endpoints the worse one
}

const std::array<RunRule, 2> kRules = {{
    {Score::eye, "eye-level", 1.0, Needs::initial, Shown::final, false, "find.eye_level.right",
     "find.eye_level.advice", eye_level},
    {Score::eye, "readings-right", 1.0, Needs::initial, Shown::final, false, "find.readings_right.right",
     "find.readings_right.advice", readings_right},
}};

}  // namespace

void mark_eye(const Case& marked, std::vector<Finding>& findings) {
  std::vector<Finding> eye;
  for (const RunRule& rule : kRules) eye.push_back(judge(marked, rule));
  if (!marked.level().eye_bands.empty()) {
    eye.push_back(judge_bands(marked,
                              {Score::eye, "reading-error", "find.reading_error.what",
                               "find.reading_error.advice", reading_error_cm3},
                              marked.level().eye_bands));
  }
  append_findings(Score::eye, std::move(eye), findings);
}

}  // namespace halfdrop
