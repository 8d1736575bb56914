// Hand: the first of two endpoints of one flask, and the indicator that goes in after it.

#include <algorithm>
#include <array>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/per_run.h"
#include "game/marking/wording.h"
#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"

namespace halfdrop {

namespace {

constexpr int kMostDrops = 5;

std::optional<Slip> reached(const Case& marked, const RunView& run) {
  if (run.first_end == nullptr)
    return Slip{HUGE_VAL, say("find.first_endpoint.no_reading"), run.final->bench.tick, {}};
  const BenchSpec& spec = marked.session.spec();
  const Parcel liquid = flask_liquid(run.first_end->bench.ledger);
  if (shows_endpoint(spec, liquid)) return std::nullopt;
  const auto change_cm3 = first_visible_change_cm3(spec, liquid);
  if (!change_cm3) return Slip{HUGE_VAL, say("find.first_endpoint.none"), run.first_end->bench.tick, {}};
  const double wanting_cm3 =
      *change_cm3 - 1000.0 * excess_titrant_mol(spec, liquid) / spec.breakdown_mol_dm3();
  return Slip{wanting_cm3, say("find.first_endpoint_reached.wrong", {{"more", cm3_text(wanting_cm3)}}),
              run.first_end->bench.tick, -wanting_cm3};
}

std::optional<Slip> dropwise(const Case& marked, const RunView& run) {
  if (run.first_end == nullptr)
    return Slip{HUGE_VAL, say("find.first_endpoint.no_reading"), run.final->bench.tick, {}};
  const double quickest =
      quickest_drops_per_s(marked.evidence, run.initial->bench.tick, run.first_end->bench.tick);
  if (quickest <= kDropsPerSecond) return std::nullopt;
  const auto cost = run.first_breakdown != nullptr ? std::optional(run.first_breakdown->of(Cause::overshoot))
                                                   : std::nullopt;
  return Slip{quickest, say("find.first_drop_by_drop.wrong", {{"drops", figure_text(quickest, 1)}}),
              run.first_flask != nullptr ? run.first_flask->last_entered : run.first_end->bench.tick, cost};
}

/// After the first reading, not before it: its colour would hide the last trace of the first.
std::optional<Slip> added_in_between(const Case&, const RunView& run) {
  if (run.first_end == nullptr)
    return Slip{HUGE_VAL, say("find.first_endpoint.no_reading"), run.final->bench.tick, {}};
  const int drops = run.flask->second_indicator_drops;
  if (drops == 0) return Slip{HUGE_VAL, say("find.second_indicator.none"), run.final->bench.tick, {}};
  if (drops > kMostDrops)
    return Slip{static_cast<double>(drops),
                say("find.second_indicator.many", {{"drops", std::to_string(drops)}}),
                run.final->bench.tick,
                {}};
  if (run.first_flask == nullptr || run.first_flask->second_indicator_drops == 0) return std::nullopt;
  return Slip{0.5, say("find.second_indicator.early"), run.first_end->bench.tick, {}};
}

const std::array<RunRule, 3> kRules = {{
    {Score::hand, "first-endpoint-reached", 1.5, Needs::both, Shown::initial, false,
     "find.first_endpoint_reached.right", "find.first_endpoint_reached.advice", reached},
    {Score::hand, "first-drop-by-drop", 1.0, Needs::both, Shown::initial, true,
     "find.first_drop_by_drop.right", "find.first_drop_by_drop.advice", dropwise},
    {Score::hand, "second-indicator", 0.5, Needs::both, Shown::final, false, "find.second_indicator.right",
     "find.second_indicator.advice", added_in_between},
}};

}  // namespace

void mark_first_endpoint(const Case& marked, std::vector<Finding>& hand) {
  if (!marked.level().then) return;
  for (const RunRule& rule : kRules) hand.push_back(judge(marked, rule));
}

}  // namespace halfdrop
