#include "game/marking/filling_drill.h"

#include "game/marking/written_number.h"
#include "game/session/view.h"
#include "physics/burette/column.h"

namespace halfdrop {

std::optional<double> FillingDrill::error_cm3() const {
  if (!looked || !written_cm3) return std::nullopt;
  return *written_cm3 - true_cm3;
}

void FillingWatch::look(const Session& session) {
  const BenchSpec& spec = session.spec();
  const BenchState& bench = session.state();
  const Ledger& books = bench.ledger;
  drill_.jet_air_cm3 = spec.burette.jet_cm3 - books.balance(Account::jet).volume_cm3();
  drill_.funnel_in = bench.funnel_in;
  drill_.funnel_cm3 = books.balance(Account::funnel).volume_cm3();
  drill_.hanging_cm3 = books.balance(Account::pendant_drop).volume_cm3();
  drill_.running = view(session).flow_cm3_s > 0.0;
  drill_.true_cm3 = scale_reading_cm3(spec.burette, books.balance(Account::column).volume_cm3());
  drill_.apparent_cm3 = reading_seen(spec, bench).bottom_cm3;
  drill_.on_scale = !books.balance(Account::column).empty() && drill_.true_cm3 >= 0.0 &&
                    drill_.true_cm3 <= spec.burette.nominal_cm3;
  drill_.poured_cm3 = books.moved(Account::titrant_bottle, Account::column).volume_cm3() +
                      books.moved(Account::titrant_bottle, Account::funnel).volume_cm3();
  drill_.tick = bench.tick;
}

void FillingWatch::after_change(const Session& session, const Change& change) {
  const Writing* const writing = std::get_if<Writing>(&change.what);
  if (writing == nullptr) return;
  look(session);
  drill_.looked = true;
}

FillingDrill FillingWatch::figures(const Session& session) {
  if (!drill_.looked) look(session);
  drill_.text = session.cell(reading_cell(1));
  drill_.written_cm3 = number_written(drill_.text);
  drill_.spilt_cm3 = session.state().ledger.entered(Account::bench_top).volume_cm3();
  return drill_;
}

}  // namespace halfdrop
