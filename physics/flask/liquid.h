#pragma once
// The flask's liquid as it is spread: which cell holds how much of what came from the burette, the wash
// bottle and the indicator's dropper since all of it was last the same throughout. The rest of each cell is
// the liquid that was. What all of it holds stands in the ledger; here is only where it is.

#include <array>

#include "physics/bench/ledger.h"
#include "physics/flask/flow.h"
#include "physics/flask/transport.h"

namespace halfdrop {

struct BenchSpec;
struct BenchState;

/// What a cell's volume came from. Titrant stands in three stages (engulfment.h): it meets the liquid around
/// it, then more of it, and is mixed with its whole cell at last.
enum class Source : std::size_t { fresh, meeting, titrant, water, indicator, second_indicator };
inline constexpr std::size_t kSources = 6;

/// On its way into the cells: in the flask's account of the ledger already.
struct Arrival {
  Parcel liquid;
  double x_cm = 0.0;             ///< where it comes down, from the flask's axis
  double momentum_g_cm_s = 0.0;  ///< downwards

  friend bool operator==(const Arrival&, const Arrival&) = default;
};

struct FlaskLiquid {
  std::array<CellField, kSources> field;  ///< empty: none of it in any cell
  /// What the fields hold of each; titrant in all three stages.
  Parcel titrant, water, indicator, second_indicator;
  /// Since the liquid was last stirred: titrant, water, the indicators.
  Arrival drops, washings, tint, second_tint;
  Quanta laid_out = 0;  ///< of liquid when the fields were last carried; 0: nothing is spread
  FlowState flow;
  double spin_rad_s = 0.0;  ///< how fast it turns about the upright axis
  double impact_erg = 0.0;  ///< energy that drops brought and that eddies have not used up yet

  [[nodiscard]] const CellField& of(Source source) const { return field[static_cast<std::size_t>(source)]; }
  [[nodiscard]] CellField& of(Source source) { return field[static_cast<std::size_t>(source)]; }
  /// The same throughout, and nothing on its way in.
  [[nodiscard]] bool even() const { return laid_out == 0; }
  friend bool operator==(const FlaskLiquid&, const FlaskLiquid&) = default;
};

/// All that is in the flask: what it would be if it were mixed.
[[nodiscard]] const Parcel& flask_liquid(const Ledger& ledger);
/// What is none of the sources: as it was when all was last the same throughout.
[[nodiscard]] Parcel rest_of(const BenchState& state);

/// Share of a drop's energy that becomes eddies in the liquid; the rest makes ripples and sound (our own
/// estimate).
inline constexpr double kStirsUp = 0.5;

/// Takes what an account holds (a part of it) into the flask, where it is spread from the next stirring on.
/// Everything else that enters the flask mixes with what is there at once.
void let_drop_in(BenchState& state, Account from, const Parcel& liquid, double x_cm, double momentum_g_cm_s);
void let_water_in(BenchState& state, Account from, const Parcel& liquid);
void let_tint_in(BenchState& state, Account from, const Parcel& liquid);
void let_second_tint_in(BenchState& state, Account from, const Parcel& liquid);
/// Makes it the same throughout.
void even_out(BenchState& state);
/// Moves so much of it elsewhere, of every part of it alike.
void take_out(BenchState& state, Account to, Quanta volume);

}  // namespace halfdrop
