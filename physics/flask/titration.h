#pragma once
// A whole titration in a mixed flask, closed to the air: pH, colour, equivalences and what an eye sees
// change.

#include <optional>
#include <vector>

#include "physics/chemistry/solver.h"
#include "physics/flask/contents.h"
#include "physics/light/colour_vision.h"

namespace halfdrop {

struct TitrationSpec {
  Substance flask, burette;
  double flask_mol_dm3 = 0.1, burette_mol_dm3 = 0.1;
  double aliquot_cm3 = 25.0;
  std::optional<Indicator> indicator;
  int drops = 3;
  double drop_cm3 = 0.04;
  FlaskSpec glass;
  SolverOptions solver;
};

/// What the flask stands on and who looks.
struct Viewing {
  Backdrop backdrop = Backdrop::white_tile;
  Vision vision = Vision::normal;
};

/// Volumes from the burette between which the flask's colour changes, cm3. A change so small that it is
/// hardly seen at all can have its last before its first.
struct VisibleChange {
  double first_cm3 = 0.0;   ///< just visibly off the colour without titrant (kFirstVisibleChange)
  double middle_cm3 = 0.0;  ///< as far from that colour as from the last one
  double last_cm3 = 0.0;    ///< just visibly off the colour with twice the titrant of the last equivalence
};

class Titration {
 public:
  explicit Titration(const TitrationSpec& spec);

  /// Volumes add. The indicator's drops dilute and take part in the balance.
  [[nodiscard]] Equilibrium at(double volume_cm3) const;
  /// The mixed flask on the tile or the bench; without indicator that of the tile or bench itself.
  [[nodiscard]] Xyz colour(double volume_cm3, Backdrop backdrop) const;
  [[nodiscard]] Xyz colour(double volume_cm3, const Equilibrium& there, Backdrop backdrop) const;
  /// Every equivalence, ascending, cm3 (equivalence.h).
  [[nodiscard]] const std::vector<double>& equivalences_cm3() const { return equivalences_cm3_; }
  /// Each colour is compared at the same dilution. Nothing without an indicator or an equivalence, or when
  /// the last colour is not visibly off the first.
  [[nodiscard]] std::optional<VisibleChange> visible_change(const Viewing& viewing) const;

 private:
  [[nodiscard]] double total_cm3(double volume_cm3) const;
  /// The flask when it holds `volume_cm3` from the burette, with the titrant of `titrant_cm3` in it.
  [[nodiscard]] Equilibrium solve(double volume_cm3, double titrant_cm3) const;
  [[nodiscard]] Lab seen(double volume_cm3, double titrant_cm3, const Viewing& viewing) const;

  TitrationSpec spec_;
  Solver solver_;
  std::vector<double> equivalences_cm3_;
};

/// An indicator is unfit when the middle of its change lies further than this share of the volume from every
/// equivalence (our own choice: one part in a hundred, what a school's scheme usually allows a titre).
inline constexpr double kUnfitFromShare = 0.01;

struct Fitness {
  double equivalence_cm3 = 0.0;  ///< the one nearest to the middle of the change
  bool fit = false;
};
/// Precondition: at least one equivalence.
[[nodiscard]] Fitness fitness_of(const VisibleChange& change, const std::vector<double>& equivalences_cm3);

}  // namespace halfdrop
