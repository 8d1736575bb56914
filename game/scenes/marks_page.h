#pragma once
// After handing in: the question what went wrong, then the marks, the findings and where each titre came
// from.

#include <SFML/Window/Event.hpp>
#include <optional>
#include <string>
#include <vector>

#include "game/marking/marks.h"
#include "game/scenes/canvas.h"

namespace halfdrop {

/// The cause that moved the accurate runs' titres most, and which way; nothing when none reaches 0.01 cm3.
struct LargestCause {
  Cause cause = Cause::rounding;
  double mean_cm3 = 0.0;
};
[[nodiscard]] std::optional<LargestCause> largest_cause(const MarkedAttempt& marked);

class MarksPage {
 public:
  explicit MarksPage(MarkedAttempt marked);

  void draw(Canvas& canvas) const;
  /// `pointer` is the mouse in design units.
  bool event(const sf::Event& event, sf::Vector2f pointer);

  enum class Wish { none, again, level_list, replay };
  /// What was asked for since last time.
  [[nodiscard]] Wish take_wish();
  /// Where to replay from, after Wish::replay.
  [[nodiscard]] Tick replay_tick() const { return replay_tick_; }
  [[nodiscard]] bool answered() const { return answered_; }
  [[nodiscard]] const MarkedAttempt& marked() const { return marked_; }
  [[nodiscard]] std::vector<std::pair<std::string, Rect>> places() const;

 private:
  enum class Push { none, high, low };
  bool question_event(const sf::Event& event, sf::Vector2f pointer);
  bool page_event(const sf::Event& event, sf::Vector2f pointer);
  void answer(std::optional<Cause> cause);
  void draw_question(Canvas& canvas) const;
  void draw_page(Canvas& canvas) const;
  [[nodiscard]] std::string verdict() const;

  MarkedAttempt marked_;
  bool answered_ = false;
  std::optional<Cause> chosen_cause_;
  int focus_ = 0;
  Push push_ = Push::none;
  float scroll_ = 0.0F;
  Wish wish_ = Wish::none;
  Tick replay_tick_ = 0;
};

}  // namespace halfdrop
