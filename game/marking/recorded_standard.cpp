#include "game/marking/recorded_standard.h"

#include "game/level/standard_to_make.h"
#include "physics/bench/preparation.h"

namespace halfdrop {

namespace {

/// A mass that someone may have meant: a slip of a figure is one, a swapped pair is none.
constexpr double kMostTimesTooMuch = 100.0;

}  // namespace

Level level_as_recorded(const Session& session, const ResultsSheet& sheet) {
  const Level& level = session.level();
  if (!level.standard) return level;
  const auto before_g = sheet.number(kBottleBefore), after_g = sheet.number(kBottleAfter);
  if (before_g && after_g && *before_g > *after_g &&
      *before_g - *after_g < kMostTimesTooMuch * level.standard->mass_g.high)
    return as_weighed(level, *before_g, *after_g);
  const double out_g = tipped_out_g(session.spec(), session.state());
  const double bottle_g = session.spec().preparation.bottle_g;
  return out_g > 0.0 ? as_weighed(level, bottle_g + out_g, bottle_g) : level;
}

BenchSpec bench_as_recorded(const BenchSpec& spec, const Level& recorded) {
  BenchSpec bench = spec;
  if (recorded.standard)
    (spec.unknown_in_flask ? bench.titrant : bench.sample).label_mol_dm3 =
        standard_of(recorded).label_mol_dm3;
  return bench;
}

}  // namespace halfdrop
