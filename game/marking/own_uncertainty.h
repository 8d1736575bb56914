#pragma once
// How well a player's own result is known: from the titres that count, through the level's own calculation.
// Left out: the rounding of the written result, an indicator that changes beside the equivalence, carbonate,
// drainage. Level values that a calculation writes as plain numbers count as exact, as do molar masses.

#include <optional>
#include <span>

#include "game/level/level.h"
#include "game/marking/uncertainty_budget.h"

namespace halfdrop {

/// What a level does not say.
struct AssumedOfTheBench {
  /// To the nearest half division, as the trade writes: each of two readings is rounded by as likely anything
  /// within ± 0.025, so their difference has a triangle of ± 0.05.
  double read_to_cm3 = 0.05;
  double drop_cm3 = 0.05;  ///< full drop; the endpoint is known to ± half of it
  /// One reading's scatter among trained students (practice of the trade; published for freshmen): stands in
  /// for the spread where a single titre counts.
  double reading_sd_cm3 = 0.022;
  /// Half a unit of the last figure on the standard's label; where the label prints no such figure, of the
  /// fourth.
  std::optional<double> standard_within_mol_dm3;
  double temperature_within_c = 3.0;  ///< of each liquid, about the bench's temperature
  double water_expands_per_c =
      2.1e-4;  ///< near 20 C (ISO 4787:2010, as quoted); glass, a tenth or less, left out
  double dilution_flask_cm3 = 250.0;
  double dilution_flask_within_cm3 =
      0.30;  ///< class B, ISO 1042:1998: a level does not name the flask's class
};

/// Inputs in the order of the table, and the formula they go into.
struct OwnMeasurement {
  std::vector<Quantity> inputs;
  MeasurementFunction result;
  std::string unit;
  std::optional<std::size_t> first_titre{};  ///< where the inputs of a first titre begin
};

/// From one titre or more (cm3). Shapes: burette triangular (an error between two marks is a difference of
/// two; so CG4 A2), pipette and flask rectangular (only their limits are known; a bench's pipette is drawn
/// so). The spread of the titres shrinks with their number; rounding, endpoint and scale do not: one eye
/// judges each titre alike, on one scale. Some of the spread is reading and drop once more: the safe side.
/// Temperatures of titrant and sample are independent, as in CG4 A3; liquids that stood in one room are
/// better off.
/// Where a flask has two endpoints, `first_titres_cm3` are those of the first: their repeatability, scale,
/// rounding and endpoint are taken as independent of the whole titres', though both share an initial reading
/// and a scale: the safe side.
[[nodiscard]] OwnMeasurement own_measurement(const Level& level, std::span<const double> titres_cm3,
                                             const AssumedOfTheBench& assumed = {},
                                             std::span<const double> first_titres_cm3 = {});

/// The same with nothing lost by hand or eye: no spread, read to a tenth of a division (0.01 cm3; a trained
/// reader's 0.022 is far from it: a limit, not a forecast), drops split in half, so that the endpoint is
/// known to a quarter of a drop.
[[nodiscard]] OwnMeasurement perfect_measurement(OwnMeasurement own, const AssumedOfTheBench& assumed = {});

struct OwnUncertainty {
  UncertaintyBudget budget;  ///< its value: the level's calculation worked unrounded from the titres
  double perfect_hands_expanded = 0.0;  ///< k = 2, what perfect hands could have got with this glass
};

/// Nothing without titres or calculation, or where the calculation gives no finite number.
[[nodiscard]] std::optional<OwnUncertainty> own_uncertainty(const Level& level,
                                                            std::span<const double> titres_cm3,
                                                            const AssumedOfTheBench& assumed = {},
                                                            std::span<const double> first_titres_cm3 = {});

}  // namespace halfdrop
