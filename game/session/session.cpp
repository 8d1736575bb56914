#include "game/session/session.h"

#include <cassert>
#include <cmath>
#include <utility>

#include "game/level/say.h"
#include "physics/bench/clamp.h"
#include "physics/bench/pipette_by_hand.h"
#include "physics/bench/reach.h"
#include "physics/bench/state_hash.h"

namespace halfdrop {

namespace {

/// Hands are kept to 1e-4 of their unit: finer than any hand, and short to write.
HandsChange rounded(HandsChange change) {
  for (auto* value : {&change.tap, &change.eye_mm, &change.flask_x_cm, &change.flask_y_cm, &change.swirl,
                      &change.wash, &change.pour, &change.tilt_degrees, &change.card_mm, &change.clamp_mm,
                      &change.valve, &change.tip, &change.fill}) {
    if (*value) **value = std::round(**value * 1e4) / 1e4;
  }
  return change;
}

/// Drops what would not change anything.
HandsChange news(HandsChange change, const Hands& hands) {
  const auto drop_if_same = [](std::optional<double>& value, double now) {
    if (value && *value == now) value.reset();
  };
  drop_if_same(change.tap, hands.tap);
  drop_if_same(change.eye_mm, hands.eye_mm);
  drop_if_same(change.flask_x_cm, hands.flask_x_cm);
  drop_if_same(change.flask_y_cm, hands.flask_y_cm);
  drop_if_same(change.swirl, hands.swirl);
  drop_if_same(change.wash, hands.wash);
  drop_if_same(change.pour, hands.pour);
  drop_if_same(change.tilt_degrees, hands.tilt_degrees);
  drop_if_same(change.card_mm, hands.card_mm);
  drop_if_same(change.clamp_mm, hands.clamp_mm);
  drop_if_same(change.valve, hands.valve);
  drop_if_same(change.tip, hands.tip);
  drop_if_same(change.fill, hands.fill);
  return change;
}

std::optional<Refusal> blocks(const BenchSpec& spec, const BenchState& state, const HandsChange& change) {
  if (change.tilt_degrees.value_or(0.0) > 0.0 && state.funnel_in) return Refusal::funnel_in_the_way;
  if (change.clamp_mm) {
    if (const auto refusal = in_the_way_of_clamp(spec, state, *change.clamp_mm)) return refusal;
  }
  if (!change.flask_x_cm && !change.flask_y_cm) return std::nullopt;
  if (pipette_over_flask(state)) return Refusal::pipette_over_flask;
  return in_the_way_of_flask(spec, state, change.flask_x_cm.value_or(state.hands.flask_x_cm),
                             change.flask_y_cm.value_or(state.hands.flask_y_cm));
}

}  // namespace

Session::Session(Level level, std::uint64_t seed, std::string alias, Way way)
    : attempt_{std::move(level), seed, std::move(alias), {}, way},
      spec_(bench_spec(attempt_.level, seed)),
      state_(lay_out(spec_)) {}

void Session::log(decltype(Change::what) what) {
  attempt_.changes.push_back(Change{state_.tick, std::move(what)});
  if (on_change) on_change(attempt_.changes.back());
}

std::optional<std::string> Session::set_hands(const HandsChange& change) {
  if (ended_) return say("refusal.ended");
  if (auto wrong = check_hands(change)) return wrong;
  if (auto foreign = not_in_level(level(), change)) return foreign;
  if (const auto refusal = blocks(spec_, state_, change)) return std::string(refusal_text(*refusal));
  const HandsChange kept = news(rounded(change), state_.hands);
  if (kept.empty()) return std::nullopt;
  kept.apply_to(state_.hands);
  log(kept);
  return std::nullopt;
}

std::optional<std::string> Session::act(Deed deed) {
  if (ended_) return say("refusal.ended");
  if (auto foreign = not_in_level(level(), deed)) return foreign;
  if (const auto refusal = check(spec_, state_, deed)) return std::string(refusal_text(*refusal));
  apply(spec_, state_, deed);
  log(deed);
  return std::nullopt;
}

std::optional<std::string> Session::write(const Writing& writing) {
  if (ended_) return say("refusal.ended");
  if (auto wrong = check_writing(level(), writing)) return wrong;
  sheet_[writing.cell] = writing.text;
  log(writing);
  return std::nullopt;
}

void Session::end(const std::string& how) {
  assert(!ended_);
  log(Ending{how, state_hash(state_)});
  ended_ = true;
}

void Session::mark_time() {
  if (ended_) return;
  HandsChange same;
  same.tap = state_.hands.tap;
  if (!not_in_level(level(), same)) log(same);
}

void Session::tick() {
  assert(!ended_);
  step(spec_, state_, Hands(state_.hands));
}

std::string Session::cell(const std::string& name) const {
  const auto found = sheet_.find(name);
  return found == sheet_.end() ? std::string() : found->second;
}

}  // namespace halfdrop
