#include "physics/flask/field_table.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cassert>
#include <cmath>
#include <cstring>
#include <limits>

#include "physics/chemistry/equivalence.h"
#include "physics/elementary.h"
#include "physics/flask/binary_axis.h"

namespace halfdrop {
namespace {

constexpr std::size_t kIndicator = 2;  // place among the solver's ingredients
constexpr double kLongestPath_cm = 30.0;

using Distance = BinaryAxis<26, 5>;  ///< from a centre, in titrant's part
using Strength = BinaryAxis<8, 4>;   ///< how much is no water
constexpr double kLeastStrength = Strength::kFirst;

/// Four numbers that are reckoned with at once; g++ and clang++ both know how.
using Four = float __attribute__((vector_size(16)));

Four four_at(const float* from) {
  Four four;
  std::memcpy(&four, from, sizeof four);
  return four;
}
Four mixed(const Four& from, const Four& to, float part) { return from + part * (to - from); }

using Pair = std::array<float, 2>;
constexpr std::size_t kPh = 0, kTint = 1;

/// Two nodes of each of two rows.
Pair between(const Pair* near, const Pair* far, float along, float across) {
  const Four row = mixed(four_at(near->data()), four_at(far->data()), across);
  return {row[0] + along * (row[2] - row[0]), row[1] + along * (row[3] - row[1])};
}

/// Where the table is finest, and the borders between them.
struct Centres {
  const double* centre;
  const double* border;
  std::size_t count;
};

/// Side by side: below and above each centre.
Found along(const Centres& centres, double part) {
  const auto past_border = [&](std::size_t i) -> std::size_t { return part > centres.border[i] ? 1 : 0; };
  std::size_t centre = 0;
  for (std::size_t i = 0; i + 1 < centres.count; i += 4)  // borders that are not there are never passed
    centre += (past_border(i) + past_border(i + 1)) + (past_border(i + 2) + past_border(i + 3));
  const double past = part - centres.centre[centre];
  const Found found = Distance::find(std::abs(past));
  const std::size_t side = 2 * centre + (past < 0.0 ? 0U : 1U);
  return {side * Distance::kNodes + found.node, found.part};
}

constexpr std::size_t kAtOnce = 64;

/// The first of the four nodes around a cell, and where the cell lies between them.
struct Corner {
  std::uint32_t node;
  float along, across;
};

Corner corner_of(const CellMix& cell, const Centres& centres, std::size_t titrants) {
  const double whole = cell.burette + cell.flask;
  const Found strength = Strength::find_above_first(std::max(whole, kLeastStrength));
  const Found titrant = along(centres, cell.burette / std::max(whole, kLeastStrength * 1e-3));
  return {static_cast<std::uint32_t>(strength.node * titrants + titrant.node), titrant.part, strength.part};
}

/// Moles of titrant that take the indicator from how it comes to each form that titrant makes of it.
std::vector<double> steps_of_indicator(const Indicator& indicator, const Substance& titrant) {
  std::vector<double> steps = equivalence_ratios(substance_of(indicator), titrant);
  steps.insert(steps.begin(), 0.0);
  return steps;
}

}  // namespace

FieldTable::FieldTable(const TitrationSpec& spec, Backdrop backdrop) : solver_(spec.solver) {
  solver_.add(spec.flask);
  solver_.add(spec.burette);
  const double drops_cm3 = spec.indicator ? spec.drops * spec.drop_cm3 : 0.0;
  const double share = spec.aliquot_cm3 / (spec.aliquot_cm3 + drops_cm3);
  flask_mol_dm3_ = spec.flask_mol_dm3 * share;
  burette_mol_dm3_ = spec.burette_mol_dm3;
  if (spec.indicator) {
    solver_.add(substance_of(*spec.indicator));
    indicator_mol_dm3_ = spec.indicator->stock_mol_dm3 * (1.0 - share);
  }
  lay_centres(spec);
  titrants_ = 2 * static_cast<std::size_t>(centres_) * Distance::kNodes;
  nodes_.assign(titrants_ * Strength::kNodes, {std::numeric_limits<float>::quiet_NaN(), 0.0F});
  tints_.emplace(spec.indicator.value_or(Indicator{}), indicator_mol_dm3_ * kLongestPath_cm, backdrop);
}

// Besides the equivalences, those with the indicator's own protons and both ends, where a curve bends too.
void FieldTable::lay_centres(const TitrationSpec& spec) {
  std::vector<double> parts{0.0, 1.0};
  std::vector<double> more{0.0};
  if (spec.indicator) more = steps_of_indicator(*spec.indicator, spec.burette);
  for (const double ratio : equivalence_ratios(spec.flask, spec.burette)) {
    for (const double step : more) {
      const double titrant =
          (ratio * flask_mol_dm3_ + step * indicator_mol_dm3_) / burette_mol_dm3_;  // for each of the flask's
      parts.push_back(titrant / (1.0 + titrant));
    }
  }
  std::sort(parts.begin(), parts.end());
  parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
  centres_ = static_cast<int>(std::min<std::size_t>(parts.size(), kMostCentres));
  border_.fill(2.0);
  for (std::size_t i = 0; i < static_cast<std::size_t>(centres_); ++i) {
    centre_[i] = parts[i];
    if (i > 0) border_[i - 1] = 0.5 * (parts[i - 1] + parts[i]);
  }
}

double FieldTable::titrant_at(std::size_t node) const {
  const std::size_t side = node / Distance::kNodes;
  const double distance = Distance::value_at(node % Distance::kNodes);
  return std::clamp(centre_[side / 2] + (side % 2 == 0 ? -distance : distance), 0.0, 1.0);
}

FieldTable::Node FieldTable::solved(std::size_t titrant_node, std::size_t strength_node) const {
  const double titrant = titrant_at(titrant_node);
  const double strength = std::max(Strength::value_at(strength_node), kLeastStrength);
  const double flask = (1.0 - titrant) * strength;
  const std::array<double, 3> mol_dm3{flask * flask_mol_dm3_, titrant * strength * burette_mol_dm3_,
                                      flask * indicator_mol_dm3_};
  const Equilibrium there = solver_.solve(std::span(mol_dm3).first(solver_.ingredients()));
  const bool tinted = solver_.ingredients() > kIndicator;
  const double tint = tinted ? tints_->tint_of(solver_.form_fractions(kIndicator, there)) : 0.0;
  return {static_cast<float>(there.ph), static_cast<float>(tint)};
}

void FieldTable::fill(std::size_t corner) {
  for (const std::size_t place : {corner, corner + 1, corner + titrants_, corner + titrants_ + 1}) {
    Node& node = nodes_[place];
    if (std::isnan(node[kPh])) node = solved(place % titrants_, place / titrants_);
  }
}

// In three passes over a few cells at a time: in each of them a cell waits for nothing but its own short sum,
// so that the processor works on several at once.
void FieldTable::look(std::span<const CellMix> cells, std::span<CellLook> looks) {
  assert(cells.size() == looks.size());
  for (std::size_t first = 0; first < cells.size(); first += kAtOnce) {
    const std::size_t count = std::min(kAtOnce, cells.size() - first);
    look_at_few(cells.subspan(first, count), looks.subspan(first, count));
  }
}

void FieldTable::look_at_few(std::span<const CellMix> cells, std::span<CellLook> looks) {
  std::array<Corner, kAtOnce> corners;
  const Centres centres{centre_.data(), border_.data(), static_cast<std::size_t>(centres_)};
  const std::size_t titrants = titrants_;
  for (std::size_t i = 0; i < cells.size(); ++i) corners[i] = corner_of(cells[i], centres, titrants);

  std::array<Pair, kAtOnce> seen;
  const Node* const nodes = nodes_.data();
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const Corner& at = corners[i];
    const Node* const near = nodes + at.node;
    seen[i] = between(near, near + titrants, at.along, at.across);
    if (!std::isnan(seen[i][kPh])) continue;
    fill(at.node);
    seen[i] = between(near, near + titrants, at.along, at.across);
  }

  for (std::size_t i = 0; i < cells.size(); ++i) {
    const Code code = tints_->code(static_cast<double>(seen[i][kTint]),
                                   cells[i].flask * cells[i].path_cm * indicator_mol_dm3_);
    looks[i] = {seen[i][kPh], code.r, code.g, code.b, 255};
  }
}

}  // namespace halfdrop
