// What keys do to the hands.

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/scenes/bench_layout.h"
#include "game/scenes/eye_picture.h"
#include "game/scenes/overlays.h"
#include "game/scenes/piece_keys.h"
#include "game/scenes/play_scene.h"

namespace halfdrop {

namespace {

using Key = sf::Keyboard;

constexpr double kTapStep = 0.005, kTapFine = 0.0005, kTapCoarse = 0.05;
// An arrow that is held turns on after a moment, in positions a second.
constexpr double kTurnsAfter_s = 0.30, kTurn_per_s = 0.20, kFineTurn_per_s = 0.01, kCoarseTurn_per_s = 0.8;
constexpr double kClampStep_mm = 5.0;
constexpr double kCardBelowEye_mm = 3.0;  ///< two or three divisions

HandsChange tap_to(double tap) {
  HandsChange change;
  change.tap = std::clamp(tap, 0.0, 1.0);
  return change;
}

/// Keys that always mean the same deed.
std::optional<Deed> simple_deed(Key::Key key) {
  switch (key) {
    case Key::C:
      return Deed::put_on_coat;
    case Key::I:
      return Deed::add_indicator;
    case Key::O:
      return Deed::touch_off_drop;
    case Key::J:
      return Deed::flick_jet;
    case Key::X:
      return Deed::empty_flask;
    case Key::U:
      return Deed::blow_out_pipette;
    default:
      return std::nullopt;
  }
}

}  // namespace

void PlayScene::move_hands(const HandsChange& change) {
  if (const auto refused = session_.set_hands(change)) tell(*refused);
}

void PlayScene::act(Deed deed) {
  if (const auto refused = session_.act(deed)) {
    tell(*refused);
  } else {
    message_left_s_ = 0;
  }
  look();
}

void PlayScene::act_either(Deed first, Deed second, bool second_holds) { act(second_holds ? second : first); }

/// Unless it is in the hand already.
void PlayScene::take_up(Deed bottle) {
  if (!check(session_.spec(), session_.state(), bottle)) act(bottle);
}

/// Titrant, water, sample, and round again.
void PlayScene::take_up_next() {
  if (!outfit_.titration) return act(Deed::take_up_water);  // which a drill refuses, with a word why
  switch (view_.in_hand) {
    case Bottle::titrant:
      act(Deed::take_up_water);
      return tell(say("hint.hand.water"));
    case Bottle::water:
      act(Deed::take_up_sample);
      return tell(say("hint.hand.sample"));
    case Bottle::sample:
      act(Deed::take_up_titrant);
      return tell(say("hint.hand.titrant"));
  }
}

void PlayScene::set_tap(double tap) {
  // The hand remembers where it last left the tap open.
  if (tap <= 0.0 && session_.hands().tap > 0.0) last_open_tap_ = session_.hands().tap;
  move_hands(tap_to(tap));
}

void PlayScene::begin_turn(int direction, const sf::Event::KeyEvent& key) {
  if (turning_ == direction) return;  // the keyboard repeats itself
  turning_ = direction;
  turning_for_s_ = 0.0;
  const double step = key.shift ? kTapFine : (key.control ? kTapCoarse : kTapStep);
  set_tap(session_.hands().tap + direction * step);
}

void PlayScene::keep_turning(double wall_s) {
  if (turning_ == 0) return;
  turning_for_s_ += wall_s;
  if (turning_for_s_ < kTurnsAfter_s) return;
  const double rate = shift_ ? kFineTurn_per_s : (control_ ? kCoarseTurn_per_s : kTurn_per_s);
  set_tap(session_.hands().tap + turning_ * rate * wall_s);
}

void PlayScene::move_eye(double by_mm) {
  HandsChange change;
  change.eye_mm = std::clamp(session_.hands().eye_mm + by_mm, kEyeLowest_mm, kEyeHighest_mm);
  move_hands(change);
}

void PlayScene::move_clamp(double by_mm) {
  HandsChange change;
  change.clamp_mm = std::clamp(session_.hands().clamp_mm + by_mm, kClampLowest_mm, kClampHighest_mm);
  move_hands(change);
}

void PlayScene::hold_card_below_eye() {
  HandsChange change;
  change.card_mm =
      std::clamp(eye_above_zero_mm(session_.hands()) - kCardBelowEye_mm, kEyeLowest_mm, kEyeHighest_mm);
  move_hands(change);
}

void PlayScene::move_flask(bool under) {
  HandsChange change;
  change.flask_x_cm = under ? 0.0 : layout::kParked_cm;
  move_hands(change);
}

void PlayScene::take(Grasp grasp, double strength) {
  move_hands(grasps_.take(grasp, strength, session_.state().tick));
}

void PlayScene::release(Grasp grasp) { move_hands(grasps_.release(grasp, session_.state().tick)); }

/// Whatever must be held is let go: a key was lifted elsewhere, the window lost the keyboard.
void PlayScene::let_go() {
  drag_ = {};
  turning_ = 0;
  const HandsChange change = grasps_.release_all(session_.hands());
  if (!session_.ended() && !change.empty()) move_hands(change);
}

bool PlayScene::hand_key(const sf::Event::KeyEvent& key) {
  const double eye_step = key.shift ? 10.0 : 1.0;
  switch (key.code) {
    case Key::Left:
      begin_turn(-1, key);
      return true;
    case Key::Right:
      begin_turn(1, key);
      return true;
    case Key::S:
      set_tap(0.0);
      return true;
    case Key::D:
      set_tap(last_open_tap_);
      return true;
    case Key::Up:
      key.control ? move_clamp(kClampStep_mm) : move_eye(eye_step);
      return true;
    case Key::Down:
      key.control ? move_clamp(-kClampStep_mm) : move_eye(-eye_step);
      return true;
    case Key::PageUp:
      key.control ? move_clamp(50.0) : move_eye(50.0);
      return true;
    case Key::PageDown:
      key.control ? move_clamp(-50.0) : move_eye(-50.0);
      return true;
    case Key::F:
      move_flask(!view_.flask_under_jet);
      return true;
    case Key::K:
      hold_card_below_eye();
      return true;
    default:
      return hold_key(key);
  }
}

/// Keys that work while they are held.
bool PlayScene::hold_key(const sf::Event::KeyEvent& key) {
  switch (key.code) {
    case Key::Space:
      take(Grasp::swirl, key.shift ? 1.0 : kSwirlsWell);
      return true;
    case Key::W:
      take(Grasp::wash, 1.0);
      return true;
    case Key::P:
      take(Grasp::pour, key.shift ? kGentlePour : 1.0);
      return true;
    case Key::E:
      take(Grasp::turn, 1.0);
      return true;
    case Key::Z:
      work_filler(key.shift);
      return true;
    default:
      return false;
  }
}

/// One key for a deed and its undoing.
struct Either {
  sf::Keyboard::Key key;
  Deed deed, undoing;
  bool View::*done;
};
constexpr Either kEither[] = {{Key::G, Deed::put_on_goggles, Deed::take_off_goggles, &View::goggles_on},
                              {Key::N, Deed::put_in_funnel, Deed::lift_out_funnel, &View::funnel_in},
                              {Key::L, Deed::lay_tile, Deed::take_tile_away, &View::tile_laid},
                              {Key::Home, Deed::swing_over_edge, Deed::swing_back, &View::over_edge}};

bool PlayScene::deed_key(const sf::Event::KeyEvent& key) {
  for (const Either& either : kEither) {
    if (either.key != key.code) continue;
    act_either(either.deed, either.undoing, view_.*either.done);
    return true;
  }
  if (const std::optional<Deed> deed = simple_deed(key.code)) {
    const bool second = *deed == Deed::add_indicator && key.shift && session_.level().then;
    act(second ? Deed::add_second_indicator : *deed);
    return true;
  }
  switch (key.code) {
    case Key::B:
      if (key.shift) {
        act(Deed::empty_beaker);
      } else {
        act_either(Deed::put_beaker_under, Deed::take_beaker_away, view_.beaker_under);
      }
      return true;
    case Key::V:
      act(key.shift ? Deed::rinse_flask_with_sample : Deed::rinse_flask);
      return true;
    case Key::Y:
      act(pipette_rinse(view_));
      return true;
    case Key::Q:
      take_up_next();
      return true;
    case Key::M:
      act_either(Deed::wipe_bench, Deed::wipe_pipette, view_.pipette.outside_wet);
      return true;
    case Key::A:
      if (view_.pipette.by_hand) return move_pipette(key.shift), true;
      act_either(Deed::fill_pipette, Deed::deliver_aliquot, view_.pipette_cm3 > 0.5);
      return true;
    default:
      return false;
  }
}

void PlayScene::key_pressed(const sf::Event::KeyEvent& key) {
  shift_ = key.shift;
  control_ = key.control;
  if (key.code == Key::F1) {
    card_ = Card::keys;
  } else if (key.code == Key::F2) {
    open_method();
  } else if (key.code == Key::F3) {
    turn_guide();
  } else if (key.code == Key::Escape) {
    paused_ = true;
    pause_choice_ = 0;
    let_go();
  } else if (key.code == answered_by_) {
    return;  // the keyboard repeats itself
  } else if (answer(piece_of_key(key))) {
    answered_by_ = key.code;
  } else if (!making_up_key(key) && !hand_key(key)) {
    deed_key(key);
  }
}

void PlayScene::key_released(const sf::Event::KeyEvent& key) {
  shift_ = key.shift;
  control_ = key.control;
  if (key.code == answered_by_) answered_by_.reset();
  if (key.code == (turning_ < 0 ? Key::Left : Key::Right)) turning_ = 0;
  if (key.code == Key::Space) release(Grasp::swirl);
  if (key.code == Key::W) release(Grasp::wash);
  if (key.code == Key::P) release(Grasp::pour);
  if (key.code == Key::E) release(Grasp::turn);
  if (key.code == Key::Z && !runs_by_itself()) release(Grasp::filler);
  making_up_key_released(key);
}

void PlayScene::choose(std::size_t button) {
  paused_ = false;
  switch (pause_buttons()[button].choice) {
    case PauseChoice::go_on:
      break;
    case PauseChoice::method:
      open_method();
      break;
    case PauseChoice::level_list:
      wish_ = Wish::level_list;
      break;
    case PauseChoice::hand_in: {
      // The paper asks whether it is meant.
      sf::Event hand_in{};
      hand_in.type = sf::Event::KeyPressed;
      hand_in.key.code = Key::H;
      paper_->event(hand_in, pointer_, session_);
    }
  }
}

bool PlayScene::pause_event(const sf::Event& event, Point at) {
  const auto& buttons = pause_buttons();
  if (event.type == sf::Event::KeyPressed) {
    switch (event.key.code) {
      case Key::Escape:
        choose(0);
        break;
      case Key::Enter:
      case Key::Space:
        choose(pause_choice_);
        break;
      case Key::Up:
        pause_choice_ = (pause_choice_ + buttons.size() - 1) % buttons.size();
        break;
      case Key::Down:
      case Key::Tab:
        pause_choice_ = (pause_choice_ + 1) % buttons.size();
        break;
      default:
        break;
    }
  }
  for (std::size_t i = 0; i < buttons.size(); ++i) {
    if (!buttons[i].rect.contains(at)) continue;
    if (event.type == sf::Event::MouseMoved) pause_choice_ = i;
    if (event.type == sf::Event::MouseButtonPressed && event.mouseButton.button == sf::Mouse::Left) {
      choose(i);
      break;
    }
  }
  return true;
}

void PlayScene::event(const sf::Event& event, Point pointer) {
  if (event.type == sf::Event::MouseMoved) pointer_ = pointer;
  if (!looking_.empty()) {
    const bool key = event.type == sf::Event::KeyPressed, click = event.type == sf::Event::MouseButtonPressed;
    if (key || click) wish_ = Wish::back;
    return;
  }
  if (session_.ended()) return;
  if (event.type == sf::Event::LostFocus) let_go();
  if (card_ != Card::none &&
      (event.type == sf::Event::KeyPressed || event.type == sf::Event::MouseButtonPressed)) {
    card_ = Card::none;
    return;
  }
  if (paused_) {
    pause_event(event, pointer);
    return;
  }
  if (event.type == sf::Event::KeyReleased) {
    paper_->event(event, pointer, session_);
    key_released(event.key);
  } else if (event.type == sf::Event::MouseButtonReleased) {
    end_drag();
  } else if (!paper_->event(event, pointer, session_)) {
    if (event.type == sf::Event::KeyPressed) key_pressed(event.key);
    if (event.type == sf::Event::MouseButtonPressed) mouse_pressed(event.mouseButton, pointer);
    if (event.type == sf::Event::MouseMoved) mouse_moved(pointer);
    if (event.type == sf::Event::MouseWheelScrolled) wheel(event.mouseWheelScroll.delta, pointer);
  }
  if (session_.ended()) wish_ = Wish::marks;
}

}  // namespace halfdrop
