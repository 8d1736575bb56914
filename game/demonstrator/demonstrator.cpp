#include "game/demonstrator/demonstrator.h"

#include <cassert>

#include "game/demonstrator/mistakes.h"
#include "game/demonstrator/routine.h"

namespace halfdrop {

Performance perform(const Level& level, std::uint64_t seed, const std::string& alias,
                    const std::vector<std::string>& mistakes) {
  Habits habits;
  for (const std::string& name : mistakes) {
    const Mistake* const mistake = find_mistake(name);
    assert(mistake);
    mistake->take_up(habits);
  }
  Session session(level, seed, alias);
  AtBench bench(session);
  Routine routine(bench, habits);
  routine.dress();
  routine.trial();
  routine.accurate_runs();
  routine.finish();
  session.end(bench.gave_up() ? "left" : "handed in");
  return {session.attempt(), bench.gave_up()};
}

}  // namespace halfdrop
