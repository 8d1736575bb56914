#pragma once
// What goes along with the flask's flow, and what spreads in it. A field says how much of a cell's volume
// came from one source: a whole number of ledger quanta in each cell, kept as double. Whatever goes through a
// face is rounded to whole quanta and taken from one cell as it is given to the other, so a field's total
// never changes by a bit. No cell leaves the range that it and its neighbours had (to a few quanta): first
// across, then upwards, each with the second order of Lax and Wendroff held within Sweby's region, and one
// limit for all fields and the rest of the cell, so that shares still add up to one.

#include <array>
#include <span>
#include <vector>

#include "physics/bench/ledger.h"
#include "physics/flask/grid.h"

namespace halfdrop {

/// Of each cell, quanta of volume.
using CellField = std::vector<double>;
inline constexpr std::size_t kMostFields = 6;

/// CellFields that move together; all of the grid's size, at most kMostFields.
using CellFields = std::span<CellField* const>;

/// Volumes that pass the faces in one step, quanta: to the right through the left side of a cell, upwards
/// through its bottom. What passes the outer sides is not looked at.
struct Fluxes {
  std::vector<double> across, up;

  explicit Fluxes(const GridSize& grid) : across(grid.cells()), up(grid.cells()) {}
};

/// Most of a cell's volume that may leave it in one sweep.
inline constexpr double kMostLeaves = 0.9;

/// Largest share of any cell's volume that leaves it in one sweep, so counted that a share of the fluxes has
/// that share of it: up to kMostLeaves, no cell loses more than kMostLeaves of what it holds in either sweep.
[[nodiscard]] double most_that_leaves(const GridSize& grid, std::span<const double> volume,
                                      const Fluxes& fluxes);

/// Carries the fields. `volume`: of the cells, quanta, before; after, what the fluxes have made of it.
/// Precondition: most_that_leaves() is at most kMostLeaves.
void carry(const GridSize& grid, const Fluxes& fluxes, std::span<double> volume, CellFields fields);

/// Spreads the fields along the rows, or along the columns: implicit in time, so that no number is too large.
/// All rows are alike up to their size, and all columns: a cell's volume is `column` times `row`, quanta.
struct Spread {
  std::span<const double> column, row;
  /// Between a cell and the one before it during the step, for a row (or column) of size 1; the first is not
  /// looked at.
  std::span<const double> exchange;
};
void spread_across(const Spread& spread, CellFields fields);
void spread_up(const Spread& spread, CellFields fields);

/// All of a field, quanta: exact.
[[nodiscard]] Quanta total(const CellField& field);

}  // namespace halfdrop
