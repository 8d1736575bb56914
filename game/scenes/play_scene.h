#pragma once
// The bench being played: a session driven by mouse and keyboard in the wall's time, drawn each frame.

#include <SFML/Window/Event.hpp>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "game/records/attempt_file.h"
#include "game/scenes/grasps.h"
#include "game/scenes/guide_card.h"
#include "game/scenes/paper.h"
#include "game/scenes/senses_words.h"
#include "game/scenes/still_layer.h"
#include "game/scenes/things.h"

namespace halfdrop {

inline constexpr double kSwirlsWell = 0.8;  ///< harder throws drops out of the flask
inline constexpr double kGentlePour = 0.1;  ///< a thin stream, for the last of the filling

struct PlaySettings {
  double time_scale = 1.0;             ///< bench seconds a second of the wall
  bool projector = false;              ///< words at 4 % of the height at least
  bool say = false;                    ///< senses as lines on standard output
  std::vector<std::string> withdrawn;  ///< lines of the working that need no example any more
};

class PlayScene {
 public:
  PlayScene(Session session, std::optional<Journal> journal, const PlaySettings& settings);
  PlayScene(const PlayScene&) = delete;
  PlayScene& operator=(const PlayScene&) = delete;
  /// An attempt that goes on later does so where it stands now.
  ~PlayScene();

  /// Shows the bench as it stands; hands are tied and time stands still. `words` say what moment it is.
  void only_look(const std::string& words) { looking_ = words; }

  /// No greeting at the foot (for a still picture).
  void hide_words() { wordless_ = true; }

  void event(const sf::Event& event, Point pointer);
  /// Lets go of what must be held (swirling, washing, pouring).
  void let_go();
  /// Lets time pass on the bench.
  void advance(double wall_s);
  void draw(Canvas& canvas);

  enum class Wish { none, level_list, marks, back };
  /// What was asked for since last time.
  [[nodiscard]] Wish take_wish() { return std::exchange(wish_, Wish::none); }
  [[nodiscard]] const Session& session() const { return session_; }
  /// What was told last at the foot, while it stands there.
  [[nodiscard]] std::string told() const { return message_left_s_ > 0 ? message_ : std::string(); }
  /// The keys or the method lie over the bench.
  [[nodiscard]] bool shows_card() const { return card_ != Card::none; }
  /// The guide's step, while its card is shown; empty otherwise.
  [[nodiscard]] std::string_view guided_to() const;
  /// Where the attempt is kept; empty when it is not.
  [[nodiscard]] std::string file() const { return journal_ ? journal_->path() : std::string(); }
  /// Everything that can be clicked, by name.
  [[nodiscard]] std::vector<std::pair<std::string, Rect>> places() const;

 private:
  struct Drag {
    Grip grip = Grip::none;
    Point from;                  ///< pointer when it began
    double start = 0.0;          ///< the hand's value then
    std::optional<Grasp> holds;  ///< what lasts while the button is down
  };
  [[nodiscard]] BenchPicture picture() const;
  void look();
  void let_guide_look();
  void tell(const std::string& words);
  void say_senses();
  void mark_time();
  void open_method();
  void turn_guide();
  void draw_guide(Canvas& canvas, bool is_warning);
  void draw_foot(Canvas& canvas);

  void move_hands(const HandsChange& change);
  void take(Grasp grasp, double strength);
  void release(Grasp grasp);
  void end_drag();
  void hold_by_button(Grasp grasp, double strength);
  void pour_from(const Thing& thing, double strength);
  void take_up(Deed bottle);
  void take_up_next();
  void act(Deed deed);
  void act_either(Deed first, Deed second, bool second_holds);
  void set_tap(double tap);
  void begin_turn(int direction, const sf::Event::KeyEvent& key);
  void keep_turning(double wall_s);
  void move_eye(double by_mm);
  void hold_card_below_eye();
  void move_flask(bool under);
  void move_clamp(double by_mm);
  [[nodiscard]] bool asks_for_piece() const;
  bool answer(std::optional<Piece> piece);
  void move_pipette(bool other);
  void work_filler(bool gently);
  [[nodiscard]] bool shows_making_up() const;
  bool making_up_key(const sf::Event::KeyEvent& key);
  void making_up_key_released(const sf::Event::KeyEvent& key);
  void hold_making_up(const Thing& thing, bool gently);
  [[nodiscard]] bool runs_by_itself() const;

  void key_pressed(const sf::Event::KeyEvent& key);
  bool hand_key(const sf::Event::KeyEvent& key);
  bool hold_key(const sf::Event::KeyEvent& key);
  bool deed_key(const sf::Event::KeyEvent& key);
  void key_released(const sf::Event::KeyEvent& key);
  void mouse_pressed(const sf::Event::MouseButtonEvent& button, Point at);
  void right_pressed(const Thing& thing, Point at);
  void mouse_moved(Point at);
  void wheel(float notches, Point at);
  void begin_drag(const Thing& thing, Point at);
  void drag_to(Point at);
  bool pause_event(const sf::Event& event, Point at);
  void choose(std::size_t button);
  [[nodiscard]] std::string foot_words() const;

  Session session_;
  std::optional<Journal> journal_;
  PlaySettings settings_;
  Outfit outfit_;
  TintTable on_tile_, on_bench_;  ///< colours of the flask's liquid
  std::unique_ptr<Paper> paper_;
  StillLayer still_;
  SensesVoice voice_;
  std::optional<Guide> guide_;  ///< of an attempt that is played guided
  Tick guide_looks_at_ = 0;     ///< next, if nothing is done before
  std::size_t guide_saw_ = 0;   ///< changes at its last look
  bool guide_hidden_ = false;
  bool making_up_hidden_ = false;  ///< the panel; 0 shows it again
  Rect guide_tab_ = kGuideTab;     ///< as drawn last
  View view_;
  std::vector<Thing> things_;
  std::string looking_, message_;
  double message_left_s_ = 0.0, clock_s_ = 0.0, owed_s_ = 0.0;
  double pipette_let_run_at_s_ = -1e9;
  Point pointer_{-1, -1};
  Drag drag_;
  Grasps grasps_;
  enum class Card { none, keys, method };
  Card card_ = Card::none;  ///< lies over the bench, which goes on
  bool paused_ = false, shift_ = false, control_ = false, wordless_ = false;
  int turning_ = 0;  ///< the arrow held: -1 shuts the tap, 1 opens it
  double turning_for_s_ = 0.0, last_open_tap_ = 0.0;
  std::optional<sf::Keyboard::Key> answered_by_;  ///< still down: what it belongs to was the answer
  std::size_t pause_choice_ = 0;
  Wish wish_ = Wish::none;
};

}  // namespace halfdrop
