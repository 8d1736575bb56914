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

Result<WagerRound> wager_round(const Wager& wager, const Level& level, std::uint64_t seed,
                               std::size_t shown) {
  auto coarser = with_values(level, kCoarser);
  if (!coarser) return tl::unexpected(std::move(coarser.error()));
  const std::vector<std::string>& mistakes = wager.rounds[round_order(wager, seed)[shown]];
  Performance performed = perform(std::move(*coarser), seed + shown, "", mistakes);
  if (performed.gave_up)
    return tl::unexpected(std::vector{Fault{FaultKind::invalid, wager.id, "", *performed.gave_up}});
  MarkedAttempt marked = mark(performed.attempt);
  return WagerRound{std::move(performed.attempt), std::move(marked)};
}

}  // namespace halfdrop
