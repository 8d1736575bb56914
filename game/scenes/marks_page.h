#pragma once
// After handing in: the question what went wrong, then the marks, the findings and where each titre came
// from.

#include <SFML/Window/Event.hpp>
#include <optional>
#include <string>
#include <vector>

#include "game/marking/marks.h"
#include "game/scenes/canvas.h"
#include "game/scenes/earlier_goes.h"

namespace halfdrop {

/// The cause that moved the accurate runs' titres most on average, and which way; nothing below one drop
/// (0.05 cm3).
struct LargestCause {
  Cause cause = Cause::rounding;
  double mean_cm3 = 0.0;
};
[[nodiscard]] std::optional<LargestCause> largest_cause(const MarkedAttempt& marked);

/// What the player says went wrong; `nothing` when no cause is given.
struct Diagnosis {
  std::optional<Cause> cause;
  bool too_high = false;
};
/// The answer beside what was: sentences.
[[nodiscard]] std::string verdict(const Diagnosis& said, const std::optional<LargestCause>& was);
/// The same about an attempt; without an accurate titre it judges nothing.
[[nodiscard]] std::string verdict(const Diagnosis& said, const MarkedAttempt& marked);

class MarksPage {
 public:
  /// A drill asks nothing before its figures are shown, and has earlier goes to compare with; `projector`:
  /// its charts with words for the back row.
  explicit MarksPage(MarkedAttempt marked, std::vector<EarlierGo> earlier = {}, bool projector = false);

  void draw(Canvas& canvas) const;
  /// `pointer` is the mouse in design units.
  bool event(const sf::Event& event, sf::Vector2f pointer);

  enum class Wish { none, again, level_list, replay };
  /// What was asked for since last time.
  [[nodiscard]] Wish take_wish();
  /// Where to replay from, after Wish::replay.
  [[nodiscard]] Tick replay_tick() const { return replay_tick_; }
  /// Does what a click on one of the places does.
  bool choose(const std::string& place);
  [[nodiscard]] bool answered() const { return said_.has_value(); }
  void answer(const Diagnosis& said) { said_ = said; }
  [[nodiscard]] const MarkedAttempt& marked() const { return marked_; }
  /// What can be clicked now, as last drawn: "cause/...", "too high", "too low", "nothing", "again", "level
  /// list", "finding/0", "picture/1".
  [[nodiscard]] const std::vector<std::pair<std::string, Rect>>& places() const { return places_; }

 private:
  bool question_key(const sf::Event::KeyEvent& key);
  bool page_key(const sf::Event::KeyEvent& key);
  bool click(sf::Vector2f at);
  void look_at_picture(const std::string& place);
  void say(bool too_high);
  void scroll(float by);
  void draw_question(Canvas& canvas) const;
  void draw_page(Canvas& canvas) const;
  void draw_footer(Canvas& canvas) const;
  float draw_summary(Canvas& canvas, float y) const;
  float draw_scores(Canvas& canvas, float y) const;
  float draw_gate(Canvas& canvas, float y) const;
  float draw_charts(Canvas& canvas, float y) const;
  float draw_titre_charts(Canvas& canvas, float y) const;
  float draw_findings(Canvas& canvas, float y) const;
  float draw_finding(Canvas& canvas, float y, std::size_t index) const;

  MarkedAttempt marked_;
  std::vector<EarlierGo> earlier_;
  bool projector_;
  std::optional<Diagnosis> said_;
  std::optional<std::size_t> chosen_;   ///< cause under the pen
  std::optional<std::size_t> finding_;  ///< finding chosen by Tab
  float scroll_ = 0.0F;
  Wish wish_ = Wish::none;
  Tick replay_tick_ = 0;
  mutable float content_height_ = 0.0F;  ///< as last drawn
  mutable std::vector<std::pair<std::string, Rect>> places_;
};

}  // namespace halfdrop
