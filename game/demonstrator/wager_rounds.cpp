#include "game/demonstrator/wager_rounds.h"

#include <utility>

#include "game/demonstrator/demonstrator.h"
#include "game/demonstrator/mistakes.h"
#include "game/level/nearest.h"

namespace halfdrop {

namespace {

constexpr const char* kCoarser = R"({"flask":{"fineness":0.5}})";

std::optional<std::string> wrong_with(const std::string& name, const Level& level) {
  if (find_mistake(name) == nullptr) {
    std::vector<std::string_view> names;
    for (const Mistake& mistake : mistakes()) names.push_back(mistake.name);
    return "no mistake of this name" + did_you_mean(name, names);
  }
  if (!has_room_for(level, name)) return "the level leaves no room for this mistake";
  return std::nullopt;
}

}  // namespace

std::vector<Fault> wager_faults(const Wager& wager, const Level& level, const std::string& file) {
  std::vector<Fault> faults;
  if (level.drill)
    faults.push_back({FaultKind::invalid, file, "/wager/level", "expected a titration, found a drill"});
  for (std::size_t round = 0; round < wager.rounds.size(); ++round) {
    for (std::size_t i = 0; i < wager.rounds[round].size(); ++i) {
      const auto wrong = wrong_with(wager.rounds[round][i], level);
      if (!wrong) continue;
      const std::string place = "/wager/rounds/" + std::to_string(round) + "/mistakes/" + std::to_string(i);
      faults.push_back({FaultKind::invalid, file, place, *wrong});
    }
  }
  return faults;
}

Result<PlayableWager> read_playable_wager(const std::string& path) {
  auto wager = read_wager(path);
  if (!wager) return tl::unexpected(std::move(wager.error()));
  auto level = read_level(data_folder() + "/levels/" + wager->level + ".json");
  if (!level) return tl::unexpected(std::move(level.error()));
  std::vector<Fault> faults = wager_faults(*wager, *level, path);
  if (!faults.empty()) return tl::unexpected(std::move(faults));
  return PlayableWager{std::move(*wager), std::move(*level)};
}

Result<WagerRound> wager_round(const PlayableWager& playable, std::uint64_t seed, std::size_t shown) {
  const Wager& wager = playable.wager;
  const auto fault = [&](const std::string& why) {
    return tl::unexpected(std::vector{Fault{FaultKind::invalid, wager.id, "", why}});
  };
  auto coarser = with_values(playable.level, kCoarser);
  if (!coarser) return tl::unexpected(std::move(coarser.error()));
  const std::vector<std::string>& mistakes = wager.rounds[round_order(wager, seed)[shown]];
  Performance performed = perform(std::move(*coarser), seed + shown, "", mistakes);
  if (performed.gave_up) return fault(*performed.gave_up);
  MarkedAttempt marked = mark(performed.attempt);
  auto truth = mean_truth(marked, wager.within_cm3);
  if (!truth) return fault("with these mistakes there is no mean to bet on");
  return WagerRound{std::move(performed.attempt), std::move(marked), std::move(*truth)};
}

}  // namespace halfdrop
