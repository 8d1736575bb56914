#include "game/demonstrator/at_bench.h"

#include <cmath>

namespace halfdrop {

namespace {

/// An unhurried pair of hands (our own estimate).
double takes_s(Deed deed) {
  switch (deed) {
    case Deed::fill_pipette:
      return 25.0;
    case Deed::deliver_aliquot:
      return 30.0;
    case Deed::rinse_flask:
      return 12.0;
    case Deed::put_on_coat:
      return 6.0;
    case Deed::touch_off_drop:
    case Deed::next_picture:
    case Deed::close_volume:
      return 1.0;
    case Deed::add_indicator:
    case Deed::add_second_indicator:
      return 1.5;
    default:
      return 2.0;
  }
}

constexpr double kWriting_s = 1.5;

}  // namespace

bool AtBench::working() {
  if (!gave_up_ && session_.time_is_up()) give_up("the time of an attempt is up");
  return !gave_up_;
}

void AtBench::give_up(const std::string& reason) {
  if (!gave_up_) gave_up_ = reason;
}

void AtBench::expect(const std::optional<std::string>& refused, std::string_view doing) {
  if (refused) give_up(std::string(doing) + ": " + *refused);
}

void AtBench::hold(std::optional<double> HandsChange::*hand, double value) {
  HandsChange change;
  change.*hand = value;
  if (working()) expect(session_.set_hands(change), "hands");
}

void AtBench::act(Deed deed) {
  if (!working()) return;
  expect(session_.act(deed), deed_name(deed));
  wait(takes_s(deed));
}

void AtBench::write(const std::string& cell, const std::string& text) {
  if (!working()) return;
  expect(session_.write({cell, text}), cell);
  wait(kWriting_s);
}

void AtBench::wait(double seconds) {
  for (Tick left = std::llround(seconds * kTicksPerSecond); left > 0 && working(); --left) session_.tick();
}

bool AtBench::watch_until(const std::function<bool(const Senses&)>& holds, double limit_s) {
  const Tick last = session_.state().tick + std::llround(limit_s * kTicksPerSecond);
  while (working()) {
    if (holds(look())) return true;
    if (session_.state().tick >= last) return false;
    for (Tick i = 0; i < kLookEvery && working(); ++i) session_.tick();
  }
  return false;
}

}  // namespace halfdrop
