#include "physics/flask/transport.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "physics/random.h"
#include "physics/units.h"
#include "tests/support/near.h"

using namespace halfdrop;

namespace {

constexpr GridSize kGrid{24, 18};
constexpr double kCell = 0x1p34;

/// Cells of different sizes, a flow that turns round among them, and fields with sharp edges.
struct Turning {
  std::vector<double> volume;
  Fluxes fluxes{kGrid};
  CellField first, second;

  explicit Turning(double strength) {
    Random random{7};
    for (std::size_t c = 0; c < kGrid.cells(); ++c) {
      volume.push_back(kCell * (0.5 + random.uniform()));
      first.push_back(std::floor(c % 5 < 2 ? volume[c] * 0.6 : 0.0));
      second.push_back(std::floor(volume[c] * 0.4 * random.uniform()));
    }
    const auto psi = [&](std::size_t i, std::size_t j) {
      const double x = static_cast<double>(i) / kGrid.columns, z = static_cast<double>(j) / kGrid.rows;
      return strength * kCell * std::sin(kPi * x) * std::sin(2.0 * kPi * z) * 8.0;
    };
    for (std::size_t j = 0; j < kGrid.rows; ++j) {
      for (std::size_t i = 0; i < kGrid.columns; ++i) {
        fluxes.across[j * kGrid.columns + i] = psi(i, j + 1) - psi(i, j);
        fluxes.up[j * kGrid.columns + i] = psi(i, j) - psi(i + 1, j);
      }
    }
  }
  [[nodiscard]] double share(const CellField& field, std::size_t cell) const {
    return field[cell] / volume[cell];
  }
};

}  // namespace

TEST_CASE("what is carried round a thousand times is all there, to the last bit") {
  Turning turning(0.15);
  std::array<CellField*, 2> fields{&turning.first, &turning.second};
  const Quanta first = total(turning.first), second = total(turning.second);
  REQUIRE(most_that_leaves(kGrid, turning.volume, turning.fluxes) < 0.9);
  REQUIRE(most_that_leaves(kGrid, turning.volume, turning.fluxes) > 0.1);
  for (int i = 0; i < 1000; ++i) carry(kGrid, turning.fluxes, turning.volume, fields);
  CHECK(total(turning.first) == first);
  CHECK(total(turning.second) == second);
}

// By hand: 0.95 leave across and 0.5 upwards. Of n parts the second sweep finds 1 - 0.95 / n there, of which
// 0.5 / n is at most 0.9 from n = (0.5 + 0.9 * 0.95) / 0.9 = 1.51 on.
TEST_CASE("a cell that the first sweep nearly empties asks for two parts, not for hundreds") {
  const std::vector<double> volume(kGrid.cells(), kCell);
  Fluxes fluxes(kGrid);
  const std::size_t cell = 9 * kGrid.columns + 12;
  fluxes.across[cell + 1] = 0.95 * kCell;
  fluxes.up[cell + kGrid.columns] = 0.5 * kCell;
  CHECK_NEAR(most_that_leaves(kGrid, volume, fluxes) / kMostLeaves, 1.51, 0.01);
}

TEST_CASE("no cell leaves the range that all had, nor does what is none of the fields") {
  for (const double strength : {0.05, 0.15, 0.4}) {
    Turning turning(strength);
    std::array<CellField*, 2> fields{&turning.first, &turning.second};
    const double leaves = most_that_leaves(kGrid, turning.volume, turning.fluxes);
    if (leaves >= 0.9) continue;
    constexpr double kFew = 64.0 / kCell;
    double most_first = 0.0, most_second = 0.0, most_sum = 0.0, least_sum = 1.0;
    const auto sum = [&](std::size_t c) {
      return turning.share(turning.first, c) + turning.share(turning.second, c);
    };
    for (std::size_t c = 0; c < kGrid.cells(); ++c) {
      most_first = std::max(most_first, turning.share(turning.first, c));
      most_second = std::max(most_second, turning.share(turning.second, c));
      most_sum = std::max(most_sum, sum(c));
      least_sum = std::min(least_sum, sum(c));
    }
    for (int step = 0; step < 200; ++step) {
      carry(kGrid, turning.fluxes, turning.volume, fields);
      for (std::size_t c = 0; c < kGrid.cells(); ++c) {
        REQUIRE(turning.share(turning.first, c) >= -kFew);
        REQUIRE(turning.share(turning.first, c) <= most_first + kFew);
        REQUIRE(turning.share(turning.second, c) >= -kFew);
        REQUIRE(turning.share(turning.second, c) <= most_second + kFew);
        REQUIRE(sum(c) <= most_sum + 2.0 * kFew);
        REQUIRE(sum(c) >= least_sum - 2.0 * kFew);
      }
    }
  }
}

TEST_CASE("what is the same everywhere stays so, whatever flows") {
  Turning turning(0.15);
  for (std::size_t c = 0; c < kGrid.cells(); ++c) turning.first[c] = std::floor(turning.volume[c] * 0.25);
  std::array<CellField*, 1> fields{&turning.first};
  for (int i = 0; i < 100; ++i) carry(kGrid, turning.fluxes, turning.volume, fields);
  for (std::size_t c = 0; c < kGrid.cells(); ++c)
    REQUIRE(std::fabs(turning.share(turning.first, c) - 0.25) < 100.0 * 16.0 / kCell);
}

// Crank, The Mathematics of Diffusion: a step in concentration spreads as erfc(z / sqrt(4 D t)) / 2 (textbook
// result).
TEST_CASE("a sharp layer spreads as the error function says") {
  constexpr GridSize kTall{24, 96};
  constexpr double kHeight = 4.0, kDiffusion = 0.01, kStep = 0.05;
  constexpr double kRow = kHeight / static_cast<double>(kTall.rows);
  std::vector<double> columns(kTall.columns, kCell), rows(kTall.rows, 1.0);
  std::vector<double> exchange(kTall.rows, kDiffusion * kStep / (kRow * kRow));
  CellField layer(kTall.cells(), 0.0);
  for (std::size_t c = 0; c < kTall.cells() / 2; ++c) layer[c] = kCell;
  std::array<CellField*, 1> fields{&layer};
  const Quanta before = total(layer);
  for (int i = 0; i < 200; ++i) spread_up({columns, rows, exchange}, fields);
  CHECK(total(layer) == before);
  for (std::size_t j = 0; j < kTall.rows; ++j) {
    const double z = (static_cast<double>(j) + 0.5) * kRow - 0.5 * kHeight;
    CHECK_NEAR(layer[j * kTall.columns + 5] / kCell, 0.5 * std::erfc(z / std::sqrt(4.0 * kDiffusion * 10.0)),
               0.004);
  }
}

TEST_CASE("spreading across does the same along the rows, and loses nothing") {
  constexpr GridSize kWide96{96, 8};
  constexpr double kWidth = 4.0, kDiffusion = 0.01, kStep = 0.05;
  constexpr double kColumn = kWidth / static_cast<double>(kWide96.columns);
  std::vector<double> columns(kWide96.columns, 1.0), rows(kWide96.rows, kCell);
  std::vector<double> exchange(kWide96.columns, kDiffusion * kStep / (kColumn * kColumn));
  CellField layer(kWide96.cells(), 0.0);
  for (std::size_t c = 0; c < kWide96.cells(); ++c)
    layer[c] = c % kWide96.columns < kWide96.columns / 2 ? kCell : 0.0;
  std::array<CellField*, 1> fields{&layer};
  const Quanta before = total(layer);
  for (int i = 0; i < 200; ++i) spread_across({columns, rows, exchange}, fields);
  CHECK(total(layer) == before);
  for (std::size_t i = 0; i < kWide96.columns; ++i) {
    const double x = (static_cast<double>(i) + 0.5) * kColumn - 0.5 * kWidth;
    CHECK_NEAR(layer[3 * kWide96.columns + i] / kCell,
               0.5 * std::erfc(x / std::sqrt(4.0 * kDiffusion * 10.0)), 0.004);
  }
}
