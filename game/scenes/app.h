#pragma once
// The window and its pages: list of levels, bench, marks.

#include <SFML/Graphics/RenderWindow.hpp>
#include <future>
#include <memory>
#include <optional>

#include "game/scenes/attempt_shelf.h"
#include "game/scenes/canvas.h"
#include "game/scenes/handed_in_page.h"
#include "game/scenes/level_list.h"
#include "game/scenes/marks_page.h"
#include "game/scenes/options.h"
#include "game/scenes/wager_play.h"

namespace halfdrop {

class App {
 public:
  App(Options options, const Fonts& fonts);
  /// Until the window is closed; returns the exit status.
  [[nodiscard]] int run();

 private:
  void open_window();
  void handle(const sf::Event& event);
  void frame(double wall_s);
  void draw();

  void show_list();
  void show_level(const std::string& path);
  void follow_list();
  void follow_bench();
  void follow_marks();
  void begin(const std::string& level_path, Way way);
  [[nodiscard]] Way proposed_way() const;
  void show(Result<std::unique_ptr<PlayScene>> scene);
  void begin_marking();
  void look_at(const Attempt& attempt, Tick tick, const std::string& back);
  void begin_wager(const std::string& path);
  void follow_wager();

  Options options_;
  sf::RenderWindow window_;
  Canvas canvas_;
  Point pointer_;
  bool fullscreen_ = false;
  std::optional<LevelList> list_;
  std::unique_ptr<PlayScene> bench_;
  std::unique_ptr<PlayScene> moment_;  ///< a moment of the attempt, shown from the marks
  std::optional<Attempt> attempt_;     ///< what the marks are about
  struct Marking {
    MarkedAttempt marked;
    std::vector<EarlierGo> earlier;
  };
  std::future<Marking> marking_;
  std::optional<HandedInPage> handed_in_;  ///< after an assessed attempt, before its marks
  std::unique_ptr<MarksPage> marks_;
  std::unique_ptr<WagerPlay> wager_;
  std::string level_path_;
  std::optional<Way> last_way_;  ///< as chosen last
  Seeds seeds_;
  int status_ = 0;
};

}  // namespace halfdrop
