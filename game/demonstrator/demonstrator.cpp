#include "game/demonstrator/demonstrator.h"

#include <cassert>
#include <utility>

#include "game/demonstrator/drills.h"
#include "game/demonstrator/mistakes.h"
#include "game/demonstrator/routine.h"

namespace halfdrop {

namespace {

/// Changes the apparatus as a mistake has it; what is wrong with that, if anything.
std::optional<std::string> spoil(Level& level, const Mistake& mistake) {
  if (mistake.apparatus.empty()) return std::nullopt;
  Result<Level> spoilt = with_values(level, std::string(mistake.apparatus));
  if (!spoilt) return std::string(mistake.name) + ": " + spoilt.error().front().message;
  level = std::move(*spoilt);
  return std::nullopt;
}

}  // namespace

Performance perform(Level level, std::uint64_t seed, const std::string& alias,
                    const std::vector<std::string>& mistakes) {
  Habits habits;
  std::optional<std::string> unfit;
  for (const std::string& name : mistakes) {
    const Mistake* const mistake = find_mistake(name);
    assert(mistake);
    mistake->take_up(habits);
    if (const auto fault = spoil(level, *mistake)) unfit = fault;
  }
  Session session(level, seed, alias);
  AtBench bench(session);
  if (unfit) bench.give_up(*unfit);
  if (level.drill) {
    perform_drill(bench, habits);
  } else {
    Routine routine(bench, habits);
    routine.dress();
    routine.trial();
    routine.accurate_runs();
    routine.finish();
  }
  session.end(bench.gave_up() ? "left" : "handed in");
  return {session.attempt(), bench.gave_up()};
}

}  // namespace halfdrop
