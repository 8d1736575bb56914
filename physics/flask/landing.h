#pragma once
// Where what comes into the flask gets to: a drop dives a few of its radii deep where it comes down, water
// from the wash bottle runs down the walls, a drop of indicator falls in the middle.

#include <span>
#include <vector>

#include "physics/bench/bench_spec.h"
#include "physics/flask/grid.h"
#include "physics/flask/liquid.h"

namespace halfdrop {

class Landing {
 public:
  /// `volume`: of the cells before, quanta.
  Landing(const GridSize& grid, std::span<const double> volume, FlaskLiquid& flask);

  /// Lays all arrivals into the flask's fields and counts them to its parcels. Returns the volume that came
  /// into each cell, quanta; empty if nothing came.
  [[nodiscard]] std::vector<double> take(const BenchSpec& spec, const LiquidShape& shape);
  /// Downward speed that the drops give to each cell, cm/s; empty without.
  [[nodiscard]] const std::vector<double>& pushed_cm_s() const { return pushed_; }

 private:
  /// Cells that something gets into, and how much of it.
  struct Weights {
    std::vector<std::size_t> cells;
    std::vector<double> weight;
    double sum = 0.0;
    std::size_t heaviest = 0;  ///< place in the lists

    void add(std::size_t cell, double more);
  };

  void lay_drops(const BenchSpec& spec, const LiquidShape& shape);
  void lay_washings();
  void lay_tint(const LiquidShape& shape, double drop_cm3, const Arrival& tint, Source source, Parcel& held);
  /// Gives out whole quanta by weight, the last of them to the heaviest cell.
  void lay(const Weights& weights, Quanta volume, CellField& field);
  [[nodiscard]] Weights hollow(const LiquidShape& shape, double x_cm, double radius_cm) const;

  GridSize grid_;
  std::span<const double> volume_;
  FlaskLiquid& flask_;
  std::vector<double> came_, pushed_;
};

}  // namespace halfdrop
