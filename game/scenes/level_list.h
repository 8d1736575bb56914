#pragma once
// The list of levels, the page before one begins, and attempts that were not finished.

#include <SFML/Window/Event.hpp>
#include <optional>
#include <string>
#include <vector>

#include "game/level/level.h"
#include "game/level/wager.h"
#include "game/scenes/safety_page.h"

namespace halfdrop {

class LevelList {
 public:
  struct Entry {
    std::string path;
    Level level;
  };
  struct Unfinished {
    std::string path;   ///< of the attempt
    std::string title;  ///< of its level, and the way it is played
    std::string when;   ///< "25 Nov 14:50:12"
  };
  struct WagerEntry {
    std::string path;
    Wager wager;
  };
  LevelList(std::vector<Entry> levels, std::vector<Unfinished> unfinished, std::vector<Fault> faults = {},
            std::vector<WagerEntry> wagers = {});
  /// Reads levels/*.json, levels/drills/*.json and the wagers of levels/demonstrations of the data folder, in
  /// order, and the attempts without an end of the attempts folder.
  [[nodiscard]] static LevelList read(const std::string& attempts_folder);

  void draw(Canvas& canvas) const;
  /// `pointer` is the mouse in design units.
  bool event(const sf::Event& event, sf::Vector2f pointer);
  /// Says why nothing came of the last wish.
  void tell(const std::vector<Fault>& faults);
  [[nodiscard]] const std::string& message() const { return message_; }
  /// Shows the page before a level at once (level named on the command line).
  void show_cautions(std::size_t level);
  /// The way that is chosen when the next level's page is shown, until the player chooses another.
  void propose(Way way) { way_ = way; }
  /// As proposed or, since, chosen for a titration.
  [[nodiscard]] Way way() const { return way_; }

  struct Wish {
    enum class Kind { start, go_on, wager, quit } kind = Kind::start;
    std::string path;            ///< of the level or wager to start, or of the attempt to go on with
    Way way = Way::independent;  ///< of a level to start
  };
  /// What was asked for since last time.
  [[nodiscard]] std::optional<Wish> take_wish();
  [[nodiscard]] const std::vector<Entry>& levels() const { return levels_; }
  [[nodiscard]] bool shows_cautions() const { return page_.has_value(); }
  /// What can be clicked now: "level/...", "wager/...", "unfinished/0"; before a level "way/guided" ...,
  /// "start", "back".
  [[nodiscard]] std::vector<std::pair<std::string, Rect>> places() const;

 private:
  bool key(sf::Keyboard::Key code);
  bool choose(const std::string& place);
  bool choose_on_page(const std::string& place);
  void open(std::size_t row);
  void scroll(float by);
  void show_focus();
  [[nodiscard]] std::size_t rows() const { return first_wager() + wagers_.size(); }
  [[nodiscard]] std::size_t first_wager() const { return unfinished_.size() + levels_.size(); }
  [[nodiscard]] std::string place_of(std::size_t row) const;
  /// Where a row lies before scrolling; one past the last: where the list ends.
  [[nodiscard]] Rect row_rect(std::size_t row) const;
  [[nodiscard]] float content_height() const;
  /// The first level that is a drill has a heading of its own over it.
  [[nodiscard]] bool heads_drills(std::size_t level) const;
  void draw_number(Canvas& canvas, Point at, std::size_t level) const;
  void draw_list(Canvas& canvas) const;
  void draw_row(Canvas& canvas, std::size_t row) const;
  void draw_wager(Canvas& canvas, const Rect& at, std::size_t wager) const;

  std::vector<Entry> levels_;
  std::vector<Unfinished> unfinished_;
  std::vector<Fault> faults_;
  std::vector<WagerEntry> wagers_;
  std::size_t focus_ = 0;           ///< row: unfinished attempts, levels, wagers
  std::optional<SafetyPage> page_;  ///< before the level in focus
  Way way_ = Way::independent;
  float scroll_ = 0.0F;
  std::optional<Wish> wish_;
  std::string message_;  ///< why the last wish came to nothing
};

namespace list_layout {
inline constexpr float kLeft = 190.0F, kWidth = 900.0F, kTop = 128.0F, kBottom = 664.0F;
inline constexpr float kText = 74.0F;  ///< words right of the number
inline constexpr float kLine = 23.0F;
inline constexpr float kHeading = 32.0F;  ///< over the drills, and over the wagers
}  // namespace list_layout

}  // namespace halfdrop
