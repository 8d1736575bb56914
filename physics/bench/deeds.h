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
  next_picture,  ///< of a drill in reading
  close_volume,  ///< of a drill in delivering: what is in the beaker now is what was meant
  add_second_indicator
};
inline constexpr int kDeeds = 28;

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
  burette_in_hand
};

/// Nothing when the deed can be done.
[[nodiscard]] std::optional<Refusal> check(const BenchSpec& spec, const BenchState& state, Deed deed);
/// Precondition: check() returned nothing.
void apply(const BenchSpec& spec, BenchState& state, Deed deed);

}  // namespace halfdrop
