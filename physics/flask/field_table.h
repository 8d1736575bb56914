#pragma once
// pH and colour of many neighbouring bits of one flask at once, from a table that fills itself.

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "physics/flask/tint_table.h"
#include "physics/flask/titration.h"

namespace halfdrop {

/// What a cell is mixed of: shares of its volume that came from the burette and from the flask as it stood
/// before any titrant (indicator in it), together at most 1; the rest is water.
struct CellMix {
  double burette = 0.0, flask = 0.0;
  double path_cm = 0.0;  ///< that light goes through it
};

inline constexpr std::size_t kMostCentres = 24;

struct CellLook {
  float ph = 7.0F;
  std::uint8_t r = 255, g = 255, b = 255, a = 255;  ///< sRGB
};

/// The table's axes are titrant's part of what is no water, and how much is no water. Its nodes lie closer
/// the nearer they are to an equivalence, by a fixed share of the distance, so a pH that jumps there is met
/// as well as one that creeps. Nodes are solved when a cell first needs them. Within 1e-3 of the solver's pH
/// for cells with 1/256 or more that is no water (fewer count as 1/256). For one flask's proportions: carbon
/// dioxide from the air is left out, and a flask with another amount of indicator needs a table of its own.
/// An indicator of several coloured forms whose constants lie closer than about 2 is only approximate in
/// colour.
class FieldTable {
 public:
  FieldTable(const TitrationSpec& spec, Backdrop backdrop);

  /// As many looks as cells.
  void look(std::span<const CellMix> cells, std::span<CellLook> looks);

 private:
  using Node = std::array<float, 2>;  ///< pH and tint
  void lay_centres(const TitrationSpec& spec);
  [[nodiscard]] double titrant_at(std::size_t node) const;
  [[nodiscard]] Node solved(std::size_t titrant_node, std::size_t strength_node) const;
  void look_at_few(std::span<const CellMix> cells, std::span<CellLook> looks);
  /// Solves what is not yet known of the four nodes that begin with one.
  void fill(std::size_t corner);

  Solver solver_;
  double flask_mol_dm3_ = 0.0, burette_mol_dm3_ = 0.0, indicator_mol_dm3_ = 0.0;
  int centres_ = 0;
  std::array<double, kMostCentres> centre_{}, border_{};  ///< border_[i]: between centres i and i + 1
  std::size_t titrants_ = 0;
  std::vector<Node> nodes_;  ///< by strength, then titrant; NaN: not solved yet
  std::optional<TintTable> tints_;
};

}  // namespace halfdrop
