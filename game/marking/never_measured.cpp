#include "game/marking/never_measured.h"

#include "game/level/say.h"

namespace halfdrop {

namespace {

bool nothing_in_burette(const ReadingMoment& moment) {
  constexpr double kNoMeniscus_cm3 = 0.001;
  return moment.bench.ledger.balance(Account::column).volume_cm3() < kNoMeniscus_cm3;
}

Quanta run_out(const ReadingMoment& moment) {
  return moment.bench.ledger.moved(Account::column, Account::jet).volume;
}

}  // namespace

std::optional<std::string> never_measured(const RunReadings& readings, const RunEvidence* evidence) {
  const auto& [initial, final, story] = readings;
  if (initial && nothing_in_burette(*initial)) return say("find.never_measured.initial");
  if (!final) return std::nullopt;
  if (nothing_in_burette(*final) && run_out(*final) == 0) return say("find.never_measured.final");
  const bool titrant_came = evidence != nullptr && evidence->flask && evidence->flask->entered_cm3 > 0.0;
  if (!initial || titrant_came || run_out(*final) != run_out(*initial)) return std::nullopt;
  return say("find.never_measured.nothing_ran");
}

}  // namespace halfdrop
