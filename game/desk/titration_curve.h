#pragma once
// A titration as a curve: pH and colour of the mixed flask after so much titrant.

#include <optional>
#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "game/desk/commands.h"
#include "physics/flask/titration.h"

namespace halfdrop::desk {

struct Curve {
  TitrationSpec titration;  ///< closed to air
  std::vector<double> volumes_cm3;
  bool of_level = false;             ///< its flask is the level's own
  std::vector<double> given_pka;     ///< that took the place of the flask substance's; empty where none did
  std::optional<double> unheeded_c;  ///< the level's temperature, where --temperature was not given
  int own_steps = 0;                 ///< protons that the flask substance loses by its own constants
};

struct CurvePoint {
  double ph = 7.0;  ///< -log10 of the activity of H+
  double ionic_strength_mol_dm3 = 0.0;
  std::string colour;  ///< "#rrggbb" on a white tile; "#ffffff" without indicator
};

/// What is wrong: with an option, or with a file.
struct CurveFault {
  std::string option, message;
  std::vector<Fault> faults;
};

/// Reads the level or the substances that the options name, and checks every value.
[[nodiscard]] tl::expected<Curve, CurveFault> curve_from(const CurveOptions& options);

/// `titration` is that of the curve.
[[nodiscard]] CurvePoint point_at(const Curve& curve, const Titration& titration, double volume_cm3);

/// What else to say of a curve: constants for another number of protons, another temperature than
/// the level's, a flask too full for its colours.
[[nodiscard]] std::vector<std::string> warnings_about(const Curve& curve, const Titration& titration);

/// Keeps the strongest of a titration's solutions: those without titrant and at the equivalences, and what it
/// is shown.
class StrongestSolution {
 public:
  explicit StrongestSolution(const Titration& titration);
  void see(double volume_cm3, double ionic_strength_mol_dm3);
  /// That it is beyond what the activity model is good for; nothing where it is not.
  [[nodiscard]] std::optional<std::string> warning() const;

 private:
  double volume_cm3_ = 0.0, ionic_strength_mol_dm3_ = 0.0;
};

}  // namespace halfdrop::desk
