#pragma once
// Deeds: what is done at once rather than held. Each is checked before it is applied; nothing half happens.

#include <cstdint>
#include <optional>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"

namespace halfdrop {

enum class Deed : std::uint8_t {
  put_on_coat,
  put_on_goggles,
  take_off_goggles,
  put_in_funnel,
  lift_out_funnel,
  put_beaker_under,
  take_beaker_away,
  empty_beaker,
  lay_tile,
  take_tile_away,
  fill_pipette,
  deliver_aliquot,
  add_indicator,
  touch_off_drop,
  flick_jet,
  empty_flask,
  rinse_flask,
  wipe_bench,
  take_up_titrant,  ///< the bottle that is poured from
  take_up_sample,
  take_up_water,
  rinse_pipette_with_water,
  rinse_pipette_with_sample,
  blow_out_pipette,
  rinse_flask_with_sample,
  next_picture,     ///< of a drill in reading
  close_volume,     ///< of a drill in delivering: what is in the beaker now is what was meant
  swing_over_edge,  ///< the burette, out over the bench's edge, where there is room to lower it
  swing_back,
  dip_pipette,  ///< of a pipette that is worked by hand, as the next four
  lift_pipette,
  wipe_pipette,
  lean_pipette,
  hold_pipette_free,
  add_second_indicator,
  dissolve_standard,  ///< of a standard that is made up on the bench, as the next three
  pour_into_volumetric,
  rinse_into_volumetric,
  invert_volumetric
};
inline constexpr int kDeeds = 39;

/// Why a deed cannot be done now.
enum class Refusal : std::uint8_t {
  already_done,
  not_there,
  flask_in_the_way,
  beaker_in_the_way,
  pipette_full,
  pipette_empty,
  nothing_hangs,
  nothing_to_touch,
  flask_under_jet,
  bottle_empty,
  flask_full,
  last_picture,
  no_volume_left,
  still_falls,
  jet_would_dip,
  jet_in_the_way,
  funnel_in_the_way,
  burette_in_hand,
  burette_over_edge,
  jet_too_low,       ///< for the flask, or for the burette to be swung back
  bench_in_the_way,  ///< of the jet that is lowered
  jet_would_dip_down,
  pipette_by_hand,
  pipette_practised,
  pipette_in_use,
  nothing_to_wipe,
  pipette_over_flask,
  nothing_to_dissolve,
  nothing_to_pour,
  volumetric_full,
  nothing_made_up
};

/// Nothing when the deed can be done.
[[nodiscard]] std::optional<Refusal> check(const BenchSpec& spec, const BenchState& state, Deed deed);
/// Precondition: check() returned nothing.
void apply(const BenchSpec& spec, BenchState& state, Deed deed);

}  // namespace halfdrop
