#include "physics/flask/transport.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "physics/flask/wide.h"

namespace halfdrop {

namespace {

constexpr std::size_t kMostColumns = 256;
/// Before and behind each row, so that the outermost faces have cells on either side as well.
constexpr std::size_t kPad = kWide;
using Row = std::array<double, kMostColumns + 3 * kPad>;

double larger(double a, double b) { return a > b ? a : b; }

/// Added and taken away again it leaves the nearest whole number, for |x| < 2^51.
constexpr double kMagic = 0x1.8p52;
/// A lambda on its own would not be compiled for wider registers.
#define HALFDROP_LAMBDA __attribute__((always_inline))

/// Of one row's cells: the share of each field, of what is none of them, and of the cell that leaves it in
/// this sweep.
struct Shares {
  std::array<Row, kMostFields + 1> of;
  Row leaves;
};

/// Fields of a row, from its first cell on.
struct RowFields {
  std::array<double*, kMostFields> at{};
  std::size_t count;

  RowFields(CellFields fields, std::size_t offset) : count(fields.size()) {
    for (std::size_t k = 0; k < count; ++k) at[k] = fields[k]->data() + offset;
  }
};

/// `in`, `out`: volumes that come in on one side of each cell and go out on the other.
HALFDROP_INLINE void find_shares(std::size_t columns, const double* volume, const RowFields& fields,
                                 const double* in, const double* out, Shares& shares) {
  const Wide none{};
  for (std::size_t i = 0; i < columns; i += kWide) {
    const Wide inverse = 1.0 / wide_at<Wide>(volume + i);
    Wide rest = none + 1.0;
    for (std::size_t k = 0; k < fields.count; ++k) {
      const Wide share = wide_at<Wide>(fields.at[k] + i) * inverse;
      put(share, &shares.of[k][kPad + i]);
      rest -= share;
    }
    put(rest, &shares.of[fields.count][kPad + i]);
    const Wide leaves = larger_of(wide_at<Wide>(out + i), none) + larger_of(-wide_at<Wide>(in + i), none);
    put(leaves * inverse, &shares.leaves[kPad + i]);
  }
  for (std::size_t k = 0; k <= fields.count; ++k) {
    Row& row = shares.of[k];
    for (std::size_t i = 0; i < kPad; ++i) {
      row[i] = row[kPad];
      row[kPad + columns + i] = row[kPad + columns - 1];
    }
  }
  for (std::size_t i = 0; i < kPad; ++i) shares.leaves[i] = shares.leaves[kPad + columns + i] = 0.0;
}

/// Cells either side of each face of a row, the one before each and the one after: of the same row or of
/// four.
struct Around {
  const Shares *before, *low, *high, *after;
  std::size_t before_at, low_at, high_at, after_at;
};

/// What passes the faces, given the volumes that do: the value of second order, but never beyond both
/// neighbours (Sweby's region, sweby.h), the least of all fields' limits for each of them.
template <std::size_t kCount>
HALFDROP_INLINE void find_passing_of(const Around& around, const double* flux, std::size_t faces,
                                     std::array<Row, kMostFields>& passing) {
  constexpr double kTiny = 1e-40;  // no step at all: no limit
  const Wide none{};
  for (std::size_t i = 0; i < faces; i += kWide) {
    const Wide through = wide_at<Wide>(flux + i);
    const auto rises = through > none;
    Wide least = none + 1.0, per = none + 1.0;  // the limit so far: least / per
    std::array<Wide, kCount + 1> from, step;
    for (std::size_t k = 0; k <= kCount; ++k) {
      const Wide low = wide_at<Wide>(&around.low->of[k][around.low_at + i]);
      const Wide high = wide_at<Wide>(&around.high->of[k][around.high_at + i]);
      from[k] = low;
      step[k] = high - low;
      const Wide before = wide_at<Wide>(&around.before->of[k][around.before_at + i]);
      const Wide after = wide_at<Wide>(&around.after->of[k][around.after_at + i]);
      const Wide upstream = rises ? low - before : after - high;
      const Wide most = 2.0 * upstream * step[k] + kTiny, over = step[k] * step[k] + kTiny;
      const auto lower = most * per < least * over;
      least = lower ? most : least;
      per = lower ? over : per;
    }
    const Wide leaves = rises ? wide_at<Wide>(&around.low->leaves[around.low_at + i])
                              : wide_at<Wide>(&around.high->leaves[around.high_at + i]);
    const Wide half = 0.5 * larger_of(least / per, none) * (1.0 - leaves);
    const Wide part = rises ? half : 1.0 - half;
    for (std::size_t k = 0; k < kCount; ++k)
      put((through * (from[k] + part * step[k]) + kMagic) - kMagic, &passing[k][i]);
  }
}

HALFDROP_INLINE void find_passing(const Around& around, const double* flux, std::size_t faces,
                                  std::size_t fields, std::array<Row, kMostFields>& passing) {
  static_assert(kMostFields == 6);
  switch (fields) {
    case 1:
      return find_passing_of<1>(around, flux, faces, passing);
    case 2:
      return find_passing_of<2>(around, flux, faces, passing);
    case 3:
      return find_passing_of<3>(around, flux, faces, passing);
    case 4:
      return find_passing_of<4>(around, flux, faces, passing);
    case 5:
      return find_passing_of<5>(around, flux, faces, passing);
    case 6:
      return find_passing_of<6>(around, flux, faces, passing);
    default:
      return;
  }
}

/// After a sweep: what came in through one side less what went out through the other.
HALFDROP_INLINE void add_gain(std::size_t columns, const double* in, const double* out, double* cells) {
  for (std::size_t i = 0; i < columns; i += kWide)
    put(wide_at<Wide>(cells + i) + (wide_at<Wide>(in + i) - wide_at<Wide>(out + i)), cells + i);
}

HALFDROP_WIDER void carry_across(const GridSize& grid, const Fluxes& fluxes, double* volume,
                                 CellFields fields) {
  const std::size_t n = grid.columns;
  Shares shares;
  std::array<Row, kMostFields> passing;
  Row flux{};
  for (std::size_t k = 0; k < fields.size(); ++k) passing[k][n] = 0.0;
  for (std::size_t j = 0; j < grid.rows; ++j) {
    double* const v = volume + j * n;
    const RowFields row(fields, j * n);
    std::copy_n(&fluxes.across[j * n + 1], n - 1, &flux[1]);
    find_shares(n, v, row, &flux[0], &flux[1], shares);
    find_passing({&shares, &shares, &shares, &shares, kPad - 2, kPad - 1, kPad, kPad + 1}, flux.data(), n,
                 row.count, passing);
    for (std::size_t k = 0; k < row.count; ++k) add_gain(n, &passing[k][0], &passing[k][1], row.at[k]);
    add_gain(n, &flux[0], &flux[1], v);
  }
}

HALFDROP_WIDER void carry_up(const GridSize& grid, const Fluxes& fluxes, double* volume, CellFields fields) {
  const std::size_t n = grid.columns, m = grid.rows;
  std::array<Shares, 4> ring;
  std::array<std::array<Row, kMostFields>, 2> passing;
  const Row none{};
  const auto flux_below = [&](std::size_t j)
                              HALFDROP_LAMBDA { return j > 0 && j < m ? &fluxes.up[j * n] : none.data(); };
  const auto load = [&](std::size_t j) HALFDROP_LAMBDA {
    find_shares(n, volume + j * n, RowFields(fields, j * n), flux_below(j), flux_below(j + 1), ring[j % 4]);
  };
  load(0);
  load(1);
  for (std::size_t k = 0; k < fields.size(); ++k) passing[0][k].fill(0.0);
  for (std::size_t j = 1; j <= m; ++j) {  // the face below row j: then row j - 1 is complete
    if (j + 1 < m) load(j + 1);
    const std::size_t lowest = j >= 2 ? j - 2 : 0, here = j < m ? j : j - 1,
                      highest = j + 1 < m ? j + 1 : here;
    find_passing(
        {&ring[lowest % 4], &ring[(j - 1) % 4], &ring[here % 4], &ring[highest % 4], kPad, kPad, kPad, kPad},
        flux_below(j), n, fields.size(), passing[j % 2]);
    const RowFields row(fields, (j - 1) * n);
    for (std::size_t k = 0; k < row.count; ++k)
      add_gain(n, passing[(j + 1) % 2][k].data(), passing[j % 2][k].data(), row.at[k]);
    add_gain(n, flux_below(j - 1), flux_below(j), volume + (j - 1) * n);
  }
}

/// Gauss along a line whose cells exchange with their neighbours.
struct Elimination {
  Elimination(std::span<const double> volume, std::span<const double> exchange)
      : inverse(volume.size()), next(volume.size()) {
    const std::size_t n = volume.size();
    for (std::size_t i = 0; i < n; ++i) {
      const double before = i > 0 ? exchange[i] : 0.0, after = i + 1 < n ? exchange[i + 1] : 0.0;
      const double pivot = volume[i] + before + after - (i > 0 ? before * next[i - 1] : 0.0);
      inverse[i] = 1.0 / pivot;
      next[i] = after * inverse[i];
    }
  }
  std::vector<double> inverse, next;
};

constexpr std::size_t kSide = 2;  ///< groups of kWide rows side by side: one alone would wait for itself
constexpr std::size_t kRows = kSide * kWide;
using Abreast = std::array<Wide, kSide>;

/// Along kRows rows: their shares after the step.
HALFDROP_INLINE void find_spread(const Spread& spread, const Elimination& along,
                                 const std::array<double*, kRows>& row, const Abreast& size, Abreast* share) {
  const std::size_t n = spread.column.size();
  Abreast before{}, per_size;
  for (std::size_t s = 0; s < kSide; ++s) per_size[s] = 1.0 / size[s];
  for (std::size_t i = 0; i < n; ++i) {
    const double from_before = (i > 0 ? spread.exchange[i] : 0.0) * along.inverse[i];
    for (std::size_t s = 0; s < kSide; ++s) {
      double* const* const four = &row[s * kWide];
      const Wide own{four[0][i], four[1][i], four[2][i], four[3][i]};
      before[s] = own * (along.inverse[i] * per_size[s]) + from_before * before[s];
      share[i][s] = before[s];
    }
  }
  for (std::size_t i = n - 1; i > 0; --i)
    for (std::size_t s = 0; s < kSide; ++s) share[i - 1][s] += along.next[i - 1] * share[i][s];
}

HALFDROP_WIDER void spread_rows(const Spread& spread, const Elimination& along, double* field,
                                Abreast* share) {
  const std::size_t n = spread.column.size(), m = spread.row.size();
  for (std::size_t first = 0; first < m; first += kRows) {
    const std::size_t rows = std::min(kRows, m - first);
    std::array<double*, kRows> row{};
    Abreast size{};
    for (std::size_t r = 0; r < kRows; ++r) {  // past the last row, that one again, but not written
      const std::size_t j = first + std::min(r, rows - 1);
      row[r] = field + j * n;
      size[r / kWide][r % kWide] = spread.row[j];
    }
    find_spread(spread, along, row, size, share);
    Abreast in{};
    for (std::size_t i = 0; i < n; ++i) {
      std::array<double, kRows> gain;
      for (std::size_t s = 0; s < kSide; ++s) {
        Wide out{};
        if (i + 1 < n)
          out = (spread.exchange[i + 1] * size[s] * (share[i][s] - share[i + 1][s]) + kMagic) - kMagic;
        put(in[s] - out, &gain[s * kWide]);
        in[s] = out;
      }
      for (std::size_t r = 0; r < rows; ++r) row[r][i] += gain[r];
    }
  }
}

}  // namespace

HALFDROP_WIDER double most_that_leaves(const GridSize& grid, std::span<const double> volume,
                                       const Fluxes& fluxes) {
  const std::size_t n = grid.columns;
  const Row none{};
  Row across{};
  Wide most{}, of = most + 1.0;  // the most so far: most / of
  const auto count = [&](const Wide& leaves, const Wide& volume_there) HALFDROP_LAMBDA {
    const auto more = leaves * of > most * volume_there;
    most = more ? leaves : most;
    of = more ? volume_there : of;
  };
  for (std::size_t j = 0; j < grid.rows; ++j) {
    const double* const up_in = j > 0 ? &fluxes.up[j * n] : none.data();
    const double* const up_out = j + 1 < grid.rows ? &fluxes.up[(j + 1) * n] : none.data();
    std::copy_n(&fluxes.across[j * n + 1], n - 1, &across[1]);
    for (std::size_t i = 0; i < n; i += kWide) {
      const Wide zero{};
      const Wide in = wide_at<Wide>(&across[i]), out = wide_at<Wide>(&across[i + 1]);
      const Wide v = wide_at<Wide>(&volume[j * n + i]);
      const Wide leaves = larger_of(out, zero) + larger_of(-in, zero);
      const Wide leaves_up =
          larger_of(wide_at<Wide>(up_out + i), zero) + larger_of(-wide_at<Wide>(up_in + i), zero);
      count(leaves, v);
      // The second sweep finds the cell as the first has left it: in so many parts, v - (out - in) / parts.
      count(leaves_up + kMostLeaves * larger_of(out - in, zero), v);
    }
  }
  most /= of;
  return larger(larger(most[0], most[1]), larger(most[2], most[3]));
}

void carry(const GridSize& grid, const Fluxes& fluxes, std::span<double> volume, CellFields fields) {
  assert(grid.columns <= kMostColumns && grid.columns % kWide == 0 && grid.rows >= 3 &&
         fields.size() <= kMostFields);
  carry_across(grid, fluxes, volume.data(), fields);
  carry_up(grid, fluxes, volume.data(), fields);
}

void spread_across(const Spread& spread, CellFields fields) {
  const Elimination along(spread.column, spread.exchange);
  std::array<Abreast, kMostColumns> share;
  assert(spread.column.size() <= share.size());
  for (CellField* const field : fields) spread_rows(spread, along, field->data(), share.data());
}

HALFDROP_WIDER static void spread_columns(const Spread& spread, const Elimination& along, double* field,
                                          double* share) {
  const std::size_t n = spread.column.size(), m = spread.row.size();
  std::vector<double> per_size(n);
  for (std::size_t i = 0; i < n; ++i) per_size[i] = 1.0 / spread.column[i];
  const double* const size = spread.column.data();
  const double* const per = per_size.data();
  for (std::size_t i = 0; i < n; ++i) share[i] = field[i] * per[i] * along.inverse[0];
  for (std::size_t j = 1; j < m; ++j) {
    double* const now = share + j * n;
    const double* const from = field + j * n;
    const double exchange = spread.exchange[j], inverse = along.inverse[j];
    for (std::size_t i = 0; i < n; ++i) now[i] = (from[i] * per[i] + exchange * (now - n)[i]) * inverse;
  }
  for (std::size_t j = m - 1; j > 0; --j) {
    const double next = along.next[j - 1];
    double* const low = share + (j - 1) * n;
    for (std::size_t i = 0; i < n; ++i) low[i] += next * (low + n)[i];
  }
  for (std::size_t j = 1; j < m; ++j) {
    double* const low = field + (j - 1) * n;
    const double* const below = share + (j - 1) * n;
    const double exchange = spread.exchange[j];
    for (std::size_t i = 0; i < n; ++i) {
      const double rises = (exchange * size[i] * (below[i] - (below + n)[i]) + kMagic) - kMagic;
      low[i] -= rises;
      (low + n)[i] += rises;
    }
  }
}

void spread_up(const Spread& spread, CellFields fields) {
  const Elimination along(spread.row, spread.exchange);
  thread_local std::vector<double> share;  // memory for the work alone: written before it is read
  share.resize(spread.column.size() * spread.row.size());
  for (CellField* const field : fields) spread_columns(spread, along, field->data(), share.data());
}

Quanta total(const CellField& field) {
  Quanta sum = 0;
  for (const double cell : field) sum += static_cast<Quanta>(cell);
  return sum;
}

}  // namespace halfdrop
