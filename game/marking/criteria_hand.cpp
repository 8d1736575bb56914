// Hand: jet, funnel, drops, swirling, washing down, approach; true volume against equivalence.

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

constexpr double kSeenOnWall_cm3 = 0.002;
/// Share of the titrant that must have come into a swirled flask (our own choice).
constexpr double kSwirledShare = 0.8;
/// The last part of an accurate run goes drop by drop (common practice), at about two drops a second or less:
/// the allowance above two is our own.
constexpr double kDropwise_cm3 = 0.5;
constexpr int kMostIndicatorDrops = 5;

std::optional<Slip> funnel_out(const Case&, const RunView& run) {
  const BenchState& bench = run.initial->bench;
  if (!bench.funnel_in) return std::nullopt;
  return Slip{bench.ledger.balance(Account::funnel).volume_cm3(), say("find.funnel_out.wrong"), bench.tick,
              run.cost(Cause::funnel_drips)};
}

std::optional<Slip> jet_filled(const Case& marked, const RunView& run) {
  const BenchState& bench = run.initial->bench;
  const double air_cm3 =
      marked.session.spec().burette.jet_cm3 - bench.ledger.balance(Account::jet).volume_cm3();
  if (air_cm3 <= kSeenInJet_cm3) return std::nullopt;
  return Slip{air_cm3, say("find.jet_filled.wrong", {{"air", cm3_text(air_cm3)}}), bench.tick,
              run.cost(Cause::jet_air)};
}

std::optional<Slip> nothing_hanging(const Case&, const RunView& run) {
  const auto hanging = [](const ReadingMoment& moment) {
    return moment.bench.ledger.balance(Account::pendant_drop).volume_cm3();
  };
  const double first_cm3 = hanging(*run.initial);
  const double last_cm3 = hanging(*run.final);
  if (std::max(first_cm3, last_cm3) <= kSeenHanging_cm3) return std::nullopt;
  const bool at_first = first_cm3 > last_cm3;
  const std::string size = cm3_text(at_first ? first_cm3 : last_cm3);
  return Slip{std::max(first_cm3, last_cm3),
              at_first ? say("find.hanging_drop.initial", {{"size", size}})
                       : say("find.hanging_drop.final", {{"size", size}}),
              (at_first ? run.initial : run.final)->bench.tick, run.cost(Cause::hanging_drop)};
}

std::optional<Slip> swirled(const Case&, const RunView& run) {
  const double entered_cm3 = run.flask->entered_cm3;
  if (entered_cm3 <= 0.0) return Slip{0.0, say("find.swirled.no_titrant"), run.final->bench.tick, {}};
  const double share = run.flask->swirled_in_cm3 / entered_cm3;
  if (share >= kSwirledShare) return std::nullopt;
  return Slip{1.0 - share,
              share < 0.005 ? say("find.swirled.none")
                            : say("find.swirled.only", {{"percent", figure_text(100.0 * share, 0)}}),
              run.flask->last_entered,
              {}};
}

std::optional<Slip> drop_by_drop(const Case& marked, const RunView& run) {
  const double quickest =
      quickest_drops_per_s(marked.evidence, run.initial->bench.tick, run.final->bench.tick);
  if (quickest <= kDropsPerSecond) return std::nullopt;
  return Slip{quickest, say("find.drop_by_drop.wrong", {{"drops", figure_text(quickest, 1)}}),
              run.flask->last_entered, run.cost(Cause::overshoot)};
}

std::optional<Slip> washed_down(const Case&, const RunView& run) {
  const BenchState& bench = run.final->bench;
  const double clinging_cm3 = bench.ledger.balance(Account::flask_wall).volume_cm3();
  if (clinging_cm3 <= kSeenOnWall_cm3) return std::nullopt;
  return Slip{clinging_cm3, say("find.washed_down.wrong", {{"size", cm3_text(clinging_cm3, 3)}}), bench.tick,
              run.cost(Cause::flask_wall)};
}

std::optional<Slip> flask_clean(const Case&, const RunView& run) {
  const FlaskUse::Before before = run.flask->before;
  if (before == FlaskUse::Before::first_use || before == FlaskUse::Before::rinsed) return std::nullopt;
  if (before == FlaskUse::Before::rinsed_with_sample) {
    return Slip{1.0, say("find.flask_clean.sample"), run.final->bench.tick, run.cost(Cause::flask_residue)};
  }
  const bool emptied = before == FlaskUse::Before::only_emptied;
  const auto cost = run.cost(Cause::flask_residue);
  return Slip{(emptied ? 0.0 : 1.0) + std::fabs(cost.value_or(0.0)),
              emptied ? say("find.flask_clean.emptied") : say("find.flask_clean.held"), run.final->bench.tick,
              cost};
}

std::optional<Slip> one_aliquot(const Case&, const RunView& run) {
  const int aliquots = run.flask->aliquots;
  if (aliquots == 1) return std::nullopt;
  return Slip{std::fabs(aliquots - 1.0),
              aliquots == 0
                  ? say("find.one_aliquot.none")
                  : say("find.one_aliquot.many",
                        {{"aliquots", count_text(static_cast<std::size_t>(aliquots), Counted::aliquot)}}),
              run.final->bench.tick, run.cost(Cause::aliquot)};
}

/// Why the flask of a run could show no endpoint at all.
std::optional<std::string> nothing_to_stop_at(const Case& marked, const RunView& run) {
  const Parcel liquid = flask_liquid(run.final->bench.ledger);
  const BenchSpec& spec = marked.session.spec();
  const Endpoint last = spec.last_endpoint();
  if (run.flask->untouched() || first_visible_change_cm3(spec, liquid, last)) return std::nullopt;
  if (last == Endpoint::second && run.flask->second_indicator_drops == 0)
    return say("find.no_endpoint.no_second_indicator");
  return run.flask->indicator_drops == 0 ? say("find.no_endpoint.no_indicator")
                                         : say("find.no_endpoint.unseen");
}

/// The mixed flask shows its change; whether it was emptied before the reading is the record's business.
std::optional<Slip> endpoint_reached(const Case& marked, const RunView& run) {
  const BenchSpec& spec = marked.session.spec();
  const Parcel liquid = flask_liquid(run.final->bench.ledger);
  const Endpoint last = spec.last_endpoint();
  if (run.flask->untouched() || shows_endpoint(spec, liquid, last)) return std::nullopt;
  if (const auto why = nothing_to_stop_at(marked, run)) {
    return Slip{HUGE_VAL, say("find.endpoint_reached.none", {{"why", *why}}), run.final->bench.tick,
                std::nullopt};
  }
  const double wanting_cm3 = first_visible_change_cm3(spec, liquid, last).value_or(0.0) -
                             1000.0 * excess_titrant_mol(spec, liquid, last) / spec.breakdown_mol_dm3();
  return Slip{wanting_cm3, say("find.endpoint_reached.wrong", {{"more", cm3_text(wanting_cm3)}}),
              run.final->bench.tick, -wanting_cm3};
}

std::optional<Slip> into_the_flask(const Case&, const RunView& run) {
  const auto fell = [&](Account from, Account to) {
    return (run.final->bench.ledger.moved(from, to) - run.initial->bench.ledger.moved(from, to)).volume_cm3();
  };
  const double beaker_cm3 =
      fell(Account::in_flight, Account::beaker) + fell(Account::pendant_drop, Account::beaker);
  const double bench_cm3 = fell(Account::in_flight, Account::bench_top);
  if (beaker_cm3 + bench_cm3 < kSeenInJet_cm3) return std::nullopt;
  const std::string in_beaker = cm3_text(beaker_cm3), on_bench = cm3_text(bench_cm3);
  const bool seen_in_beaker = beaker_cm3 >= kSeenInJet_cm3, seen_on_bench = bench_cm3 >= kSeenInJet_cm3;
  std::string where = say("find.into_the_flask.nowhere");
  if (seen_in_beaker && seen_on_bench) {
    where = say("find.into_the_flask.both", {{"beaker", in_beaker}, {"bench", on_bench}});
  } else if (seen_in_beaker) {
    where = say("find.into_the_flask.beaker", {{"beaker", in_beaker}});
  } else if (seen_on_bench) {
    where = say("find.into_the_flask.bench", {{"bench", on_bench}});
  }
  return Slip{beaker_cm3 + bench_cm3, where, run.final->bench.tick, run.cost(Cause::missed_flask)};
}

std::optional<Slip> tile_at_the_end(const Case&, const RunView& run) {
  if (run.flask->last_on_tile) return std::nullopt;
  return Slip{0.0, say("find.white_tile.wrong"), run.flask->last_entered, {}};
}

const std::array<RunRule, 11> kRules = {{
    {Score::hand, "funnel-out", 0.5, Needs::initial, Shown::initial, false, "find.funnel_out.right",
     "find.funnel_out.advice", funnel_out},
    {Score::hand, "jet-filled", 1.0, Needs::initial, Shown::initial, false, "find.jet_filled.right",
     "find.jet_filled.advice", jet_filled},
    {Score::hand, "hanging-drop", 0.5, Needs::both, Shown::final, false, "find.hanging_drop.right",
     "find.hanging_drop.advice", nothing_hanging},
    {Score::hand, "into-the-flask", 0.5, Needs::both, Shown::last_drop, false, "find.into_the_flask.right",
     "find.into_the_flask.advice", into_the_flask},
    {Score::hand, "swirled", 1.0, Needs::both, Shown::last_drop, false, "find.swirled.right",
     "find.swirled.advice", swirled},
    {Score::hand, "drop-by-drop", 1.0, Needs::both, Shown::last_drop, true, "find.drop_by_drop.right",
     "find.drop_by_drop.advice", drop_by_drop},
    {Score::hand, "washed-down", 0.5, Needs::both, Shown::final, false, "find.washed_down.right",
     "find.washed_down.advice", washed_down},
    {Score::hand, "endpoint-reached", 1.5, Needs::both, Shown::final, false, "find.endpoint_reached.right",
     "find.endpoint_reached.advice", endpoint_reached},
    {Score::hand, "flask-clean", 0.5, Needs::both, Shown::initial, false, "find.flask_clean.right",
     "find.flask_clean.advice", flask_clean},
    {Score::hand, "one-aliquot", 0.5, Needs::both, Shown::initial, false, "find.one_aliquot.right",
     "find.one_aliquot.advice", one_aliquot},
    {Score::hand, "white-tile", 0.5, Needs::both, Shown::last_drop, false, "find.white_tile.right",
     "find.white_tile.advice", tile_at_the_end},
}};

Finding tap_shut(const Case& marked) {
  const Evidence& evidence = marked.evidence;
  Finding finding{Score::hand, "tap-shut", false, 0.0, 0.5, "", marked.end(), std::nullopt, ""};
  finding.advice = say("find.tap_shut.advice");
  if (evidence.poured_cm3 <= 0.0) {
    finding.seen = say("find.tap_shut.never_filled");
    finding.judged = false;
  } else if (evidence.poured_tap_open) {
    finding.tick = *evidence.poured_tap_open;
    finding.seen = say("find.tap_shut.wrong", {{"ran_out", cm3_text(evidence.ran_through_cm3)}});
  } else {
    finding.met = true;
    finding.points = finding.of;
    finding.seen = say("find.tap_shut.right");
    finding.tick = evidence.first_liquid.value_or(0);
    finding.advice.clear();
  }
  return finding;
}

/// What to do about the drops of indicator that were given.
std::string indicator_advice(int least, int most) {
  if (least < 1) return say("find.indicator.none.advice");
  if (most > kMostIndicatorDrops) return say("find.indicator.many.advice");
  return say("find.indicator.differs.advice");
}

Finding indicator_drops(const Case& marked) {
  Finding finding{Score::hand,        "indicator",  false,        0.0, 0.5,
                  say("find.no_run"), marked.end(), std::nullopt, ""};
  const std::vector<RunView> runs = runs_to_check(marked, Needs::both, false);
  finding.judged = !runs.empty();
  if (runs.empty()) return finding;
  int least = runs.front().flask->indicator_drops;
  int most = least;
  std::string counts;
  for (const RunView& run : runs) {
    const int drops = run.flask->indicator_drops;
    least = std::min(least, drops);
    most = std::max(most, drops);
    counts += (counts.empty() ? "" : ", ") +
              say("find.indicator.run", {{"run", run_text(run.name)}, {"drops", std::to_string(drops)}});
  }
  finding.tick = runs.back().initial->bench.tick;
  finding.seen = say("find.indicator.seen", {{"runs", counts}});
  finding.met = least == most && least >= 1 && most <= kMostIndicatorDrops;
  finding.points = finding.met ? finding.of : 0.0;
  if (!finding.met) finding.advice = indicator_advice(least, most);
  return finding;
}

/// What the hand made of the run: the larger of what it did to the titre and what the flask itself was off
/// by, so that two faults that cancel in the titre do not hide each other. Readings, glass and bottle are
/// left out; the pipette counts only where the number of aliquots was wrong.
double hand_error_cm3(const RunView& run, const TitreBreakdown& parts) {
  constexpr std::array kCausesOfTheHand = {Cause::jet_air,         Cause::hanging_drop,  Cause::funnel_drips,
                                           Cause::refill,          Cause::leak,          Cause::missed_flask,
                                           Cause::flask_wall,      Cause::flask_residue, Cause::swirled_out,
                                           Cause::indicator_blank, Cause::overshoot};
  double sum_cm3 = run.flask->aliquots == 1 ? 0.0 : parts.of(Cause::aliquot);
  for (const Cause cause : kCausesOfTheHand) sum_cm3 += parts.of(cause);
  const double in_flask_cm3 = parts.of(Cause::indicator_blank) + parts.of(Cause::overshoot);
  return std::fabs(in_flask_cm3) > std::fabs(sum_cm3) ? in_flask_cm3 : sum_cm3;
}

/// Of two endpoints the worse one.
double hand_error_cm3(const RunView& run) {
  const double whole_cm3 = hand_error_cm3(run, *run.breakdown);
  if (run.first_breakdown == nullptr) return whole_cm3;
  const double first_cm3 = hand_error_cm3(run, *run.first_breakdown);
  return std::fabs(first_cm3) > std::fabs(whole_cm3) ? first_cm3 : whole_cm3;
}

std::optional<Slip> refilled(const Case&, const RunView& run) {
  const double cost = run.cost(Cause::refill).value_or(0.0);
  if (std::fabs(cost) < kSeenInJet_cm3) return std::nullopt;
  return Slip{std::fabs(cost), say("find.not_refilled.wrong"), run.final->bench.tick, cost};
}

std::optional<Slip> ran_over(const Case&, const RunView& run) {
  const double lost_cm3 = run.story->lost.volume_cm3();
  if (lost_cm3 < kSeenInJet_cm3) return std::nullopt;
  return Slip{lost_cm3, say("find.nothing_over_the_rim.wrong", {{"lost", cm3_text(lost_cm3)}}),
              run.final->bench.tick, run.cost(Cause::swirled_out)};
}

const std::array<RunRule, 2> kOnlyIfSo = {{
    {Score::hand, "not-refilled", 0.0, Needs::both, Shown::initial, false, "find.not_refilled.right",
     "find.not_refilled.advice", refilled},
    {Score::hand, "nothing-over-the-rim", 0.0, Needs::both, Shown::final, false,
     "find.nothing_over_the_rim.right", "find.nothing_over_the_rim.advice", ran_over},
}};

}  // namespace

double quickest_drops_per_s(const Evidence& evidence, Tick from, Tick until) {
  const auto &drops = evidence.drops, &let_out = evidence.let_out;
  const auto after = [](Tick tick, const FallenDrop& drop) { return tick < drop.tick; };
  // What was touched off counts towards the end, though it did not fall.
  const auto last = std::upper_bound(let_out.begin(), let_out.end(), until, after);
  if (last == let_out.begin()) return 0.0;
  const double end_cm3 = (last - 1)->out_cm3;
  const auto begin = std::upper_bound(drops.begin(), drops.end(), from, after);
  const auto end = std::upper_bound(drops.begin(), drops.end(), until, after);
  double quickest = 0.0;
  for (auto drop = begin; end - drop > 2; ++drop) {
    if (drop->out_cm3 < end_cm3 - kDropwise_cm3) continue;
    const Tick apart = std::max<Tick>((drop + 2)->tick - drop->tick, 1);
    quickest = std::max(quickest, 2.0 / seconds(apart));
  }
  return quickest;
}

void mark_hand(const Case& marked, std::vector<Finding>& findings) {
  std::vector<Finding> hand;
  hand.push_back(tap_shut(marked));
  for (const RunRule& rule : kRules) hand.push_back(judge(marked, rule));
  hand.push_back(indicator_drops(marked));
  mark_rinsing(marked, hand);
  if (marked.level().filling_below_eye) hand.push_back(filled_below_eye(marked.evidence, marked.end()));
  mark_pipette(marked, hand);
  mark_standard(marked, hand);
  for (const RunRule& rule : kOnlyIfSo) report_if(marked, rule, hand);
  mark_first_endpoint(marked, hand);
  mark_endpoint(marked, hand);
  if (!marked.level().hand_bands.empty()) {
    hand.push_back(judge_bands(marked,
                               {Score::hand, "titrant-volume", "find.titrant_volume.what",
                                "find.titrant_volume.advice", hand_error_cm3, nothing_to_stop_at},
                               marked.level().hand_bands));
  }
  append_findings(Score::hand, std::move(hand), findings);
}

}  // namespace halfdrop
