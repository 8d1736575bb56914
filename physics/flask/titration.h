#pragma once
// A whole titration in a mixed flask, closed to the air: pH, colour, equivalences.

#include <optional>
#include <vector>

#include "physics/chemistry/solver.h"
#include "physics/flask/contents.h"

namespace halfdrop {

struct TitrationSpec {
  Substance flask, burette;
  /// What else is in them. The equivalences are those of flask and burette alone.
  std::vector<Beside> beside_flask{}, beside_burette{};
  double flask_mol_dm3 = 0.1, burette_mol_dm3 = 0.1;
  double aliquot_cm3 = 25.0;
  std::optional<Indicator> indicator;
  int drops = 3;
  double drop_cm3 = 0.04;
  FlaskSpec glass;
  SolverOptions solver;
  /// The only equivalence, instead of those of flask and burette: where what stands beside takes part.
  std::optional<double> equivalence_cm3{};
};

/// Where the titrant has just used up one proton's worth of the analyte (equivalence.h).
struct Equivalence {
  double volume_cm3 = 0.0;
  double ph = 0.0;
  double jump_ph = 0.0;  ///< from 2 % of the volume before to 2 % past; >= 0
};

/// Less than this is no jump: no indicator can show such an equivalence (our own choice; a soft but usable
/// one, the first of sodium carbonate, is about 0.6).
inline constexpr double kLeastJump = 0.3;

class Titration {
 public:
  explicit Titration(const TitrationSpec& spec);

  [[nodiscard]] const TitrationSpec& spec() const { return spec_; }
  /// Volumes add. The indicator's drops dilute and take part in the balance.
  [[nodiscard]] Equilibrium at(double volume_cm3) const { return solve(volume_cm3, volume_cm3); }
  /// The flask when it holds `volume_cm3` from the burette, with the titrant of `titrant_cm3` in it: another
  /// moment's chemistry at this moment's dilution.
  [[nodiscard]] Equilibrium solve(double volume_cm3, double titrant_cm3) const;
  /// The mixed flask on the tile or the bench; without indicator that of the tile or bench itself.
  [[nodiscard]] Xyz colour(double volume_cm3, const Equilibrium& there, Backdrop backdrop) const;
  [[nodiscard]] Xyz colour(double volume_cm3, Backdrop backdrop) const {
    return colour(volume_cm3, at(volume_cm3), backdrop);
  }
  /// Protons that a mean molecule of the indicator has lost: from 0 to its number of steps. Precondition:
  /// there is an indicator.
  [[nodiscard]] double indicator_protons_lost(double volume_cm3) const;
  /// Share of one form of the indicator, 0 to 1. Precondition: there is an indicator.
  [[nodiscard]] double indicator_share(double volume_cm3, int form) const;
  /// In the flask: aliquot, drops of indicator and so much from the burette.
  [[nodiscard]] double total_cm3(double volume_cm3) const;
  /// All of them, ascending.
  [[nodiscard]] const std::vector<Equivalence>& equivalences() const { return equivalences_; }

 private:
  TitrationSpec spec_;
  Solver solver_;
  IndicatorSpectra spectra_;
  std::vector<Equivalence> equivalences_;
};

}  // namespace halfdrop
