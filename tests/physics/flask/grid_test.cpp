#include "physics/flask/grid.h"

#include <doctest/doctest.h>

#include <numeric>

#include "tests/support/near.h"

using namespace halfdrop;

TEST_CASE("the cells hold just what the flask holds, however full it is") {
  for (const double volume_cm3 : {0.3, 25.0, 50.0, 150.0, 240.0}) {
    const LiquidShape shape(FlaskSpec{}, volume_cm3);
    const double rows = std::accumulate(shape.row_cm3().begin(), shape.row_cm3().end(), 0.0);
    CHECK_NEAR(rows, volume_cm3, 1e-10 * volume_cm3);
    CHECK(shape.row_cm3().front() >= shape.row_cm3().back());
  }
}

// A disc's segment: the middle half of the width holds (2/pi)(asin(1/2) + (1/2) sqrt(3)/2) of it (geometry).
TEST_CASE("columns share a round vessel's cross-section as its chords do") {
  const std::vector<double> shares = column_shares(96);
  CHECK_NEAR(std::accumulate(shares.begin(), shares.end(), 0.0), 1.0, 1e-14);
  CHECK_NEAR(std::accumulate(shares.begin() + 24, shares.begin() + 72, 0.0), 0.608998, 2e-6);
  CHECK(shares.front() == shares.back());
}
