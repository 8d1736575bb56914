#include "game/scenes/marks_page.h"

#include "game/scenes/titre_chart.h"
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

TEST_CASE("the largest cause is that of the accurate runs; the trial's overshoot is no matter") {
  const auto largest = largest_cause(marked({run("trial", {{Cause::overshoot, 0.40}}),
                                             run("1", {{Cause::jet_air, 0.12}, {Cause::overshoot, 0.02}}),
                                             run("2", {{Cause::jet_air, 0.08}, {Cause::overshoot, -0.03}})}));
  REQUIRE(largest.has_value());
  CHECK(largest->cause == Cause::jet_air);
  CHECK_NEAR(largest->mean_cm3, 0.10, 1e-12);
}

TEST_CASE("below a drop nothing went wrong, and without accurate runs nothing can be said to have") {
  CHECK_FALSE(largest_cause(marked({run("1", {{Cause::jet_air, 0.049}})})).has_value());
  CHECK(largest_cause(marked({run("1", {{Cause::parallax_final, -0.051}})})).has_value());
  CHECK_FALSE(largest_cause(marked({run("trial", {{Cause::jet_air, 0.3}})})).has_value());
}

TEST_CASE("the verdict tells cause and way apart") {
  const LargestCause air{Cause::jet_air, 0.10};
  CHECK(verdict({Cause::jet_air, true}, air).ends_with("You saw the cause and its way."));
  CHECK(verdict({Cause::jet_air, false}, air).ends_with("it pushed the other way."));
  CHECK(verdict({Cause::overshoot, true}, air).ends_with("Another cause, but the way is right."));
  CHECK(verdict({Cause::overshoot, false}, air).ends_with("Another cause, and the other way."));
  CHECK(verdict({}, std::nullopt).ends_with("you were right."));
  CHECK(verdict({Cause::jet_air, true}, std::nullopt).ends_with("no slip shows in them."));
  CHECK(verdict({}, LargestCause{Cause::parallax_final, -0.08}).find("down by 0.08") != std::string::npos);
}

TEST_CASE("the chart's bars lead from the ideal titre to the recorded one without a gap") {
  const TitreRow row = run("1", {{Cause::rounding, -0.02},
                                 {Cause::jet_air, 0.12},
                                 {Cause::flask_wall, 0.004},
                                 {Cause::hanging_drop, 0.003},
                                 {Cause::overshoot, 0.03}});
  const auto bars = titre_bars(*row.breakdown);
  REQUIRE(bars.size() == 6);  // ideal, three causes, the smaller ones, recorded
  for (std::size_t i = 1; i < bars.size(); ++i)
    CHECK_NEAR(bars[i].from_cm3, i + 1 < bars.size() ? bars[i - 1].to_cm3 : 21.367, 1e-9);
  CHECK_NEAR(bars[bars.size() - 2].to_cm3, bars.back().to_cm3, 1e-9);
  CHECK_NEAR(bars[4].to_cm3 - bars[4].from_cm3, 0.007, 1e-9);
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

TEST_CASE("without an accurate titre nobody is told to have been right") {
  CHECK(verdict({}, MarkedAttempt{}) ==
        "You said: nothing went wrong. There is no accurate titre to judge that by.");
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
