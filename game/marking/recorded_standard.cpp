#include "game/marking/recorded_standard.h"

#include "game/level/standard_to_make.h"
#include "physics/bench/preparation.h"

namespace halfdrop {

namespace {

/// A mass that someone may have meant: a slip of a figure is one, a swapped pair is none, nor is a speck.
constexpr double kMostTimesOff = 100.0;

bool may_be_meant(const Level& level, double mass_g) {
  const Range& serves = level.standard->mass_g;
  return mass_g > serves.low / kMostTimesOff && mass_g < serves.high * kMostTimesOff;
}

}  // namespace

Level level_as_recorded(const Session& session, const ResultsSheet& sheet) {
  const Level& level = session.level();
  if (!level.standard) return level;
  const auto before_g = sheet.number(kBottleBefore), after_g = sheet.number(kBottleAfter);
  if (before_g && after_g && may_be_meant(level, *before_g - *after_g))
    return as_weighed(level, *before_g, *after_g);
  const double out_g = tipped_out_g(session.spec(), session.state());
  const double bottle_g = session.spec().preparation.bottle_g;
  return may_be_meant(level, out_g) ? as_weighed(level, bottle_g + out_g, bottle_g) : level;
}

BenchSpec bench_as_recorded(const BenchSpec& spec, const Level& recorded) {
  BenchSpec bench = spec;
  if (recorded.standard)
    (spec.unknown_in_flask ? bench.titrant : bench.sample).label_mol_dm3 =
        standard_of(recorded).label_mol_dm3;
  return bench;
}

}  // namespace halfdrop
