#pragma once
// The list of levels, the cautions before one begins, and attempts that were not finished.

#include <SFML/Window/Event.hpp>
#include <optional>
#include <string>
#include <vector>

#include "game/level/level.h"
#include "game/scenes/canvas.h"

namespace halfdrop {

class LevelList {
 public:
  struct Entry {
    std::string path;
    Level level;
  };
  struct Unfinished {
    std::string path;   ///< of the attempt
    std::string title;  ///< of its level
    std::string when;   ///< "25 Nov 14:50"
  };
  LevelList(std::vector<Entry> levels, std::vector<Unfinished> unfinished, std::vector<Fault> faults = {});
  /// Reads levels/*.json of the data folder, in order, and the attempts without an end of the attempts
  /// folder.
  [[nodiscard]] static LevelList read(const std::string& attempts_folder);

  void draw(Canvas& canvas) const;
  /// `pointer` is the mouse in design units.
  bool event(const sf::Event& event, sf::Vector2f pointer);
  /// Shows a level's cautions at once (level named on the command line).
  void show_cautions(std::size_t level);

  struct Wish {
    enum class Kind { start, go_on, quit } kind = Kind::start;
    std::string path;  ///< of the level to start, or of the attempt to go on with
  };
  /// What was asked for since last time.
  [[nodiscard]] std::optional<Wish> take_wish();
  [[nodiscard]] const std::vector<Entry>& levels() const { return levels_; }
  [[nodiscard]] bool shows_cautions() const { return cautions_.has_value(); }
  /// What can be clicked now, as last drawn: "level/...", "unfinished/0", "start", "back".
  [[nodiscard]] const std::vector<std::pair<std::string, Rect>>& places() const { return places_; }

 private:
  bool key(sf::Keyboard::Key code);
  bool choose(const std::string& place);
  void open(std::size_t row);
  void scroll(float by);
  [[nodiscard]] std::size_t rows() const { return unfinished_.size() + levels_.size(); }
  void draw_list(Canvas& canvas) const;
  float draw_unfinished(Canvas& canvas, float y) const;
  float draw_level(Canvas& canvas, float y, std::size_t level) const;
  void draw_cautions(Canvas& canvas) const;

  std::vector<Entry> levels_;
  std::vector<Unfinished> unfinished_;
  std::vector<Fault> faults_;
  std::size_t focus_ = 0;  ///< row: unfinished attempts, then levels
  std::optional<std::size_t> cautions_;
  float scroll_ = 0.0F;
  std::optional<Wish> wish_;
  mutable float content_height_ = 0.0F;  ///< as last drawn
  mutable Rect focus_rect_;
  mutable std::vector<std::pair<std::string, Rect>> places_;
};

}  // namespace halfdrop
