#pragma once
// After handing in: the question what went wrong, then the one thing to change, the marks, where each titre
// and the result came from, how well it is known, the findings.

#include <SFML/Window/Event.hpp>
#include <optional>
#include <string>
#include <vector>

#include "game/marking/diagnosis.h"
#include "game/marking/marks.h"
#include "game/marking/next_fix.h"
#include "game/scenes/canvas.h"
#include "game/scenes/earlier_goes.h"

namespace halfdrop {

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
  /// Turns to where a part begins, as last drawn: "titres", "result", "uncertainty", "findings",
  /// "harmless"; else the top.
  void turn_to(const std::string& part);
  /// The run whose way is drawn: "1"; empty where no run has a breakdown.
  [[nodiscard]] std::string shown_run() const;
  /// What can be clicked now, as last drawn: "cause/...", "too high", "too low", "nothing", "again", "level
  /// list", "run/1", "finding/0", "picture/1".
  [[nodiscard]] const std::vector<std::pair<std::string, Rect>>& places() const { return places_; }

 private:
  bool question_key(const sf::Event::KeyEvent& key);
  bool page_key(const sf::Event::KeyEvent& key);
  bool click(sf::Vector2f at);
  void look_at_picture(const std::string& place);
  void look_at_run(int by);
  void say_way(bool too_high);
  void scroll(float by);
  void draw_question(Canvas& canvas) const;
  void draw_page(Canvas& canvas) const;
  void draw_footer(Canvas& canvas) const;
  float draw_summary(Canvas& canvas, float y) const;
  float draw_next_fix(Canvas& canvas, float y) const;
  float draw_diagnosis(Canvas& canvas, float y) const;
  float draw_scores(Canvas& canvas, float y) const;
  float draw_gate(Canvas& canvas, float y) const;
  float draw_charts(Canvas& canvas, float y) const;
  float draw_titre_falls(Canvas& canvas, float y) const;
  float draw_run_tabs(Canvas& canvas, float y) const;
  float draw_result_falls(Canvas& canvas, float y) const;
  float draw_own_uncertainty(Canvas& canvas, float y) const;
  float draw_findings(Canvas& canvas, float y) const;
  float draw_finding(Canvas& canvas, float y, std::size_t index) const;

  MarkedAttempt marked_;
  std::vector<EarlierGo> earlier_;
  bool projector_;
  std::optional<NextFix> fix_;
  std::optional<Diagnosis> said_;
  std::optional<std::size_t> chosen_;   ///< cause under the pen
  std::optional<std::size_t> finding_;  ///< finding chosen by Tab
  std::string run_;                     ///< run whose way is drawn; empty: the first that counts
  float scroll_ = 0.0F;
  Wish wish_ = Wish::none;
  Tick replay_tick_ = 0;
  mutable float content_height_ = 0.0F;                       ///< as last drawn
  mutable std::vector<std::pair<std::string, float>> parts_;  ///< where they begin on the page
  mutable std::vector<std::pair<std::string, Rect>> places_;
};

}  // namespace halfdrop
