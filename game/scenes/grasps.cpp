#include "game/scenes/grasps.h"

#include "physics/burette/rinsing.h"

namespace halfdrop {

namespace {

constexpr std::array kAll = {Grasp::swirl,  Grasp::wash, Grasp::pour,  Grasp::turn,
                             Grasp::filler, Grasp::tip,  Grasp::let_in};

void set(HandsChange& change, Grasp grasp, double strength) {
  switch (grasp) {
    case Grasp::swirl:
      change.swirl = strength;
      break;
    case Grasp::wash:
      change.wash = strength;
      break;
    case Grasp::pour:
      change.pour = strength;
      break;
    case Grasp::turn:
      change.tilt_degrees = strength * kHeldAslant_degrees;
      break;
    case Grasp::filler:
      change.valve = strength;
      break;
    case Grasp::tip:
      change.tip = strength;
      break;
    case Grasp::let_in:
      change.fill = strength;
      break;
  }
}

}  // namespace

HandsChange Grasps::take(Grasp grasp, double strength, Tick now) {
  Hold& held = hold(grasp);
  if (!held.since || held.released) held = {now, false};  // a keyboard repeats what is held
  HandsChange change;
  set(change, grasp, strength);
  return change;
}

HandsChange Grasps::release(Grasp grasp, Tick now) {
  if (!hold(grasp).since) return {};
  hold(grasp).released = true;
  return due(now);
}

HandsChange Grasps::due(Tick now) {
  HandsChange change;
  for (const Grasp grasp : kAll) {
    Hold& held = hold(grasp);
    if (!held.released || now - *held.since < kShortestHold) continue;
    held = {};
    set(change, grasp, 0.0);
  }
  return change;
}

HandsChange Grasps::release_all(const Hands& hands) {
  holds_ = {};
  HandsChange change;
  if (hands.swirl > 0.0) set(change, Grasp::swirl, 0.0);
  if (hands.wash > 0.0) set(change, Grasp::wash, 0.0);
  if (hands.pour > 0.0) set(change, Grasp::pour, 0.0);
  if (hands.tilt_degrees > 0.0) set(change, Grasp::turn, 0.0);
  if (hands.valve != 0.0) set(change, Grasp::filler, 0.0);
  if (hands.tip > 0.0) set(change, Grasp::tip, 0.0);
  if (hands.fill > 0.0) set(change, Grasp::let_in, 0.0);
  return change;
}

}  // namespace halfdrop
