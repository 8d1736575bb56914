// Hand: how a run came to its end, said only where it went wrong; the marks for it are lost where the titre
// goes.

#include <algorithm>
#include <array>

#include "game/level/say.h"
#include "game/marking/per_run.h"
#include "game/marking/wording.h"

namespace halfdrop {

namespace {

/// Books on titration ask for 10 to 30 s between the last drop and the reading, for the colour to last and
/// the wall to run down: the shortest of them.
constexpr Tick kWaits = Tick{10} * kTicksPerSecond;
/// ... and the longest: a colour that has lasted so long is the endpoint.
constexpr Tick kHasLasted = Tick{30} * kTicksPerSecond;
/// Runs that end further apart than a drop and a half end at another colour (our own choice).
constexpr double kOtherShade_cm3 = 0.08;
constexpr double kSeenToLeak_cm3 = 0.01;

std::optional<Slip> waited(const Case&, const RunView& run) {
  const Tick waits = run.final->bench.tick - run.flask->last_entered;
  if (waits >= kWaits) return std::nullopt;
  return Slip{seconds(kWaits - waits),
              say("find.waited.wrong", {{"seconds", figure_text(seconds(waits), 0)}}), run.final->bench.tick,
              run.cost(Cause::film)};
}

/// More let in after a pause in which the flask was past its first change, even with all the carbon dioxide
/// that it had by the end.
std::optional<Slip> fade_let_be(const Case& marked, const RunView& run) {
  if (!marked.level().endpoint_gains_colour || run.breakdown == nullptr) return std::nullopt;
  const auto& let_out = marked.evidence.let_out;
  const auto after = [](Tick tick, const FallenDrop& drop) { return tick < drop.tick; };
  const auto begin = std::upper_bound(let_out.begin(), let_out.end(), run.initial->bench.tick, after);
  const auto end = std::upper_bound(let_out.begin(), let_out.end(), run.final->bench.tick, after);
  const double past_cm3 = *run.cost(Cause::overshoot);
  for (auto drop = begin; end - drop > 1; ++drop) {
    const double more_cm3 = (end - 1)->out_cm3 - drop->out_cm3;
    const Tick stood = (drop + 1)->tick - drop->tick;
    if (stood < kHasLasted || more_cm3 > past_cm3) continue;
    return Slip{more_cm3,
                say("find.fade_let_be.wrong",
                    {{"more", cm3_text(more_cm3)}, {"seconds", figure_text(seconds(stood), 0)}}),
                (drop + 1)->tick, more_cm3};
  }
  return std::nullopt;
}

std::optional<Slip> tap_tight(const Case&, const RunView& run) {
  const double leaked_cm3 = run.cost(Cause::leak).value_or(0.0);
  if (leaked_cm3 < kSeenToLeak_cm3) return std::nullopt;
  return Slip{leaked_cm3, say("find.tap_tight.wrong", {{"leaked", cm3_text(leaked_cm3)}}),
              run.final->bench.tick, leaked_cm3};
}

const std::array<RunRule, 3> kOnlyIfSo = {{
    {Score::hand, "waited", 0.0, Needs::both, Shown::final, true, "find.waited.right", "find.waited.advice",
     waited},
    {Score::hand, "fade-let-be", 0.0, Needs::both, Shown::final, true, "find.fade_let_be.right",
     "find.fade_let_be.advice", fade_let_be},
    {Score::hand, "tap-tight", 0.0, Needs::both, Shown::final, false, "find.tap_tight.right",
     "find.tap_tight.advice", tap_tight},
}};

/// By how far the counted runs were run past their first colour.
std::optional<Finding> same_shade(const Case& marked) {
  const std::vector<RunView> runs = runs_that_count(marked);
  if (runs.size() < 2) return std::nullopt;
  const auto less = [](const RunView& one, const RunView& other) {
    return *one.cost(Cause::overshoot) < *other.cost(Cause::overshoot);
  };
  const auto [least, most] = std::minmax_element(runs.begin(), runs.end(), less);
  const double apart_cm3 = *most->cost(Cause::overshoot) - *least->cost(Cause::overshoot);
  if (apart_cm3 <= kOtherShade_cm3) return std::nullopt;
  return Finding{Score::hand,
                 "same-shade",
                 false,
                 0.0,
                 0.0,
                 say("find.same_shade.wrong", {{"run", sentence(run_text(most->name))},
                                               {"further", cm3_text(apart_cm3)},
                                               {"other", run_text(least->name)}}),
                 most->final->bench.tick,
                 apart_cm3,
                 say("find.same_shade.advice")};
}

}  // namespace

void mark_endpoint(const Case& marked, std::vector<Finding>& hand) {
  for (const RunRule& rule : kOnlyIfSo) report_if(marked, rule, hand);
  if (auto finding = same_shade(marked)) hand.push_back(std::move(*finding));
}

}  // namespace halfdrop
