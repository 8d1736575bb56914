#pragma once
// The paper that lies beside the bench: a results sheet, or the card of a drill. The bench goes on ticking
// while one writes.

#include <SFML/Window/Event.hpp>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "game/scenes/canvas.h"
#include "game/session/session.h"

namespace halfdrop {

class Paper {
 public:
  Paper() = default;
  Paper(const Paper&) = delete;
  Paper& operator=(const Paper&) = delete;
  virtual ~Paper() = default;

  virtual void draw(Canvas& canvas, const Session& session) const = 0;
  /// True when the paper took the event. `pointer` is the mouse in design units. While the question "Hand
  /// in?" stands open every key is its own: Y ends the session ("handed in"), N and Esc go back.
  bool event(const sf::Event& event, sf::Vector2f pointer, Session& session);
  /// Letters belong to the paper: a cell is being written.
  [[nodiscard]] virtual bool editing() const = 0;
  /// The question "Hand in?" stands open.
  [[nodiscard]] bool asking() const { return asking_; }
  /// Why nothing came of the last writing, or what is wrong with it; empty if nothing is.
  [[nodiscard]] const std::string& message() const { return message_; }
  [[nodiscard]] virtual Rect area() const = 0;
  /// Every place that can be clicked, by name; "yes" and "no" while it asks.
  [[nodiscard]] virtual std::vector<std::pair<std::string, Rect>> places() const = 0;

 protected:
  virtual bool key(const sf::Event::KeyEvent& key, Session& session) = 0;
  virtual void key_released(const sf::Event::KeyEvent&) {}
  virtual bool type(sf::Uint32 character) = 0;
  /// The left button, anywhere.
  virtual bool click(sf::Vector2f at, Session& session) = 0;

  void ask(bool asking = true) { asking_ = asking; }
  void answer(bool yes, Session& session);
  void tell(std::string message) { message_ = std::move(message); }
  /// Writes into a cell; what is refused, or will not count, is told. True when it was written.
  bool put(const Writing& writing, Session& session);

 private:
  bool asking_ = false;
  std::string message_;
};

/// For a session as it stands. `large`: words at 4 % of the height at least, where the paper can have them (a
/// drill's card). `withdrawn`: lines of the working whose example is not shown any more.
[[nodiscard]] std::unique_ptr<Paper> paper_of(const Session& session, bool large,
                                              const std::vector<std::string>& withdrawn = {});

}  // namespace halfdrop
