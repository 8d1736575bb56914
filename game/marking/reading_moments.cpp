#include "game/marking/reading_moments.h"

#include <cmath>

#include "game/session/view.h"

namespace halfdrop {

namespace {

FlaskStory story_between(const Ledger& begin, const Ledger& end) {
  const auto since = [&](Account from, Account to) { return end.moved(from, to) - begin.moved(from, to); };
  FlaskStory story;
  story.analyte_from_pipette = since(Account::pipette, Account::flask_rest).amount(Component::analyte);
  story.lost = since(Account::flask_rest, Account::bench_top) + since(Account::flask_landing, Account::bench_top);
  return story;
}

}  // namespace

void ReadingMoments::after_change(const Session& session, const Change& change) {
  if (const auto* deed = std::get_if<Deed>(&change.what)) {
    if (*deed != Deed::empty_flask && *deed != Deed::rinse_flask) return;
    flask_begun_ = session.state().ledger;
    emptied_at_ = session.state().tick;
    started_.clear();
  } else if (const auto* writing = std::get_if<Writing>(&change.what)) {
    written(session, *writing);
  }
}

void ReadingMoments::written(const Session& session, const Writing& writing) {
  const auto slash = writing.cell.rfind('/');
  const std::string run = writing.cell.substr(0, slash);
  const std::string row = writing.cell.substr(slash + 1);
  if (run == "calculation" || (row != "initial" && row != "final")) return;
  std::optional<ReadingMoment>& place = row == "initial" ? runs_[run].initial : runs_[run].final;
  const std::optional<double> value = number_written(writing.text);
  if (!value) {
    if (writing.text.empty()) place.reset();
    return;
  }
  const ReadingSeen seen = reading_seen(session.spec(), session.state());
  // Off the scale, or the flask of that final reading is gone: the paper is put right, nothing is read anew.
  const bool flask_gone = place && row == "final" && emptied_at_ >= place->bench.tick;
  if (place && (flask_gone || std::fabs(*value - seen.bottom_cm3) > kCorrectionOnPaper_cm3)) {
    place->written_cm3 = *value;
    return;
  }
  place = ReadingMoment{*value, seen.bottom_cm3, seen.edge_cm3, session.state()};
  if (row == "final") final_written(session, run, *place);
}

void ReadingMoments::final_written(const Session& session, const std::string& run, const ReadingMoment& moment) {
  const auto [begun, first] = started_.try_emplace(run, flask_begun_);
  runs_[run].story = story_between(begun->second, moment.bench.ledger);
  if (first) flask_begun_ = session.state().ledger;
}

}  // namespace halfdrop
