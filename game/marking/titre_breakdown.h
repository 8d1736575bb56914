#pragma once
// Recorded titre minus ideal titre as a sum of named causes that adds up exactly.

#include <array>
#include <cstdint>
#include <string_view>

#include "game/level/level.h"
#include "game/session/attempt.h"
#include "physics/bench/bench.h"

namespace halfdrop {

enum class Cause : std::uint8_t {
  rounding,
  misreading,
  meniscus_edge,
  parallax_initial,
  parallax_final,
  burette_scale,
  film,
  jet_air,
  hanging_drop,
  funnel_drips,
  refill,
  leak,
  missed_flask,
  flask_wall,
  titrant_strength,
  aliquot,
  flask_residue,
  swirled_out,
  indicator_blank,
  carbon_dioxide,
  overshoot
};
inline constexpr std::size_t kCauses = 21;

/// "jet_air" and so on.
[[nodiscard]] std::string_view cause_id(Cause cause);

/// A written reading and the bench at the moment it was read.
struct ReadingMoment {
  double written_cm3 = 0.0;
  double apparent_cm3 = 0.0;       ///< bottom of the meniscus as the eye saw it
  double apparent_edge_cm3 = 0.0;  ///< upper edge as the eye saw it
  BenchState bench;
};

/// What a run's flask got and lost, from where the run's own liquid begins (reading_moments.h) to its final
/// reading.
struct FlaskStory {
  Parcel from_pipette;  ///< aliquots, and what was blown out after them
  Parcel blown_out;     ///< of that
  Parcel lost;          ///< over the rim
  Parcel poured_away;   ///< came into an earlier flask after the run's initial reading
};

/// Everything that ever came into the flask's liquid from above: drops, and what was washed off its wall.
[[nodiscard]] Parcel into_the_flask(const Ledger& books);

struct TitreBreakdown {
  double recorded_cm3 = 0.0;
  double ideal_cm3 = 0.0;
  std::array<double, kCauses> causes_cm3{};
  double remainder_cm3 = 0.0;  ///< recorded - ideal - sum of causes

  [[nodiscard]] double of(Cause cause) const { return causes_cm3[static_cast<std::size_t>(cause)]; }
};

/// The unrounded titre which, with label values, returns the true unknown.
/// Where a flask has two endpoints: the pair of them does.
[[nodiscard]] double ideal_titre_cm3(const BenchSpec& spec, double aliquot_cm3,
                                     Endpoint endpoint = Endpoint::first);

/// `final`: the reading at that endpoint.
[[nodiscard]] TitreBreakdown break_down(const BenchSpec& spec, double nominal_aliquot_cm3,
                                        const ReadingMoment& initial, const ReadingMoment& final,
                                        const FlaskStory& story, Endpoint endpoint = Endpoint::first);

/// Whether the trade accepts `written` for a meniscus seen at `seen` (cm3): nearest 0.05, or the 5 between
/// two marks.
[[nodiscard]] bool reading_allowed(double written_cm3, double seen_cm3);

}  // namespace halfdrop
