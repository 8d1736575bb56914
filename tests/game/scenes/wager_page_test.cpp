#include "game/scenes/wager_page.h"

#include "tests/support/made_titres.h"
#include "tests/support/near.h"

using namespace halfdrop;

namespace {

/// An attempt whose two titres lie `off_cm3` from the ideal 21.23.
WagerRound round_off(double off_cm3) {
  WagerRound round;
  round.attempt.changes = {{100, Deed::rinse_flask},           {200, Deed::add_indicator},
                           {300, Deed::add_indicator},         {400, Writing{"1/initial", "0.40"}},
                           {900, Writing{"1/final", "21.60"}}, {950, Writing{"1/final", "21.63"}}};
  round.marked = test::made_attempt({test::made_run("1", 21.23, {{Cause::parallax_final, off_cm3}}, true),
                                     test::made_run("2", 21.23, {{Cause::parallax_final, off_cm3}}, true)});
  round.marked.ideal_titre_cm3 = 21.23;
  round.marked.mean_titre_cm3 = 21.23 + off_cm3;
  round.truth = mean_truth(round.marked, 0.1).value();
  return round;
}

WagerPage page_of(std::initializer_list<double> offs_cm3) {
  Wager wager;
  wager.title = "Concordant?";
  wager.rounds.resize(offs_cm3.size());
  WagerPage page(wager);
  for (const double off_cm3 : offs_cm3) page.give(round_off(off_cm3));
  return page;
}

void press(WagerPage& page, sf::Keyboard::Key code) {
  sf::Event event;
  event.type = sf::Event::KeyPressed;
  event.key = {code, false, false, false, false};
  (void)page.event(event, {});
}

}  // namespace

TEST_CASE("the truth is not shown before a bet, and no bet is made before an answer") {
  WagerPage page = page_of({-0.3, 0.0});
  press(page, sf::Keyboard::Enter);
  CHECK_FALSE(page.revealed());
  press(page, sf::Keyboard::Left);
  press(page, sf::Keyboard::Up);
  REQUIRE(page.bet());
  CHECK(page.bet()->mean == MeanIs::too_low);
  CHECK(page.bet()->stake == 2);
  press(page, sf::Keyboard::Enter);
  CHECK(page.revealed());
  CHECK(page.points() == 2);
}

TEST_CASE("once the truth is shown the bet stands") {
  WagerPage page = page_of({-0.3, 0.0});
  (void)page.choose("too high");
  (void)page.choose("stake/3");
  (void)page.choose("go on");
  CHECK(page.points() == -3);
  (void)page.choose("too low");
  CHECK(page.points() == -3);
}

TEST_CASE("after the last paper comes what it was about, and then the list") {
  WagerPage page = page_of({-0.3, 0.0});
  for (const char* place : {"too low", "go on", "go on", "right", "go on", "go on"}) (void)page.choose(place);
  CHECK(page.ended());
  CHECK(page.points() == 2);
  CHECK(page.take_wish() == WagerPage::Wish::none);
  (void)page.choose("go on");
  CHECK(page.take_wish() == WagerPage::Wish::leave);
}

TEST_CASE("a reading shows the bench as it stood when the figure that counts was written") {
  WagerPage page = page_of({0.0, 0.0});
  (void)page.choose("look/1/final");
  CHECK(page.take_wish() == WagerPage::Wish::look);
  CHECK(page.look_tick() == 950);
  (void)page.choose("deed/1");  // both drops of indicator are one line
  CHECK(page.look_tick() == 201);
}

TEST_CASE("a paper that is not ready yet takes no bet") {
  Wager wager;
  wager.rounds.resize(2);
  WagerPage page(wager);
  (void)page.choose("right");
  (void)page.choose("go on");
  CHECK_FALSE(page.revealed());
  CHECK(page.points() == 0);
}
