// Hand: the first of two endpoints of one flask, and the indicator that goes in after it.

#include <algorithm>
#include <array>
#include <cmath>

#include "game/marking/per_run.h"
#include "game/marking/wording.h"
#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"

namespace halfdrop {

namespace {

constexpr int kMostDrops = 5;

std::optional<Slip> reached(const Case& marked, const RunView& run) {
  if (run.first_end == nullptr)
    return Slip{HUGE_VAL, "no reading was taken at the first endpoint", run.final->bench.tick, {}};
  const BenchSpec& spec = marked.session.spec();
  const Parcel liquid = flask_liquid(run.first_end->bench.ledger);
  if (shows_endpoint(spec, liquid)) return std::nullopt;
  const auto change_cm3 = first_visible_change_cm3(spec, liquid);
  if (!change_cm3)
    return Slip{HUGE_VAL, "the flask had no first endpoint to stop at", run.first_end->bench.tick, {}};
  const double wanting_cm3 =
      *change_cm3 - 1000.0 * excess_titrant_mol(spec, liquid) / spec.breakdown_mol_dm3();
  return Slip{
      wanting_cm3,
      "the flask did not show its first change at that reading: it wanted " + cm3_text(wanting_cm3) + " more",
      run.first_end->bench.tick, -wanting_cm3};
}

std::optional<Slip> dropwise(const Case& marked, const RunView& run) {
  if (run.first_end == nullptr)
    return Slip{HUGE_VAL, "no reading was taken at the first endpoint", run.final->bench.tick, {}};
  const double quickest =
      quickest_drops_per_s(marked.evidence, run.initial->bench.tick, run.first_end->bench.tick);
  if (quickest <= kDropsPerSecond) return std::nullopt;
  const auto cost = run.first_breakdown != nullptr ? std::optional(run.first_breakdown->of(Cause::overshoot))
                                                   : std::nullopt;
  return Slip{quickest,
              "up to " + figure_text(quickest, 1) +
                  " drops a second in the last 0.5 cm³ before the first "
                  "endpoint",
              run.first_flask != nullptr ? run.first_flask->last_entered : run.first_end->bench.tick, cost};
}

/// After the first reading, not before it: its colour would hide the last trace of the first.
std::optional<Slip> added_in_between(const Case&, const RunView& run) {
  const int drops = run.flask->second_indicator_drops;
  if (drops == 0) return Slip{HUGE_VAL, "no second indicator went into the flask", run.final->bench.tick, {}};
  if (drops > kMostDrops)
    return Slip{static_cast<double>(drops),
                count_text(static_cast<std::size_t>(drops), "drop") + " of the second indicator went in",
                run.final->bench.tick,
                {}};
  if (run.first_flask == nullptr || run.first_flask->second_indicator_drops == 0) return std::nullopt;
  return Slip{0.5,
              "the second indicator was in the flask before the first endpoint was read",
              run.first_end->bench.tick,
              {}};
}

const std::array<RunRule, 3> kRules = {{
    {Score::hand, "first-endpoint-reached", 1.5, Needs::both, Shown::initial, false,
     "The flask showed its first change at every first-endpoint reading",
     "Go on drop by drop until the first colour has changed in the whole flask, and read then.", reached},
    {Score::hand, "first-drop-by-drop", 1.0, Needs::both, Shown::initial, true,
     "The last 0.5 cm³ before the first endpoint went in drop by drop",
     "Slow to single drops about 1 cm³ before the first end that the trial run showed.", dropwise},
    {Score::hand, "second-indicator", 0.5, Needs::both, Shown::final, false,
     "The second indicator went in after the first endpoint was read",
     "Two or three drops of the second indicator, once the first endpoint has been read and written.",
     added_in_between},
}};

}  // namespace

void mark_first_endpoint(const Case& marked, std::vector<Finding>& hand) {
  if (!marked.level().then) return;
  for (const RunRule& rule : kRules) hand.push_back(judge(marked, rule));
}

}  // namespace halfdrop
