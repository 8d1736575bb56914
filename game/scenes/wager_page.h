#pragma once
// Other people's concordant titres, one paper after the other: the player looks through each, bets on its
// mean, and only then sees the truth. Its points go nowhere but this page.

#include <SFML/Window/Event.hpp>
#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "game/demonstrator/wager_rounds.h"
#include "game/level/say.h"
#include "game/marking/bet.h"
#include "game/scenes/canvas.h"

namespace halfdrop {

/// What can be said of a mean: its place on the page, and words.
struct MeanAnswer {
  MeanIs mean;
  const char* place;
  Phrase words;
};
inline constexpr std::array kMeanAnswers = {MeanAnswer{MeanIs::too_low, "too low", "wager.too_low"},
                                            MeanAnswer{MeanIs::right, "right", "wager.right"},
                                            MeanAnswer{MeanIs::too_high, "too high", "wager.too_high"}};
inline constexpr int kDeedRows = 10;  ///< of the list of deeds that are seen at once

class WagerPage {
 public:
  explicit WagerPage(Wager wager);

  /// The next round's attempt, in the order of showing.
  void give(WagerRound round);
  /// How many were given; as many as the wager has rounds are wanted.
  [[nodiscard]] std::size_t given() const { return rounds_.size(); }

  void draw(Canvas& canvas) const;
  /// `pointer` is the mouse in design units.
  bool event(const sf::Event& event, sf::Vector2f pointer);
  /// Does what a click on one of the places does: "too low", "right", "too high", "stake/2", "go on",
  /// "look/trial/initial", "deed/3".
  bool choose(const std::string& place);

  enum class Wish { none, leave, look };
  /// What was asked for since last time.
  [[nodiscard]] Wish take_wish() { return std::exchange(wish_, Wish::none); }
  /// After Wish::look: the bench of this attempt at this tick.
  [[nodiscard]] const Attempt& attempt() const { return rounds_[shown_].round.attempt; }
  [[nodiscard]] Tick look_tick() const { return look_tick_; }

  [[nodiscard]] std::size_t shown() const { return shown_; }
  /// The truth of the paper in hand was shown.
  [[nodiscard]] bool revealed() const { return bets_.size() > shown_; }
  [[nodiscard]] bool ended() const { return shown_ >= wager_.rounds.size(); }
  [[nodiscard]] int points() const;
  /// What would be bet now; nothing before an answer.
  [[nodiscard]] std::optional<Bet> bet() const;
  /// What can be clicked now, as last drawn.
  [[nodiscard]] const std::vector<std::pair<std::string, Rect>>& places() const { return places_; }

 private:
  /// A deed of the attempt, done `times` in a row.
  struct DeedLine {
    Tick tick = 0;
    std::string text;
    int times = 1;
  };
  struct Shown {
    WagerRound round;
    std::string fix;  ///< the one thing to change, in words
    std::vector<DeedLine> deeds;
  };
  [[nodiscard]] static std::vector<DeedLine> deeds_of(const Attempt& attempt);
  bool key(sf::Keyboard::Key code);
  void go_on();
  void scroll(int rows);
  void place(const std::string& name, const Rect& at) const { places_.emplace_back(name, at); }
  void draw_head(Canvas& canvas) const;
  void draw_paper(Canvas& canvas, const Shown& shown) const;
  void draw_deeds(Canvas& canvas, const Shown& shown) const;
  void draw_bet(Canvas& canvas) const;
  void draw_truth(Canvas& canvas, const Shown& shown) const;
  void draw_end(Canvas& canvas) const;

  Wager wager_;
  std::vector<Shown> rounds_;
  std::vector<Bet> bets_;  ///< one a revealed round
  std::size_t shown_ = 0;
  std::optional<MeanIs> answer_;  ///< chosen for the paper in hand
  int stake_ = kLeastStake;
  int scrolled_ = 0;  ///< rows of deeds
  Wish wish_ = Wish::none;
  Tick look_tick_ = 0;
  mutable std::vector<std::pair<std::string, Rect>> places_;
};

}  // namespace halfdrop
