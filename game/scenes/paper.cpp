#include "game/scenes/paper.h"

#include "game/level/say.h"
#include "game/marking/written_number.h"
#include "game/scenes/drill_card.h"
#include "game/scenes/sheet_paper.h"

namespace halfdrop {

void Paper::answer(bool yes, Session& session) {
  asking_ = false;
  if (yes) session.end("handed in");
}

bool Paper::put(const Writing& writing, Session& session) {
  message_ = session.write(writing).value_or("");
  if (!message_.empty()) return false;
  const bool counts = writing.cell.ends_with("/counts");  // a tick
  if (!writing.text.empty() && !counts && !number_written(writing.text))
    message_ = say("sheet.no_number", {{"text", writing.text}});
  return true;
}

bool Paper::event(const sf::Event& event, sf::Vector2f pointer, Session& session) {
  if (session.ended()) return false;
  switch (event.type) {
    case sf::Event::KeyPressed:
      if (!asking_) return key(event.key, session);
      if (event.key.code == sf::Keyboard::Y) answer(true, session);
      if (event.key.code == sf::Keyboard::N || event.key.code == sf::Keyboard::Escape) answer(false, session);
      return true;
    case sf::Event::KeyReleased:
      key_released(event.key);
      return false;
    case sf::Event::TextEntered:
      return type(event.text.unicode);
    case sf::Event::MouseButtonPressed:
      return event.mouseButton.button == sf::Mouse::Left && click(pointer, session);
    default:
      return false;
  }
}

std::unique_ptr<Paper> paper_of(const Session& session, bool large,
                                const std::vector<std::string>& withdrawn) {
  if (session.level().drill) return drill_card(session, large);
  const std::string refused(no_help_words(session.attempt().way));
  if (!refused.empty()) return std::make_unique<SheetPaper>(session.level(), WorkedSlip{}, refused);
  return std::make_unique<SheetPaper>(
      session.level(), WorkedSlip{worked_example(session.level(), session.attempt().seed), withdrawn});
}

}  // namespace halfdrop
