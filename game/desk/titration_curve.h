#pragma once
// A titration as a curve: pH and colour of the mixed flask after so much titrant.

#include <optional>
#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "game/desk/commands.h"
#include "physics/bench/bench_spec.h"

namespace halfdrop::desk {

struct Curve {
  Substance flask, burette;
  double flask_mol_dm3 = 0.1, burette_mol_dm3 = 0.1;
  double aliquot_cm3 = 25.0;
  std::optional<Indicator> indicator;
  int drops = 3;
  FlaskSpec glass;
  SolverOptions solver;  ///< closed to air; constants are those of 25 C
  std::vector<double> volumes_cm3;
};

struct CurvePoint {
  double ph = 7.0;     ///< -log10 of the activity of H+
  std::string colour;  ///< "#rrggbb" on a white tile; "#ffffff" without indicator
};

/// What is wrong: with an option, or with a file.
struct CurveFault {
  std::string option, message;
  std::vector<Fault> faults;
};

/// Reads the level or the substances that the options name, and checks every value.
[[nodiscard]] tl::expected<Curve, CurveFault> curve_from(const CurveOptions& options);

/// Volumes add. The indicator's drops dilute and take part in the balance.
[[nodiscard]] CurvePoint point_at(const Curve& curve, double volume_cm3);

}  // namespace halfdrop::desk
