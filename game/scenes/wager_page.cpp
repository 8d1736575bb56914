#include "game/scenes/wager_page.h"

#include <algorithm>
#include <utility>

#include "game/marking/next_fix.h"
#include "game/session/action.h"

namespace halfdrop {

namespace {

constexpr int kRowsAWheelStep = 2;

/// When a cell got the figure that stands in it.
Tick last_written(const Attempt& attempt, const std::string& cell) {
  Tick tick = 0;
  for (const Change& change : attempt.changes) {
    const auto* writing = std::get_if<Writing>(&change.what);
    if (writing != nullptr && writing->cell == cell) tick = change.tick;
  }
  return tick;
}

}  // namespace

WagerPage::WagerPage(Wager wager) : wager_(std::move(wager)) {}

std::vector<WagerPage::DeedLine> WagerPage::deeds_of(const Attempt& attempt) {
  std::vector<DeedLine> lines;
  for (const Change& change : attempt.changes) {
    const Deed* const deed = std::get_if<Deed>(&change.what);
    if (deed == nullptr) continue;
    const std::string text(deed_name(*deed));
    if (!lines.empty() && lines.back().text == text) {
      ++lines.back().times;
    } else {
      lines.push_back({change.tick, text, 1});
    }
  }
  return lines;
}

void WagerPage::give(WagerRound round) {
  std::vector<DeedLine> deeds = deeds_of(round.attempt);
  const auto fix = next_fix(round.marked);
  rounds_.push_back({std::move(round), fix ? next_fix_text(*fix) : "", std::move(deeds)});
}

std::optional<Bet> WagerPage::bet() const {
  return answer_ ? std::optional(Bet{*answer_, stake_}) : std::nullopt;
}

int WagerPage::points() const {
  int sum = 0;
  for (std::size_t i = 0; i < bets_.size(); ++i) sum += bet_points(bets_[i], rounds_[i].round.truth);
  return sum;
}

void WagerPage::go_on() {
  if (ended()) {
    wish_ = Wish::leave;
  } else if (revealed()) {
    ++shown_;
    answer_.reset();
    stake_ = kLeastStake;
    scrolled_ = 0;
  } else if (const auto said = bet(); said && shown_ < rounds_.size()) {
    bets_.push_back(*said);
  }
}

void WagerPage::scroll(int rows) {
  if (shown_ >= rounds_.size()) return;
  const int lines = static_cast<int>(rounds_[shown_].deeds.size());
  scrolled_ = std::clamp(scrolled_ + rows, 0, std::max(0, (lines + 1) / 2 - kDeedRows));
}

bool WagerPage::choose(const std::string& place) {
  if (place == "go on") {
    go_on();
    return true;
  }
  if (ended() || shown_ >= rounds_.size()) return false;
  if (place.starts_with("look/")) {
    look_tick_ = last_written(attempt(), place.substr(5));
    wish_ = Wish::look;
  } else if (place.starts_with("deed/")) {
    look_tick_ = rounds_[shown_].deeds[std::stoul(place.substr(5))].tick + 1;
    wish_ = Wish::look;
  } else if (!revealed()) {
    for (const MeanAnswer& answer : kMeanAnswers) {
      if (place == answer.place) answer_ = answer.mean;
    }
    if (place.starts_with("stake/")) stake_ = std::stoi(place.substr(6));
  }
  return true;
}

bool WagerPage::key(sf::Keyboard::Key code) {
  const auto answer = [&](int by) {
    const int now = static_cast<int>(answer_.value_or(MeanIs::right)) + by;
    return choose(kMeanAnswers[static_cast<std::size_t>(std::clamp(now, 0, 2))].place);
  };
  const auto stake = [&](int by) {
    return choose("stake/" + std::to_string(std::clamp(stake_ + by, kLeastStake, kMostStake)));
  };
  switch (code) {
    case sf::Keyboard::Left:
      return answer(-1);
    case sf::Keyboard::Right:
      return answer(1);
    case sf::Keyboard::Space:
      return answer(0);
    case sf::Keyboard::Up:
      return stake(1);
    case sf::Keyboard::Down:
      return stake(-1);
    case sf::Keyboard::PageUp:
    case sf::Keyboard::PageDown:
      scroll(code == sf::Keyboard::PageUp ? -4 : 4);
      return true;
    case sf::Keyboard::Enter:
      return choose("go on");
    case sf::Keyboard::Escape:
      wish_ = Wish::leave;
      return true;
    default:
      return false;
  }
}

bool WagerPage::event(const sf::Event& event, sf::Vector2f pointer) {
  if (event.type == sf::Event::KeyPressed) return key(event.key.code);
  if (event.type == sf::Event::MouseWheelScrolled) {
    scroll(event.mouseWheelScroll.delta > 0 ? -kRowsAWheelStep : kRowsAWheelStep);
    return true;
  }
  if (event.type != sf::Event::MouseButtonPressed || event.mouseButton.button != sf::Mouse::Left)
    return false;
  for (const auto& [name, at] : places_) {
    if (at.contains(pointer)) return choose(std::string(name));
  }
  return false;
}

}  // namespace halfdrop
