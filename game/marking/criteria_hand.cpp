// Hand: jet, funnel, drops, swirling, washing down, approach; true volume against equivalence.

#include <algorithm>
#include <array>
#include <cmath>

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
  return Slip{bench.ledger.balance(Account::funnel).volume_cm3(),
              "the funnel was still in when the initial reading was written", bench.tick,
              run.cost(Cause::funnel_drips)};
}

std::optional<Slip> jet_filled(const Case& marked, const RunView& run) {
  const BenchState& bench = run.initial->bench;
  const double air_cm3 =
      marked.session.spec().burette.jet_cm3 - bench.ledger.balance(Account::jet).volume_cm3();
  if (air_cm3 <= kSeenInJet_cm3) return std::nullopt;
  return Slip{air_cm3, "the jet held " + cm3_text(air_cm3) + " of air at the initial reading", bench.tick,
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
  return Slip{std::max(first_cm3, last_cm3),
              cm3_text(at_first ? first_cm3 : last_cm3) + " hung at the tip at the " +
                  (at_first ? "initial" : "final") + " reading",
              (at_first ? run.initial : run.final)->bench.tick, run.cost(Cause::hanging_drop)};
}

std::optional<Slip> swirled(const Case&, const RunView& run) {
  const double entered_cm3 = run.flask->entered_cm3;
  if (entered_cm3 <= 0.0) return Slip{0.0, "no titrant came into the flask", run.final->bench.tick, {}};
  const double share = run.flask->swirled_in_cm3 / entered_cm3;
  if (share >= kSwirledShare) return std::nullopt;
  return Slip{1.0 - share,
              (share < 0.005 ? std::string("none") : "only " + figure_text(100.0 * share, 0) + " %") +
                  " of the titrant came into a swirled flask",
              run.flask->last_entered,
              {}};
}

std::optional<Slip> drop_by_drop(const Case& marked, const RunView& run) {
  const double quickest =
      quickest_drops_per_s(marked.evidence, run.initial->bench.tick, run.final->bench.tick);
  if (quickest <= kDropsPerSecond) return std::nullopt;
  return Slip{quickest, "up to " + figure_text(quickest, 1) + " drops a second in the last 0.5 cm³",
              run.flask->last_entered, run.cost(Cause::overshoot)};
}

std::optional<Slip> washed_down(const Case&, const RunView& run) {
  const BenchState& bench = run.final->bench;
  const double clinging_cm3 = bench.ledger.balance(Account::flask_wall).volume_cm3();
  if (clinging_cm3 <= kSeenOnWall_cm3) return std::nullopt;
  return Slip{clinging_cm3,
              cm3_text(clinging_cm3, 3) + " of titrant clung to the flask's wall at the final reading",
              bench.tick, run.cost(Cause::flask_wall)};
}

std::optional<Slip> flask_clean(const Case&, const RunView& run) {
  const FlaskUse::Before before = run.flask->before;
  if (before == FlaskUse::Before::first_use || before == FlaskUse::Before::rinsed) return std::nullopt;
  if (before == FlaskUse::Before::rinsed_with_sample) {
    return Slip{1.0, "the flask was rinsed with the solution that the pipette measures",
                run.final->bench.tick, run.cost(Cause::flask_residue)};
  }
  const bool emptied = before == FlaskUse::Before::only_emptied;
  const auto cost = run.cost(Cause::flask_residue);
  return Slip{(emptied ? 0.0 : 1.0) + std::fabs(cost.value_or(0.0)),
              emptied ? "the flask was emptied but not rinsed before the run"
                      : "the flask still held the liquid of the run before",
              run.final->bench.tick, cost};
}

std::optional<Slip> one_aliquot(const Case&, const RunView& run) {
  const int aliquots = run.flask->aliquots;
  if (aliquots == 1) return std::nullopt;
  return Slip{std::fabs(aliquots - 1.0),
              aliquots == 0
                  ? "no aliquot went into the flask"
                  : count_text(static_cast<std::size_t>(aliquots), "aliquot") + " went into the flask",
              run.final->bench.tick, run.cost(Cause::aliquot)};
}

/// Why the flask of a run could show no endpoint at all.
std::optional<std::string> nothing_to_stop_at(const Case& marked, const RunView& run) {
  const Parcel liquid = flask_liquid(run.final->bench.ledger);
  const BenchSpec& spec = marked.session.spec();
  const Endpoint last = spec.last_endpoint();
  if (run.flask->untouched() || first_visible_change_cm3(spec, liquid, last)) return std::nullopt;
  if (last == Endpoint::second && run.flask->second_indicator_drops == 0)
    return "no second indicator, so no second endpoint to stop at";
  return run.flask->indicator_drops == 0 ? "no indicator, so no endpoint to stop at"
                                         : "no endpoint that could be seen";
}

/// The mixed flask shows its change; whether it was emptied before the reading is the record's business.
std::optional<Slip> endpoint_reached(const Case& marked, const RunView& run) {
  const BenchSpec& spec = marked.session.spec();
  const Parcel liquid = flask_liquid(run.final->bench.ledger);
  const Endpoint last = spec.last_endpoint();
  if (run.flask->untouched() || shows_endpoint(spec, liquid, last)) return std::nullopt;
  if (const auto why = nothing_to_stop_at(marked, run)) {
    return Slip{HUGE_VAL, "the flask had " + *why, run.final->bench.tick, std::nullopt};
  }
  const double wanting_cm3 = first_visible_change_cm3(spec, liquid, last).value_or(0.0) -
                             1000.0 * excess_titrant_mol(spec, liquid, last) / spec.breakdown_mol_dm3();
  return Slip{
      wanting_cm3,
      "the flask did not show its change at the final reading: it wanted " + cm3_text(wanting_cm3) + " more",
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
  std::string where;
  if (beaker_cm3 >= kSeenInJet_cm3) where = cm3_text(beaker_cm3) + " went into the beaker";
  if (bench_cm3 >= kSeenInJet_cm3) {
    where += (where.empty() ? "" : " and ") + cm3_text(bench_cm3) + " fell beside the flask";
  }
  return Slip{beaker_cm3 + bench_cm3, "between the readings, " + where, run.final->bench.tick,
              run.cost(Cause::missed_flask)};
}

std::optional<Slip> tile_at_the_end(const Case&, const RunView& run) {
  if (run.flask->last_on_tile) return std::nullopt;
  return Slip{
      0.0, "the flask was not on the white tile when the last titrant came in", run.flask->last_entered, {}};
}

const std::array<RunRule, 11> kRules = {{
    {Score::hand, "funnel-out", 0.5, Needs::initial, Shown::initial, false,
     "The funnel was out at every initial reading",
     "Lift the funnel out before you read: its drips raise the level unseen.", funnel_out},
    {Score::hand, "jet-filled", 1.0, Needs::initial, Shown::initial, false,
     "The jet was full of liquid at every initial reading",
     "Open the tap over the beaker until the jet runs full, then read. The scale counts air as titrant.",
     jet_filled},
    {Score::hand, "hanging-drop", 0.5, Needs::both, Shown::final, false,
     "Nothing hung at the tip when readings were taken",
     "Touch the hanging drop off: on the beaker before the first reading, on the flask's wall before the "
     "last.",
     nothing_hanging},
    {Score::hand, "into-the-flask", 0.5, Needs::both, Shown::last_drop, false,
     "All titrant went into the flask",
     "Read after the jet is filled; keep the neck under the jet from before you open the tap until you have "
     "shut it.",
     into_the_flask},
    {Score::hand, "swirled", 1.0, Needs::both, Shown::last_drop, false,
     "The flask was swirled while titrant came in",
     "Keep one hand on the tap and swirl with the other all the time.", swirled},
    {Score::hand, "drop-by-drop", 1.0, Needs::both, Shown::last_drop, true,
     "The last 0.5 cm³ went in drop by drop",
     "Slow to single drops about 1 cm³ before the end the trial run showed.", drop_by_drop},
    {Score::hand, "washed-down", 0.5, Needs::both, Shown::final, false,
     "No titrant clung to the wall at the final reading",
     "Rinse the wall down with a little water before the last drops: what clings there has been counted.",
     washed_down},
    {Score::hand, "endpoint-reached", 1.5, Needs::both, Shown::final, false,
     "The flask showed its change at every final reading",
     "Go on drop by drop until the whole flask keeps its change of colour, and read only then.",
     endpoint_reached},
    {Score::hand, "flask-clean", 0.5, Needs::both, Shown::initial, false,
     "The flask was clean before every run",
     "Rinse the flask twice with water between runs, and with nothing else; it may stay wet.", flask_clean},
    {Score::hand, "one-aliquot", 0.5, Needs::both, Shown::initial, false, "Every run had one aliquot",
     "One pipetteful for each run, into a rinsed flask.", one_aliquot},
    {Score::hand, "white-tile", 0.5, Needs::both, Shown::last_drop, false,
     "The flask stood on the white tile at the end",
     "Work on the white tile: it shows the first change sooner.", tile_at_the_end},
}};

Finding tap_shut(const Case& marked) {
  const Evidence& evidence = marked.evidence;
  Finding finding{Score::hand, "tap-shut", false, 0.0, 0.5, "", marked.end(), std::nullopt, ""};
  finding.advice = "Look at the tap before you pour: it must lie across the burette.";
  if (evidence.poured_cm3 <= 0.0) {
    finding.seen = "The burette was never filled.";
    finding.judged = false;
  } else if (evidence.poured_tap_open) {
    finding.tick = *evidence.poured_tap_open;
    finding.seen =
        "Titrant was poured with the tap open; " + cm3_text(evidence.ran_through_cm3) + " ran out meanwhile.";
  } else {
    finding.met = true;
    finding.points = finding.of;
    finding.seen = "The tap was shut while titrant was poured.";
    finding.tick = evidence.first_liquid.value_or(0);
    finding.advice.clear();
  }
  return finding;
}

/// What to do about the drops of indicator that were given.
std::string indicator_advice(int least, int most) {
  if (least < 1) return "Two or three drops in every run: without indicator there is no colour to stop at.";
  if (most > kMostIndicatorDrops) return "Two or three drops are enough; more of it shifts the endpoint.";
  return "The same number in every run, so that every endpoint looks the same.";
}

Finding indicator_drops(const Case& marked) {
  Finding finding{Score::hand,  "indicator",  false, 0.0, 0.5, "No run has both readings.",
                  marked.end(), std::nullopt, ""};
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
    counts += (counts.empty() ? "" : ", ") + run_text(run.name) + " " + std::to_string(drops);
  }
  finding.tick = runs.back().initial->bench.tick;
  finding.seen = "Drops of indicator: " + counts + ".";
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
  return Slip{std::fabs(cost), "titrant was poured into the burette between its readings",
              run.final->bench.tick, cost};
}

std::optional<Slip> ran_over(const Case&, const RunView& run) {
  const double lost_cm3 = run.story->lost.volume_cm3();
  if (lost_cm3 < kSeenInJet_cm3) return std::nullopt;
  return Slip{lost_cm3, cm3_text(lost_cm3) + " of the flask's liquid went over its rim",
              run.final->bench.tick, run.cost(Cause::swirled_out)};
}

const std::array<RunRule, 2> kOnlyIfSo = {{
    {Score::hand, "not-refilled", 0.0, Needs::both, Shown::initial, false, "No run was refilled",
     "Refill between runs only, and read again.", refilled},
    {Score::hand, "nothing-over-the-rim", 0.0, Needs::both, Shown::final, false,
     "Nothing went over the flask's rim",
     "Swirl less hard, or drops are thrown out; use less water to wash down.", ran_over},
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
  for (const RunRule& rule : kOnlyIfSo) report_if(marked, rule, hand);
  mark_first_endpoint(marked, hand);
  mark_endpoint(marked, hand);
  if (!marked.level().hand_bands.empty()) {
    hand.push_back(judge_bands(
        marked,
        {Score::hand, "titrant-volume", "true volume against equivalence",
         "Take the largest cause of these runs first. Where it is the endpoint, stop at the first colour "
         "that lasts: near it a half drop is enough.",
         hand_error_cm3, nothing_to_stop_at},
        marked.level().hand_bands));
  }
  append_findings(Score::hand, std::move(hand), findings);
}

}  // namespace halfdrop
