#pragma once
// Optional keys of a level's glassware: name in the file, member of the spec, allowed range. Absent keys keep
// the default of bench_spec.h; levels/schema.json documents them.

#include <span>
#include <string_view>

#include "game/level/fields.h"
#include "physics/bench/bench_spec.h"

namespace halfdrop {

template <class Spec>
struct NumberKey {
  std::string_view key;
  double Spec::*member;
  NumberRange range;
};

[[nodiscard]] std::span<const NumberKey<BuretteSpec>> burette_keys();
[[nodiscard]] std::span<const NumberKey<TapSpec>> tap_keys();
[[nodiscard]] std::span<const NumberKey<FlaskSpec>> flask_keys();
[[nodiscard]] std::span<const NumberKey<PipetteSpec>> pipette_keys();

}  // namespace halfdrop
