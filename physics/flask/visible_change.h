#pragma once
// Where in a titration an eye sees the indicator change, and whether that is where the substances are
// equivalent. Computed from the colours alone; a handbook's ranges play no part. The flask is mixed and seen
// by itself, without a second one beside it for comparison.

#include <string_view>
#include <vector>

#include "physics/flask/titration.h"
#include "physics/light/colour_vision.h"

namespace halfdrop {

/// What the flask stands on and who looks.
struct Viewing {
  Backdrop backdrop = Backdrop::white_tile;
  Vision vision = Vision::normal;
};

enum class Turn { gains_colour, loses_colour, changes_colour };

/// Chroma (CIELAB, off the tile or bench) below which a liquid counts as colourless (our own choice).
inline constexpr double kColourless = 4.0;

/// An endpoint further than this share of the volume from its equivalence is unfit (our own choice: one part
/// in a hundred, what a school's scheme usually allows a titre).
inline constexpr double kUnfitFromShare = 0.01;
/// A change that goes on for more than this share of the volume is gradual: it fits where its endpoint does,
/// but that is hard to call (our own choice; methyl orange, which is taught, takes a tenth and more).
inline constexpr double kGradualShare = 0.01;

enum class Fit {
  fits,
  too_far,  ///< kUnfitFromShare
  no_jump   ///< kLeastJump
};

/// The moments of a change that an eye can name.
enum class Sight { first, middle, last };

/// One change, from one lasting colour to the next, volumes from the burette in cm3. A change so small that
/// it is hardly seen at all can have its last before its first.
struct VisibleChange {
  double first_cm3 = 0.0;   ///< just visibly off the colour before (kFirstVisibleChange)
  double middle_cm3 = 0.0;  ///< as far from the colour before as from the colour after
  double last_cm3 = 0.0;    ///< just visibly off the colour after
  Turn turn = Turn::changes_colour;
  Equivalence nearest{};  ///< to the endpoint
  /// Where to call the titration finished: the first sight of a colour that comes, the last of one that goes;
  /// between two colours whichever of the three is nearest to an equivalence (common practice: a textbook
  /// names the colour to stop at).
  Sight endpoint = Sight::middle;
  Fit fit = Fit::too_far;

  [[nodiscard]] double endpoint_cm3() const;
  /// From first to last sight more than kGradualShare, whichever of them is the endpoint.
  [[nodiscard]] bool gradual() const;
};

/// In the order in which the burette brings them about. The colours before and after are those without
/// titrant, with twice the titrant of the last equivalence, and of any form between that at some point is all
/// but pure; each is compared at the same dilution. None without an indicator or an equivalence, or where no
/// two of these colours are visibly apart.
[[nodiscard]] std::vector<VisibleChange> visible_changes(const Titration& titration, const Viewing& viewing);

/// The first that fits, else the nearest to an equivalence. Precondition: there is at least one.
[[nodiscard]] const VisibleChange& best_of(const std::vector<VisibleChange>& changes);

}  // namespace halfdrop
