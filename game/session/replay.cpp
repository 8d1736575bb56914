#include "game/session/replay.h"

namespace halfdrop {

namespace {

/// Does one change; says what was refused.
struct Doer {
  Session& session;

  std::optional<std::string> operator()(const HandsChange& change) const { return session.set_hands(change); }
  std::optional<std::string> operator()(Deed deed) const { return session.act(deed); }
  std::optional<std::string> operator()(const Writing& writing) const { return session.write(writing); }
  std::optional<std::string> operator()(const Ending& ending) const {
    session.end(ending.how);
    const auto& own = std::get<Ending>(session.attempt().changes.back().what);
    if (own.state_hash == ending.state_hash) return std::nullopt;
    return "the bench ends as " + own.state_hash + ", the attempt says " + ending.state_hash;
  }
};

}  // namespace

Replay replay(const Attempt& attempt, const ReplayWatcher& watcher, Tick until) {
  Replay result{Session(attempt.level, attempt.seed, attempt.alias, attempt.way), {}};
  Session& session = result.session;
  for (const Change& change : attempt.changes) {
    while (session.state().tick < change.tick && session.state().tick < until) {
      session.tick();
      if (watcher.after_tick) watcher.after_tick(session);
    }
    if (change.tick > until) return result;
    if (watcher.before_change) watcher.before_change(session, change);
    const auto refused = std::visit(Doer{session}, change.what);
    if (refused && result.outcome.reproduced) {
      result.outcome.reproduced = false;
      result.outcome.first_difference = change.tick;
      result.outcome.message = *refused;
    }
    result.outcome.compared = session.ended();
    if (watcher.after_change) watcher.after_change(session, change);
    if (session.ended()) return result;
  }
  if (until == kLongestAttempt) return result;
  while (session.state().tick < until) {
    session.tick();
    if (watcher.after_tick) watcher.after_tick(session);
  }
  return result;
}

}  // namespace halfdrop
