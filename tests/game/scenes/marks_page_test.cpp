#include "game/scenes/marks_page.h"

#include "game/scenes/uncertainty_chart.h"
#include "game/scenes/waterfall_chart.h"
#include "tests/support/near.h"

using namespace halfdrop;

namespace {

TitreRow run(const std::string& name, std::initializer_list<std::pair<Cause, double>> causes) {
  TitreRow row;
  row.run = name;
  TitreBreakdown breakdown;
  breakdown.ideal_cm3 = breakdown.recorded_cm3 = 21.23;
  for (const auto& [cause, cm3] : causes) {
    breakdown.causes_cm3[static_cast<std::size_t>(cause)] = cm3;
    breakdown.recorded_cm3 += cm3;
  }
  row.breakdown = breakdown;
  return row;
}

MarkedAttempt marked(std::vector<TitreRow> rows) {
  MarkedAttempt attempt;
  attempt.titres = std::move(rows);
  attempt.findings.push_back(
      {Score::eye, "eye-level", false, 0, 1, "The eye stood high.", 4800, -0.08, "Level it."});
  return attempt;
}

bool press(MarksPage& page, sf::Keyboard::Key code) {
  sf::Event event;
  event.type = sf::Event::KeyPressed;
  event.key = {code, false, false, false, false};
  return page.event(event, {});
}

void type(MarksPage& page, char c) {
  sf::Event event;
  event.type = sf::Event::TextEntered;
  event.text.unicode = static_cast<sf::Uint32>(c);
  (void)page.event(event, {});
}

}  // namespace

TEST_CASE("the axis of a waterfall has round figures, and a faultless run does not fill it") {
  CHECK_NEAR(axis_step({21.0, 21.4}, 8), 0.05, 1e-12);
  CHECK_NEAR(axis_step({0.0, 8.0}, 8), 1.0, 1e-12);
  const FallsReach reach = reach_of({21.23, 21.25, {{"a", 21.23, 21.25, Stage::flask, {}, 0}}}, 0.12);
  CHECK_NEAR(reach.high - reach.low, 0.12, 0.002);
  CHECK_NEAR((reach.high + reach.low) / 2.0, 21.24, 1e-9);
}

TEST_CASE("arrows and tabs choose the run whose way is drawn; the first that counts is shown at first") {
  TitreRow second = run("2", {{Cause::overshoot, 0.03}});
  second.used = true;
  MarksPage page(marked({run("trial", {}), run("1", {{Cause::jet_air, 0.12}}), second}));
  page.answer({});
  CHECK(page.shown_run() == "2");
  press(page, sf::Keyboard::Left);
  CHECK(page.shown_run() == "1");
  press(page, sf::Keyboard::Left);
  press(page, sf::Keyboard::Left);
  CHECK(page.shown_run() == "trial");
  page.choose("run/1");
  CHECK(page.shown_run() == "1");
  CHECK(MarksPage(marked({})).shown_run().empty());
}

TEST_CASE("whether the truth lies within the result's own uncertainty is said") {
  OwnUncertainty own;
  own.budget.value = 0.860;
  own.budget.expanded = 0.006;
  CHECK(within_words(own, 0.8655).find("within") != std::string::npos);
  CHECK(within_words(own, 0.8665).find("outside") != std::string::npos);
}

TEST_CASE("a way without a cause is no answer; with one it opens the page") {
  MarksPage page(marked({run("1", {{Cause::jet_air, 0.12}})}));
  type(page, '+');
  CHECK_FALSE(page.answered());
  press(page, sf::Keyboard::Down);
  type(page, '-');
  CHECK(page.answered());
}

TEST_CASE("keys of the marks page ask for another seed, the list and a moment to look at") {
  MarksPage page(marked({}));
  press(page, sf::Keyboard::Num0);
  REQUIRE(page.answered());
  CHECK(page.take_wish() == MarksPage::Wish::none);
  press(page, sf::Keyboard::A);
  CHECK(page.take_wish() == MarksPage::Wish::again);
  press(page, sf::Keyboard::L);
  CHECK(page.take_wish() == MarksPage::Wish::level_list);
  press(page, sf::Keyboard::Tab);
  press(page, sf::Keyboard::Enter);
  CHECK(page.take_wish() == MarksPage::Wish::replay);
  CHECK(page.replay_tick() == 4800);
  CHECK(page.take_wish() == MarksPage::Wish::none);
}

TEST_CASE("a drill is shown without a question first, and a reading's error leads to its picture") {
  PictureRead picture;
  picture.number = 4;
  picture.shown = true;
  picture.true_cm3 = 12.31;
  picture.written_cm3 = 12.35;
  picture.text = "12.35";
  picture.tick = 960;
  MarkedAttempt attempt;
  attempt.drill = reading_figures({picture}, 0.05);
  MarksPage page(attempt);
  CHECK(page.answered());
  page.choose("picture/4");
  CHECK(page.take_wish() == MarksPage::Wish::replay);
  CHECK(page.replay_tick() == 960);
}
