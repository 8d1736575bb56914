// The gate: coat and eye protection from first liquid to last, spills dealt with.

#include "game/marking/criteria.h"
#include "game/marking/wording.h"
#include "physics/flask/liquid.h"

namespace halfdrop {

namespace {

/// Up to two drops on the bench are passed over; more has to be wiped before handing in (our own choice).
constexpr double kPassedOver_cm3 = 0.1;
/// A shaken-out flask keeps about this much water.
constexpr double kRinsedHeel_cm3 = 0.3;

Finding worn(const Case& marked, const char* id, std::optional<Tick> without, const std::string& what) {
  Finding finding{Score::safety, id, !without, 0.0, 0.0, "", marked.end(), std::nullopt, ""};
  if (!marked.evidence.first_liquid) {
    finding.seen = "No liquid was handled.";
    return finding;
  }
  finding.tick = without.value_or(*marked.evidence.first_liquid);
  if (finding.met) {
    finding.seen = sentence(what) + " was on from first liquid to last.";
    return finding;
  }
  finding.seen = "Liquid was handled with " + what + " off.";
  return finding;
}

/// Where liquid still stands that has to be cleared away; empty when nowhere.
std::string still_standing(const BenchState& bench) {
  std::string where;
  const auto look = [&](double cm3, const char* vessel) {
    if (cm3 > kPassedOver_cm3) where += (where.empty() ? "" : " and ") + std::string(vessel);
  };
  look(bench.ledger.balance(Account::column).volume_cm3(), "burette");
  look(flask_liquid(bench.ledger).volume_cm3() - kRinsedHeel_cm3, "flask");
  return where;
}

Finding eye_protection(const Case& marked) {
  Finding finding = worn(marked, "eye-protection", marked.evidence.without_goggles, "eye protection");
  const BenchState& bench = marked.session.state();
  const std::string where = still_standing(bench);
  if (finding.met && marked.evidence.first_liquid && !bench.goggles_on && !where.empty()) {
    finding.seen =
        "Eye protection was on while liquid was handled. It was off at the end, with liquid still in the " +
        where + ": leave it on until the bench is cleared.";
  }
  if (!finding.met) {
    finding.advice =
        "Put it on before the first bottle is opened and leave it on until the bench is cleared.";
  }
  return finding;
}

Finding coat(const Case& marked) {
  Finding finding = worn(marked, "coat", marked.evidence.without_coat, "the coat");
  if (!finding.met) finding.advice = "Put it on and button it before the first bottle is opened.";
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
    finding.seen = "Nothing was spilt.";
    return finding;
  }
  finding.tick = *marked.evidence.first_spill;
  if (!finding.met) {
    finding.seen = cm3_text(spilt_cm3) + " lay on the bench at the end.";
    finding.advice = "Tell your teacher, wipe the bench, rinse the cloth.";
  } else if (spilt_cm3 > 0.0) {
    finding.seen = cm3_text(spilt_cm3) + " lay on the bench at the end; up to two drops are passed over.";
  } else {
    finding.seen = "A spill was wiped up.";
  }
  return finding;
}

}  // namespace

void mark_safety(const Case& marked, std::vector<Finding>& findings) {
  for (const Criterion criterion : {eye_protection, coat, spills_wiped})
    findings.push_back(criterion(marked));
}

}  // namespace halfdrop
