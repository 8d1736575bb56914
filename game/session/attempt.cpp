#include "game/session/attempt.h"

namespace halfdrop {

bool HandsChange::empty() const { return *this == HandsChange{}; }

void HandsChange::apply_to(Hands& hands) const {
  hands.tap = tap.value_or(hands.tap);
  hands.eye_mm = eye_mm.value_or(hands.eye_mm);
  hands.flask_x_cm = flask_x_cm.value_or(hands.flask_x_cm);
  hands.flask_y_cm = flask_y_cm.value_or(hands.flask_y_cm);
  hands.swirl = swirl.value_or(hands.swirl);
  hands.wash = wash.value_or(hands.wash);
  hands.pour = pour.value_or(hands.pour);
  hands.tilt_degrees = tilt_degrees.value_or(hands.tilt_degrees);
  hands.card_mm = card_mm.value_or(hands.card_mm);
  hands.clamp_mm = clamp_mm.value_or(hands.clamp_mm);
  hands.valve = valve.value_or(hands.valve);
  hands.tip = tip.value_or(hands.tip);
  hands.fill = fill.value_or(hands.fill);
}

bool has_ended(const Attempt& attempt) {
  return !attempt.changes.empty() && std::holds_alternative<Ending>(attempt.changes.back().what);
}

}  // namespace halfdrop
