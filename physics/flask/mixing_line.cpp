#include "physics/flask/mixing_line.h"

#include <algorithm>
#include <cmath>

#include "physics/flask/contents.h"

namespace halfdrop {

namespace {

/// Shorter pieces are straight: far less than a cell's share is known to.
constexpr double kShortest = 1e-10;

double worst(const FormShares& one, const FormShares& other) {
  double off = 0.0;
  for (std::size_t i = 0; i < one.size(); ++i) off = std::max(off, std::fabs(one[i] - other[i]));
  return off;
}

FormShares between(const FormShares& low, const FormShares& high, double part) {
  FormShares forms{};
  for (std::size_t i = 0; i < forms.size(); ++i) forms[i] = low[i] + part * (high[i] - low[i]);
  return forms;
}

}  // namespace

MixingLine::MixingLine(const BenchSpec& spec, const Solutes& from, const Solutes& into)
    : spec_(spec), from_(from), into_(into) {
  places_ = {solve(0.0, nullptr), solve(1.0, nullptr)};
  pieces_ = {Piece{0.0, 1.0, 0, 1}};
}

MixingLine::Place MixingLine::solve(double share, const Equilibrium* near) const {
  Solutes mixture{};
  for (std::size_t i = 0; i < mixture.size(); ++i) mixture[i] = (1.0 - share) * from_[i] + share * into_[i];
  const Solver& solver = spec_.settled.as_it_stands;
  const Equilibrium there = near != nullptr ? solver.solve(mixture, *near) : solver.solve(mixture);
  return {there, indicator_forms(spec_, there)};
}

void MixingLine::halve(std::size_t piece) {
  const Piece whole = pieces_[piece];
  const Place low = places_[whole.low_place], high = places_[whole.high_place];
  const double middle = 0.5 * (whole.low + whole.high);
  const Place half = solve(middle, &low.there);
  const bool straight = whole.high - whole.low < kShortest ||
                        (std::fabs(high.there.ph - low.there.ph) <= kStep_ph &&
                         worst(half.forms, between(low.forms, high.forms, 0.5)) <= kFormsOff);
  const std::size_t place = places_.size();
  places_.push_back(half);
  pieces_[piece].lower_half = pieces_.size();
  pieces_.push_back({whole.low, middle, whole.low_place, place, 0, straight});
  pieces_.push_back({middle, whole.high, place, whole.high_place, 0, straight});
}

FormShares MixingLine::at(double share) {
  share = std::clamp(share, 0.0, 1.0);
  std::size_t at = last_;
  if (share < pieces_[at].low || share > pieces_[at].high) at = 0;
  while (!pieces_[at].straight) {
    if (pieces_[at].lower_half == 0) halve(at);
    const std::size_t lower = pieces_[at].lower_half;
    at = share <= pieces_[lower].high ? lower : lower + 1;
  }
  last_ = at;
  const Piece& piece = pieces_[at];
  return between(places_[piece.low_place].forms, places_[piece.high_place].forms,
                 (share - piece.low) / (piece.high - piece.low));
}

}  // namespace halfdrop
