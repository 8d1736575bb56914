#include "game/scenes/wager_play.h"

#include <chrono>
#include <utility>

#include "game/scenes/attempt_shelf.h"

namespace halfdrop {

WagerPlay::WagerPlay(Wager wager, Level level, std::uint64_t seed)
    : level_(std::move(level)), seed_(seed), page_(std::move(wager)) {
  perform_next();
}

Result<std::unique_ptr<WagerPlay>> WagerPlay::begin(const std::string& path, std::uint64_t seed) {
  auto wager = read_wager(path);
  if (!wager) return tl::unexpected(std::move(wager.error()));
  auto level = read_level(find_level(wager->level));
  if (!level) return tl::unexpected(std::move(level.error()));
  std::vector<Fault> faults = wager_faults(*wager, *level, path);
  if (!faults.empty()) return tl::unexpected(std::move(faults));
  return std::unique_ptr<WagerPlay>(new WagerPlay(std::move(*wager), std::move(*level), seed));
}

void WagerPlay::perform_next() {
  if (page_.given() >= page_.wager().rounds.size()) return;
  next_ = std::async(std::launch::async,
                     [wager = page_.wager(), level = level_, seed = seed_, shown = page_.given()] {
                       return wager_round(wager, level, seed, shown);
                     });
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
