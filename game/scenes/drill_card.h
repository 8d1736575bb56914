#pragma once
// The card of a drill: what is asked for, what was written, and the way to hand in. One class a drill.

#include <memory>

#include "game/scenes/paper.h"

namespace halfdrop {

class DrillCard : public Paper {
 public:
  DrillCard(const Session& session, const Rect& area, bool large);

  void draw(Canvas& canvas, const Session& session) const final;
  [[nodiscard]] bool editing() const final { return false; }
  [[nodiscard]] Rect area() const final { return area_; }
  [[nodiscard]] std::vector<std::pair<std::string, Rect>> places() const final;

  /// What was typed and is not written yet.
  [[nodiscard]] const std::string& typed() const { return typed_; }

 protected:
  /// Enter, or the button "step".
  virtual void step(Session& session) = 0;
  virtual void draw_inside(Canvas& canvas, const Session& session) const = 0;
  /// Words of the button "step".
  [[nodiscard]] virtual std::string step_words() const = 0;
  [[nodiscard]] virtual bool takes_figures() const { return true; }

  /// Writes what was typed into a cell; true when that was done. Precondition: something was typed.
  bool write(const std::string& cell, Session& session);

  /// Size of words: `size`, or the projector's least.
  [[nodiscard]] float word_size(float size) const;
  [[nodiscard]] bool large() const { return large_; }
  /// The place where a figure stands or is being typed.
  void draw_entry(Canvas& canvas, const Rect& at, const std::string& written) const;
  /// Inside the margins, between top and the buttons.
  [[nodiscard]] Rect inside() const;

  const Drill drill_;

 private:
  /// Figures are typed at any time; Enter does what the drill's next step is, H asks whether to hand in.
  bool key(const sf::Event::KeyEvent& key, Session& session) final;
  void key_released(const sf::Event::KeyEvent& key) final;
  bool type(sf::Uint32 character) final;
  bool click(sf::Vector2f at, Session& session) final;
  void do_step(Session& session);
  [[nodiscard]] float button_height() const;
  void draw_foot(Canvas& canvas) const;

  Rect area_;
  bool large_, enter_held_ = false;
  std::string typed_;
};

[[nodiscard]] std::unique_ptr<DrillCard> reading_card(const Session& session, bool large);
[[nodiscard]] std::unique_ptr<DrillCard> delivery_card(const Session& session, bool large);
[[nodiscard]] std::unique_ptr<DrillCard> filling_card(const Session& session, bool large);
[[nodiscard]] std::unique_ptr<DrillCard> apparatus_card(const Session& session, bool large);
/// Precondition: the session's level has a drill.
[[nodiscard]] std::unique_ptr<DrillCard> drill_card(const Session& session, bool large);

}  // namespace halfdrop
