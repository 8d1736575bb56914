#include "game/scenes/wager_play.h"

#include <chrono>
#include <utility>

namespace halfdrop {

WagerPlay::WagerPlay(PlayableWager playable, std::uint64_t seed)
    : playable_(std::move(playable)), seed_(seed), page_(playable_.wager) {
  perform_next();
}

Result<std::unique_ptr<WagerPlay>> WagerPlay::begin(const std::string& path, std::uint64_t seed) {
  auto playable = read_playable_wager(path);
  if (!playable) return tl::unexpected(std::move(playable.error()));
  return std::unique_ptr<WagerPlay>(new WagerPlay(std::move(*playable), seed));
}

/// Leaving waits for what is being performed: playable_ outlives it.
void WagerPlay::perform_next() {
  if (page_.given() >= playable_.wager.rounds.size()) return;
  next_ = std::async(std::launch::async,
                     [this, shown = page_.given()] { return wager_round(playable_, seed_, shown); });
}

std::vector<Fault> WagerPlay::advance() {
  if (!next_.valid() || next_.wait_for(std::chrono::seconds(0)) != std::future_status::ready) return {};
  Result<WagerRound> round = next_.get();
  if (!round) return std::move(round.error());
  page_.give(std::move(*round));
  perform_next();
  return {};
}

}  // namespace halfdrop
