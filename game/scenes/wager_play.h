#pragma once
// A wager being played: its attempts are performed one after the other while the player looks at the page.

#include <future>
#include <memory>
#include <string>

#include "game/scenes/wager_page.h"

namespace halfdrop {

class WagerPlay {
 public:
  /// Reads the wager and its level; the first attempt is begun at once.
  [[nodiscard]] static Result<std::unique_ptr<WagerPlay>> begin(const std::string& path, std::uint64_t seed);

  /// Takes in what is ready, and begins the next. Why an attempt could not be performed; empty when all is
  /// well.
  [[nodiscard]] std::vector<Fault> advance();
  [[nodiscard]] WagerPage& page() { return page_; }

 private:
  WagerPlay(PlayableWager playable, std::uint64_t seed);
  void perform_next();

  PlayableWager playable_;
  std::uint64_t seed_;
  WagerPage page_;
  std::future<Result<WagerRound>> next_;
};

}  // namespace halfdrop
