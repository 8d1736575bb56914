// What the mouse does to the hands.

#include <algorithm>
#include <cmath>

#include "game/scenes/bench_layout.h"
#include "game/scenes/eye_picture.h"
#include "game/scenes/play_scene.h"

namespace halfdrop {

namespace {

constexpr double kWheelTap = 0.002;
constexpr float kLiftsFromUnits = 30.0F;  ///< dragged up so far it leaves the bench
constexpr double kClampSnap_mm = 6.0;     ///< ... and the burette its own height
constexpr float kSnapUnits = 16.0F;       ///< the flask finds its places within this

HandsChange flask_dragged(double x, float up) {
  HandsChange change;
  double place = layout::flask_x_cm_at(static_cast<float>(x));
  for (const double home : {0.0, layout::kParked_cm}) {
    if (std::abs(static_cast<float>(x) - layout::flask_x(home)) < kSnapUnits) place = home;
  }
  change.flask_x_cm = place;
  change.flask_y_cm =
      std::clamp(static_cast<double>((up - kLiftsFromUnits) / layout::kNearUnits_cm), 0.0, kFlaskLift_cm);
  return change;
}

double clamp_dragged_mm(const BenchSpec& spec, double from_mm, float down) {
  const layout::FarScale far(spec);
  const double clamp_mm = from_mm - static_cast<double>(down / far.units_mm);
  return std::fabs(clamp_mm) < kClampSnap_mm ? 0.0 : std::clamp(clamp_mm, kClampLowest_mm, kClampHighest_mm);
}

}  // namespace

void PlayScene::begin_drag(const Thing& thing, Point at) {
  drag_ = {thing.grip, at, 0.0, {}};
  const Hands& hands = session_.hands();
  switch (thing.grip) {
    case Grip::flask:
      drag_.start = static_cast<double>(layout::flask_x(hands.flask_x_cm));
      break;
    case Grip::far_eye:
      drag_.start = hands.eye_mm;
      break;
    case Grip::clamp:
      drag_.start = hands.clamp_mm;
      break;
    case Grip::eye_rail:
    case Grip::card:
      drag_to(at);
      break;
    case Grip::pour:
      pour_from(thing, shift_ ? kGentlePour : 1.0);
      break;
    case Grip::burette:
      hold_by_button(Grasp::turn, 1.0);
      break;
    case Grip::filler:
      if (!runs_by_itself()) drag_.holds = Grasp::filler;
      work_filler(shift_);
      break;
    case Grip::wash:
      hold_by_button(Grasp::wash, 1.0);
      break;
    case Grip::tip:
    case Grip::let_in:
      hold_making_up(thing, shift_);
      break;
    case Grip::tap:
    case Grip::none:
      break;
  }
}

void PlayScene::end_drag() {
  if (drag_.holds) release(*drag_.holds);
  drag_ = {};
  if (session_.hands().flask_y_cm <= 0.0) return;
  HandsChange down;
  down.flask_y_cm = 0.0;
  move_hands(down);
}

void PlayScene::hold_by_button(Grasp grasp, double strength) {
  drag_.holds = grasp;
  take(grasp, strength);
}

void PlayScene::pour_from(const Thing& thing, double strength) {
  if (thing.pours) take_up(*thing.pours);
  hold_by_button(Grasp::pour, strength);
}

void PlayScene::drag_to(Point at) {
  HandsChange change;
  switch (drag_.grip) {
    case Grip::tap: {
      // The handle follows the hand round its axis: level is shut, upright is open.
      const Point d = at - Point{layout::kJetX, layout::tap_y(session_.spec(), session_.hands().clamp_mm)};
      if (std::hypot(d.x, d.y) < 10) return;
      change.tap = std::clamp(
          std::atan2(static_cast<double>(-d.y), static_cast<double>(std::max(d.x, 0.0F))) * 2 / kPi, 0.0,
          1.0);
      break;
    }
    case Grip::flask:
      change = flask_dragged(drag_.start + static_cast<double>(at.x - drag_.from.x), drag_.from.y - at.y);
      break;
    case Grip::far_eye: {
      const layout::FarScale far(session_.spec());
      change.eye_mm = std::clamp(drag_.start - static_cast<double>((at.y - drag_.from.y) / far.units_mm),
                                 kEyeLowest_mm, kEyeHighest_mm);
      break;
    }
    case Grip::clamp:
      change.clamp_mm = clamp_dragged_mm(session_.spec(), drag_.start, at.y - drag_.from.y);
      break;
    case Grip::eye_rail:
      change.eye_mm = std::clamp(EyePicture::eye_mm_at(outfit_.eye, at.y) + session_.hands().clamp_mm,
                                 kEyeLowest_mm, kEyeHighest_mm);
      break;
    case Grip::card:
      change.card_mm = std::clamp(EyePicture::eye_mm_at(outfit_.eye, at.y), kEyeLowest_mm, kEyeHighest_mm);
      break;
    default:
      return;
  }
  move_hands(change);
}

void PlayScene::mouse_pressed(const sf::Event::MouseButtonEvent& button, Point at) {
  if (guide_ && button.button == sf::Mouse::Left && guide_tab_.contains(at)) return turn_guide();
  const Thing* const under = thing_at(things_, at);
  if (under == nullptr) return;
  const Thing thing = *under;  // a deed lays all things out anew
  if (button.button == sf::Mouse::Left && answer(piece_of(thing))) return;
  if (drag_.holds) release(*drag_.holds);  // one hand on the mouse holds one thing
  if (button.button == sf::Mouse::Right) return right_pressed(thing, at);
  if (button.button != sf::Mouse::Left) return;
  if (thing.grip != Grip::none) {
    begin_drag(thing, at);
  } else if (thing.name == "pipette" && view_.pipette.by_hand) {
    move_pipette(false);
  } else if (thing.deed) {
    act(*thing.deed);
  }
}

void PlayScene::right_pressed(const Thing& thing, Point at) {
  if (thing.other_deed) return act(*thing.other_deed);
  if (thing.grip == Grip::filler) {
    drag_ = {Grip::none, at, 0.0, {}};
    if (!runs_by_itself()) drag_.holds = Grasp::filler;
    return work_filler(true);
  }
  if (thing.grip == Grip::tip || thing.grip == Grip::let_in) {
    drag_ = {Grip::none, at, 0.0, {}};
    return hold_making_up(thing, true);
  }
  const bool flask = thing.grip == Grip::flask, bottle = thing.grip == Grip::pour || thing.pours;
  if (flask || bottle) drag_ = {Grip::none, at, 0.0, {}};
  if (flask) hold_by_button(Grasp::swirl, kSwirlsWell);
  if (bottle) pour_from(thing, thing.grip == Grip::pour ? kGentlePour : 1.0);
}

void PlayScene::mouse_moved(Point at) {
  pointer_ = at;
  drag_to(at);
}

void PlayScene::wheel(float notches, Point at) {
  const auto steps = static_cast<double>(notches);
  const Thing* const thing = thing_at(things_, at);
  if (thing != nullptr && thing->grip == Grip::tap) {
    set_tap(session_.hands().tap + steps * kWheelTap);
  } else if (layout::kFar.contains(at) || outfit_.eye.contains(at)) {
    move_eye(steps * (shift_ ? 10.0 : 1.0));
  }
}

}  // namespace halfdrop
