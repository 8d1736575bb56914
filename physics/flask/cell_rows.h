#pragma once
// What a step of stirring does to each cell by itself, many cells at once.

#include <cstddef>
#include <vector>

#include "physics/flask/grid.h"

namespace halfdrop {

/// Volumes of the cells of a liquid, quanta; `shares`: of the columns.
void lay_out_cells(const LiquidShape& shape, const std::vector<double>& shares, std::vector<double>& cells);

/// What passes the left side and the bottom of a row's cells (columns of them): `quanta` times the
/// differences of the stream function at the nodes below (`low`) and above it.
void pass_row(const float* low, const float* high, std::size_t columns, double quanta, double* across,
              double* up);

/// Adds what a field of `cells` is pulled down with: `pull` (cm/s2) times what is in each cell.
void add_weight(const double* field, std::size_t cells, double pull, double* heavy);
/// The force per mass that comes of it, cm/s2 upwards.
void push_up(const double* heavy, const double* volume, std::size_t cells, float* force);

void multiply(double* values, std::size_t count, double by);

}  // namespace halfdrop
