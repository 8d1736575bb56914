#include "game/scenes/one_drop.h"

#include <cmath>
#include <optional>

#include "game/demonstrator/demonstrator.h"
#include "game/session/action.h"
#include "game/session/replay.h"
#include "physics/flask/contents.h"
#include "physics/flask/liquid.h"

namespace halfdrop {

namespace {

constexpr double kSwirled = 0.8;
/// Of what falls of a drop that grew slowly: what is less was shaken off.
constexpr double kWhole = 0.8;
/// Further from the run's end than this it is no drop of the endpoint (two or three drops).
constexpr double kNear_cm3 = 0.15;
constexpr double kEvens_s = 20.0, kRests_s = 40.0, kFalls_s = 30.0;

Tick ticks(double s) { return static_cast<Tick>(std::llround(s * kTicksPerSecond)); }

Quanta fallen_in(const Session& session) {
  return session.state().ledger.moved(Account::in_flight, Account::flask).volume;
}

/// A drop on its way from the opening of the tap to the liquid.
struct Fall {
  Session before;           ///< tap shut
  std::vector<Change> tap;  ///< from then on
  Tick lands = 0;
  double reading_cm3 = 0.0;  ///< truly, when it had landed
};

/// Goes along with a run and keeps the last fall that is asked for.
class Finder {
 public:
  void before(const Session& session, const Change& change) {
    const auto* const hands = std::get_if<HandsChange>(&change.what);
    if (hands == nullptr || !hands->tap) return;
    if (session.hands().tap == 0.0) {
      now_ = Fall{session, {}, 0, 0.0};
      now_->before.on_change = nullptr;
      in_before_ = fallen_in(session);
    }
    if (now_ && now_->lands == 0) now_->tap.push_back(change);
  }

  void after_tick(const Session& session) {
    if (!now_ || now_->lands != 0) return;
    const Quanta in = fallen_in(session) - in_before_;
    if (in == 0) return;
    now_->lands = session.state().tick;
    now_->reading_cm3 = view(session).meniscus_cm3;
    const double whole_cm3 = session.spec().settled.full_drop_cm3;
    const Parcel& liquid = flask_liquid(session.state().ledger);
    const double change =
        visible_change(session.spec(), liquid, Hydration::as_it_stands, endpoint_due(session.spec(), liquid));
    if (static_cast<double>(in) * kVolumeQuantum_cm3 >= kWhole * whole_cm3 && change < kFirstVisibleChange)
      found_ = now_;
  }

  [[nodiscard]] const std::optional<Fall>& found() const { return found_; }

 private:
  std::optional<Fall> now_, found_;
  Quanta in_before_ = 0;
};

/// When a cell is first written into.
std::optional<Tick> written_at(const Attempt& attempt, const std::string& cell) {
  for (const Change& change : attempt.changes) {
    const auto* const writing = std::get_if<Writing>(&change.what);
    if (writing != nullptr && writing->cell == cell) return change.tick;
  }
  return std::nullopt;
}

tl::expected<Fall, std::string> find_fall(const Attempt& attempt) {
  const std::string run = run_names(attempt.level).at(1);
  const auto from = written_at(attempt, run + "/initial"), to = written_at(attempt, run + "/final");
  if (!from || !to) return tl::unexpected(std::string("The first accurate run was not brought to its end."));
  Finder finder;
  ReplayWatcher watcher;
  watcher.before_change = [&](const Session& session, const Change& change) {
    if (change.tick > *from) finder.before(session, change);
  };
  watcher.after_tick = [&](const Session& session) { finder.after_tick(session); };
  const Session end = replay(attempt, watcher, *to).session;
  if (!finder.found() || view(end).meniscus_cm3 - finder.found()->reading_cm3 > kNear_cm3)
    return tl::unexpected(std::string("No whole drop fell alone just before the endpoint."));
  return *finder.found();
}

std::optional<std::string> hold(Session& bench, std::optional<double> HandsChange::*hand, double value) {
  HandsChange change;
  change.*hand = value;
  return bench.set_hands(change);
}

void wait(Session& bench, double s) {
  for (Tick left = ticks(s); left > 0; --left) bench.tick();
}

/// Moves the tap as it was moved until the drop is in. What was refused, if anything.
std::optional<std::string> let_fall(Session& bench, const Fall& fall) {
  const Tick later = bench.state().tick - fall.before.state().tick,
             last = bench.state().tick + ticks(kFalls_s);
  const Quanta in = fallen_in(bench);
  for (auto next = fall.tap.begin(); fallen_in(bench) == in; bench.tick()) {
    for (; next != fall.tap.end() && next->tick + later <= bench.state().tick; ++next) {
      if (auto refused = bench.set_hands(std::get<HandsChange>(next->what))) return refused;
    }
    if (bench.state().tick > last) return "The drop did not fall a second time.";
  }
  return hold(bench, &HandsChange::tap, 0.0);
}

tl::expected<DropViews, std::string> watch(const Fall& fall, double swirl) {
  Session bench = fall.before;
  DropViews views;
  auto refused = hold(bench, &HandsChange::swirl, kSwirled);
  wait(bench, kEvens_s);
  if (!refused) refused = hold(bench, &HandsChange::swirl, swirl);
  wait(bench, kRests_s);
  if (!refused) refused = let_fall(bench, fall);
  if (refused) return tl::unexpected(*refused);
  const Tick met = bench.state().tick;
  for (std::size_t i = 0; i < views.size(); ++i) {
    while (bench.state().tick < met + ticks(kDropMoments_s[i])) bench.tick();
    views[i] = view(bench, kForAPicture);
  }
  return views;
}

}  // namespace

tl::expected<OneDrop, std::string> one_drop_twice(const Level& level, std::uint64_t seed) {
  if (level.drill) return tl::unexpected(std::string("A drill has no endpoint: a strip needs a titration."));
  const Performance performance = perform(level, seed, "");
  if (performance.gave_up) return tl::unexpected("The demonstrator gave up: " + *performance.gave_up + ".");
  const auto fall = find_fall(performance.attempt);
  if (!fall) return tl::unexpected(fall.error());
  const auto swirled = watch(*fall, kSwirled);
  if (!swirled) return tl::unexpected(swirled.error());
  const auto still = watch(*fall, 0.0);
  if (!still) return tl::unexpected(still.error());
  return OneDrop{fall->before, *swirled, *still};
}

}  // namespace halfdrop
