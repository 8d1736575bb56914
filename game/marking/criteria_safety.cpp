// The gate: coat and eye protection from first liquid to last, spills dealt with.

#include "game/level/say.h"
#include "game/marking/criteria.h"
#include "game/marking/wording.h"
#include "physics/flask/liquid.h"

namespace halfdrop {

namespace {

/// Up to two drops on the bench are passed over; more has to be wiped before handing in (our own choice).
constexpr double kPassedOver_cm3 = 0.1;
/// A shaken-out flask keeps about this much water.
constexpr double kRinsedHeel_cm3 = 0.3;

Finding worn(const Case& marked, const char* id, std::optional<Tick> without, Phrase on, Phrase off) {
  Finding finding{Score::safety, id, !without, 0.0, 0.0, "", marked.end(), std::nullopt, ""};
  if (!marked.evidence.first_liquid) {
    finding.seen = say("find.no_liquid");
    return finding;
  }
  finding.tick = without.value_or(*marked.evidence.first_liquid);
  if (finding.met) {
    finding.seen = say(on);
    return finding;
  }
  finding.seen = say(off);
  return finding;
}

/// That it was off at the end, with liquid still standing that has to be cleared away; empty when none does.
std::string off_at_the_end(const BenchState& bench) {
  const bool burette = bench.ledger.balance(Account::column).volume_cm3() > kPassedOver_cm3;
  const bool flask = flask_liquid(bench.ledger).volume_cm3() - kRinsedHeel_cm3 > kPassedOver_cm3;
  if (burette && flask) return say("find.eye_protection.off_both");
  if (burette) return say("find.eye_protection.off_burette");
  return flask ? say("find.eye_protection.off_flask") : std::string();
}

Finding eye_protection(const Case& marked) {
  Finding finding = worn(marked, "eye-protection", marked.evidence.without_goggles,
                         "find.eye_protection.right", "find.eye_protection.wrong");
  const BenchState& bench = marked.session.state();
  const std::string off = off_at_the_end(bench);
  if (finding.met && marked.evidence.first_liquid && !bench.goggles_on && !off.empty()) {
    finding.seen = off;
  }
  if (!finding.met) {
    finding.advice = say("find.eye_protection.advice");
  }
  return finding;
}

Finding coat(const Case& marked) {
  Finding finding = worn(marked, "coat", marked.evidence.without_coat, "find.coat.right", "find.coat.wrong");
  if (!finding.met) finding.advice = say("find.coat.advice");
  return finding;
}

Finding spills_wiped(const Case& marked) {
  const double spilt_cm3 = marked.session.state().ledger.balance(Account::bench_top).volume_cm3();
  Finding finding{Score::safety,
                  "spills-wiped",
                  spilt_cm3 <= kPassedOver_cm3,
                  0.0,
                  0.0,
                  "",
                  marked.end(),
                  std::nullopt,
                  ""};
  if (!marked.evidence.first_spill) {
    finding.seen = say("find.spills.none");
    return finding;
  }
  finding.tick = *marked.evidence.first_spill;
  if (!finding.met) {
    finding.seen = say("find.spills.wrong", {{"spilt", cm3_text(spilt_cm3)}});
    finding.advice = say("find.spills.advice");
  } else if (spilt_cm3 > 0.0) {
    finding.seen = say("find.spills.passed_over", {{"spilt", cm3_text(spilt_cm3)}});
  } else {
    finding.seen = say("find.spills.wiped");
  }
  return finding;
}

}  // namespace

void mark_safety(const Case& marked, std::vector<Finding>& findings) {
  for (const Criterion criterion : {eye_protection, coat, spills_wiped})
    findings.push_back(criterion(marked));
}

}  // namespace halfdrop
