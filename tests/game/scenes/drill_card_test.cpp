#include "game/scenes/drill_card.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "game/session/apparatus.h"
#include "tests/support/drill_level.h"

using namespace halfdrop;

namespace {

struct Player {
  explicit Player(DrillKind kind)
      : session(test::drill_level(kind), 3, "tester"), card(drill_card(session, false)) {}

  bool send(sf::Event::EventType type, sf::Keyboard::Key code) {
    sf::Event event;
    event.type = type;
    event.key = {code, false, false, false, false};
    return card->event(event, {}, session);
  }
  bool press(sf::Keyboard::Key code) {
    const bool taken = send(sf::Event::KeyPressed, code);
    (void)send(sf::Event::KeyReleased, code);
    return taken;
  }
  void type(const std::string& text) {
    for (const char c : text) {
      sf::Event event;
      event.type = sf::Event::TextEntered;
      event.text.unicode = static_cast<sf::Uint32>(c);
      (void)card->event(event, {}, session);
    }
  }
  void click(const std::string& place) {
    const auto places = card->places();
    const auto at =
        std::find_if(places.begin(), places.end(), [&](const auto& p) { return p.first == place; });
    REQUIRE(at != places.end());
    sf::Event event;
    event.type = sf::Event::MouseButtonPressed;
    event.mouseButton = {sf::Mouse::Left, 0, 0};
    (void)card->event(event, at->second.centre(), session);
  }
  [[nodiscard]] std::int64_t step() const { return session.state().drill_step; }

  Session session;
  std::unique_ptr<DrillCard> card;
};

}  // namespace

TEST_CASE("a reading is typed at any time, and Enter writes it for the picture that is shown") {
  Player player(DrillKind::read_meniscus);
  player.type("24.60");
  CHECK(player.card->typed() == "24.60");
  CHECK(player.session.cell(reading_cell(1)).empty());
  player.press(sf::Keyboard::Enter);
  CHECK(player.session.cell(reading_cell(1)) == "24.60");
  CHECK(player.card->typed().empty());
  CHECK(player.step() == 1);
}

TEST_CASE("letters are the bench's: only figures go onto a drill's card") {
  Player player(DrillKind::read_meniscus);
  player.type("k2x4-,5");
  CHECK(player.card->typed() == "24,5");
  CHECK_FALSE(player.press(sf::Keyboard::K));
  player.press(sf::Keyboard::Backspace);
  CHECK(player.card->typed() == "24,");
}

TEST_CASE("Enter held down turns one picture, not all thirty") {
  Player player(DrillKind::read_meniscus);
  player.type("1.00");
  for (int i = 0; i < 20; ++i) (void)player.send(sf::Event::KeyPressed, sf::Keyboard::Enter);
  CHECK(player.step() == 1);
}

TEST_CASE("a picture is left unread only when Enter says so twice") {
  Player player(DrillKind::read_meniscus);
  player.press(sf::Keyboard::Enter);
  CHECK(player.step() == 0);
  CHECK_FALSE(player.card->message().empty());
  player.press(sf::Keyboard::Enter);
  CHECK(player.step() == 1);
  CHECK(player.session.cell(reading_cell(1)).empty());
  player.press(sf::Keyboard::Enter);  // asked anew for the next one
  CHECK(player.step() == 1);
}

TEST_CASE("after the last picture the card asks whether to hand in, and no goes back") {
  Player player(DrillKind::read_meniscus);
  const int pictures = player.session.level().drill->pictures;
  for (int i = 0; i < pictures; ++i) {
    player.type("10.00");
    player.click("step");
  }
  CHECK(player.card->asking());
  CHECK_FALSE(player.session.ended());
  player.press(sf::Keyboard::N);
  CHECK_FALSE(player.card->asking());
  CHECK_FALSE(player.session.ended());
  player.press(sf::Keyboard::H);
  player.press(sf::Keyboard::Y);
  CHECK(player.session.ended());
  CHECK(player.session.cell(reading_cell(pictures)) == "10.00");
}

TEST_CASE("the last reading can still be put right before handing in") {
  Player player(DrillKind::read_meniscus);
  for (int i = 0; i < player.session.level().drill->pictures; ++i) {
    player.type("10.00");
    player.press(sf::Keyboard::Enter);
  }
  player.press(sf::Keyboard::N);
  player.type("10.05");
  player.press(sf::Keyboard::Enter);
  CHECK(player.session.cell(reading_cell(player.session.level().drill->pictures)) == "10.05");
}

TEST_CASE("what is let in is closed one after the other, and figures cannot be typed") {
  Player player(DrillKind::deliver_exactly);
  player.type("12");
  CHECK(player.card->typed().empty());
  const auto volumes = static_cast<std::int64_t>(player.session.level().drill->deliveries.size());
  for (std::int64_t i = 0; i < volumes; ++i) {
    CHECK(player.step() == i);
    CHECK_FALSE(player.card->asking());
    player.press(sf::Keyboard::Enter);
    player.press(sf::Keyboard::Enter);  // nothing came in, and it is meant
  }
  CHECK(player.step() == volumes);
  CHECK(player.card->asking());
}

TEST_CASE("a volume of which nothing came in is closed only when Enter says so twice") {
  Player player(DrillKind::deliver_exactly);
  for (int i = 0; i < 20; ++i) (void)player.send(sf::Event::KeyPressed, sf::Keyboard::Enter);  // still held
  CHECK(player.step() == 0);
  CHECK_FALSE(player.card->message().empty());
  (void)player.send(sf::Event::KeyReleased, sf::Keyboard::Enter);
  player.press(sf::Keyboard::Enter);
  CHECK(player.step() == 1);
  HandsChange open;
  open.tap = 1.0;
  CHECK_FALSE(player.session.set_hands(open).has_value());
  for (int i = 0; i < 480; ++i) player.session.tick();
  open.tap = 0.0;
  CHECK_FALSE(player.session.set_hands(open).has_value());
  for (int i = 0; i < 480; ++i) player.session.tick();
  player.press(sf::Keyboard::Enter);
  CAPTURE(player.card->message());
  CHECK(player.session.state().ledger.entered(Account::beaker).volume > 0);
  CHECK(player.step() == 2);
}

TEST_CASE("the first reading of a filled burette is written once typed; Enter without a figure says so") {
  Player player(DrillKind::fill_without_air);
  player.press(sf::Keyboard::Enter);
  CHECK_FALSE(player.card->message().empty());
  CHECK_FALSE(player.card->asking());
  player.type("0.15");
  player.press(sf::Keyboard::Enter);
  CHECK(player.session.cell(reading_cell(1)) == "0.15");
  CHECK_FALSE(player.card->asking());
  player.press(sf::Keyboard::Enter);
  CHECK(player.card->asking());
}

TEST_CASE("what is no number is written as it stands, and the card says that it will not count") {
  Player player(DrillKind::fill_without_air);
  player.type("1.2.3");
  player.press(sf::Keyboard::Enter);
  CHECK(player.session.cell(reading_cell(1)) == "1.2.3");
  CHECK(player.card->message().find("will not count") != std::string::npos);
}

TEST_CASE("buttons of a card do not overlap, in both sizes and while it asks") {
  for (const DrillKind kind : {DrillKind::read_meniscus, DrillKind::deliver_exactly,
                               DrillKind::fill_without_air, DrillKind::know_apparatus}) {
    for (const bool large : {false, true}) {
      Session session(test::drill_level(kind), 3, "tester");
      const auto card = drill_card(session, large);
      for (const bool asking : {false, true}) {
        CAPTURE(asking);
        const auto places = card->places();
        REQUIRE(places.size() == 2);
        CHECK(places[0].second.right() <= places[1].second.x);
        CHECK(places[1].second.right() <= card->area().right());
        CHECK(places[1].second.bottom() <= card->area().bottom());
        sf::Event event;
        event.type = sf::Event::KeyPressed;
        event.key = {sf::Keyboard::H, false, false, false, false};
        (void)card->event(event, {}, session);
      }
    }
  }
}

TEST_CASE("taken up again, a volume is not closed with nothing in it by a key still held down") {
  Session session(test::drill_level(DrillKind::deliver_exactly), 3, "tester");
  HandsChange open, shut;
  open.tap = 1.0;
  shut.tap = 0.0;
  CHECK_FALSE(session.set_hands(open).has_value());
  for (int i = 0; i < 240; ++i) session.tick();
  CHECK_FALSE(session.set_hands(shut).has_value());
  for (int i = 0; i < 240; ++i) session.tick();
  CHECK_FALSE(session.act(Deed::close_volume).has_value());
  REQUIRE_FALSE(session.state().ledger.entered(Account::beaker).empty());
  const auto card = drill_card(session, false);  // as the list of levels makes it
  sf::Event event;
  event.type = sf::Event::KeyPressed;
  event.key = {sf::Keyboard::Enter, false, false, false, false};
  (void)card->event(event, {}, session);
  CHECK(session.state().drill_step == 1);
  CHECK_FALSE(card->message().empty());
}

TEST_CASE("Enter says that a piece is not known, leaves out its use, and hands in after the last") {
  Player player(DrillKind::know_apparatus);
  const Piece first = pieces_asked(3)[0];
  player.press(sf::Keyboard::Enter);
  CHECK(player.session.cell(piece_cell(1)) == "?");
  CHECK(player.card->message().empty());
  CHECK(apparatus_round(player.session).piece().told);
  while (!apparatus_round(player.session).over()) {
    const ApparatusRound round = apparatus_round(player.session);
    const std::string cell = piece_cell(static_cast<int>(round.now) + 1);
    if (round.to_pick())
      REQUIRE_FALSE(player.session.write({cell, std::string(piece_name(round.piece().piece))}));
    else
      player.press(sf::Keyboard::Enter);
  }
  CHECK(apparatus_round(player.session).asked[0].piece == first);
  CHECK_FALSE(player.card->asking());
  player.press(sf::Keyboard::Enter);
  CHECK(player.card->asking());
}
