#include "physics/flask/cell_rows.h"

#include "physics/bench/ledger.h"
#include "physics/flask/wide.h"

namespace halfdrop {

HALFDROP_WIDER void add_weight(const double* field, std::size_t cells, double pull, double* heavy) {
  for (std::size_t i = 0; i < cells; ++i) heavy[i] += pull * field[i];
}
HALFDROP_WIDER void push_up(const double* heavy, const double* volume, std::size_t cells, float* force) {
  for (std::size_t i = 0; i < cells; ++i) force[i] = static_cast<float>(-heavy[i] / volume[i]);
}

HALFDROP_WIDER void pass_row(const float* low, const float* high, std::size_t columns, double quanta,
                             double* across, double* up) {
  for (std::size_t i = 0; i < columns; ++i) {
    const auto here = static_cast<double>(low[i]);
    across[i] = (static_cast<double>(high[i]) - here) * quanta;
    up[i] = (here - static_cast<double>(low[i + 1])) * quanta;
  }
}

HALFDROP_WIDER void multiply(double* values, std::size_t count, double by) {
  for (std::size_t i = 0; i < count; ++i) values[i] *= by;
}

void lay_out_cells(const LiquidShape& shape, const std::vector<double>& shares, std::vector<double>& cells) {
  cells.resize(shape.row_cm3().size() * shares.size());
  double* cell = cells.data();
  for (const double row : shape.row_cm3()) {
    const double quanta = row / kVolumeQuantum_cm3;
    for (const double share : shares) *cell++ = quanta * share;
  }
}

}  // namespace halfdrop
