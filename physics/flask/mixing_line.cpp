#include "physics/flask/mixing_line.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "physics/flask/contents.h"

namespace halfdrop {

namespace {

/// Shorter pieces are straight: far less than a cell's share is known to.
constexpr double kShortest = 1e-10;

}  // namespace

BothForms both_forms(const BenchSpec& spec, const Equilibrium& there) {
  return {indicator_forms(spec, there),
          spec.then ? indicator_forms(spec, there, Solute::second_indicator) : FormShares{}};
}

MixingLine::MixingLine(const BenchSpec& spec, const Solutes& from, const Solutes& into)
    : spec_(spec), from_(from), into_(into), indicators_(spec.then ? 2 : 1) {
  places_ = {solve(0.0, nullptr), solve(1.0, nullptr)};
  pieces_ = {Piece{0.0, 1.0, 0, 1}};
}

double MixingLine::worst(const BothForms& one, const BothForms& other) const {
  double off = 0.0;
  for (std::size_t k = 0; k < indicators_; ++k) {
    for (std::size_t i = 0; i < one[k].size(); ++i) off = std::max(off, std::fabs(one[k][i] - other[k][i]));
  }
  return off;
}

BothForms MixingLine::between(const BothForms& low, const BothForms& high, double part) const {
  BothForms forms{};
  for (std::size_t k = 0; k < indicators_; ++k) {
    for (std::size_t i = 0; i < forms[k].size(); ++i)
      forms[k][i] = low[k][i] + part * (high[k][i] - low[k][i]);
  }
  return forms;
}

MixingLine::Place MixingLine::solve(double share, const Equilibrium* near) const {
  Solutes mixture{};
  for (std::size_t i = 0; i < mixture.size(); ++i) mixture[i] = (1.0 - share) * from_[i] + share * into_[i];
  const Solver& solver = spec_.settled.as_it_stands;
  const auto mixed = std::span<const double>(mixture).first(solver.ingredients());
  const Equilibrium there = near != nullptr ? solver.solve(mixed, *near) : solver.solve(mixed);
  return {there, both_forms(spec_, there)};
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

BothForms MixingLine::at(double share) {
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
