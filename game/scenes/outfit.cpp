#include "game/scenes/outfit.h"

#include "game/scenes/bench_layout.h"

namespace halfdrop {

Outfit outfit_of(const Level& level) {
  Outfit outfit;
  outfit.eye = layout::kEye;
  outfit.pipette_by_hand = !level.drill && level.pipette.by_hand;
  outfit.second_indicator = level.then.has_value();
  outfit.makes_up = level.standard.has_value();
  if (!level.drill) return outfit;
  outfit.titration = false;
  outfit.pouring = level.drill->kind == DrillKind::fill_without_air;
  outfit.beaker_takes_it = level.drill->kind == DrillKind::deliver_exactly;
  outfit.liquid = level.drill->kind != DrillKind::read_meniscus;
  outfit.pieces = level.drill->kind == DrillKind::know_apparatus;
  if (!outfit.liquid) outfit.eye = layout::kEyeLarge;
  return outfit;
}

}  // namespace halfdrop
