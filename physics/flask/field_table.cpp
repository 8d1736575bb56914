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

namespace halfdrop {
namespace {

constexpr std::size_t kIndicator = 2;  // place among the solver's ingredients
constexpr double kLongestPath_cm = 30.0;

/// A place between a node of an axis and the next.
struct Found {
  std::size_t node;
  float part;
};

/// Nodes from 0 to 2: one at 0, then each power of two from 2^-Below on cut into 2^Bits equal parts. The part
/// of a number's own bits that says where it lies is its node.
template <int Below, int Bits>
struct BinaryAxis {
  static constexpr std::size_t kNodes = 2 + (std::size_t{Below + 1} << Bits);
  static constexpr double kFirst = 1.0 / static_cast<double>(std::uint64_t{1} << Below);
  static constexpr int kShift = 52 - Bits;
  static constexpr std::uint64_t kBase = std::bit_cast<std::uint64_t>(kFirst) >> kShift;

  /// 0 <= value < 2
  static Found find(double value) {
    if (value < kFirst) [[unlikely]]
      return {0, static_cast<float>(value * (1.0 / kFirst))};
    return find_above_first(value);
  }
  static Found find_above_first(double value) {
    const std::uint64_t bits = std::bit_cast<std::uint64_t>(value);
    const auto rest = static_cast<std::uint32_t>(bits >> (29 - Bits)) & 0x7fffffU;  // as a float has it
    return {static_cast<std::size_t>((bits >> kShift) - kBase) + 1,
            std::bit_cast<float>(rest | std::bit_cast<std::uint32_t>(1.0F)) - 1.0F};
  }
  static double value_at(std::size_t node) {
    return node == 0 ? 0.0 : std::bit_cast<double>((kBase + node - 1) << kShift);
  }
};

using Distance = BinaryAxis<26, 5>;  ///< from a centre, in titrant's part
using Strength = BinaryAxis<8, 4>;   ///< how much is no water
using Amount = BinaryAxis<10, 3>;    ///< of indicator in the line of sight, of the most
constexpr double kLeastStrength = Strength::kFirst;
constexpr std::size_t kTints = 65;

/// Four numbers that are reckoned with at once; g++ and clang++ both know how.
using Four = float __attribute__((vector_size(16)));
using FourWhole = std::int32_t __attribute__((vector_size(16)));

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

/// `tint` in rows of the table, `amount` as a part of the most.
CellLook painted(const std::array<float, 4>* colours, float tint, double amount, float ph) {
  const int row = static_cast<int>(tint);
  const Found found = Amount::find(std::min(amount, 1.0));
  const float* const corner = colours[static_cast<std::size_t>(row) * Amount::kNodes + found.node].data();
  const float* const next = corner + 4 * Amount::kNodes;
  const Four blend =
      mixed(mixed(four_at(corner), four_at(corner + 4), found.part),
            mixed(four_at(next), four_at(next + 4), found.part), tint - static_cast<float>(row));
  const FourWhole code = __builtin_convertvector(blend + 0.5F, FourWhole);
  return {ph, static_cast<std::uint8_t>(code[0]), static_cast<std::uint8_t>(code[1]),
          static_cast<std::uint8_t>(code[2]), 255};
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
    most_amount_ = indicator_mol_dm3_ * kLongestPath_cm;
    choose_tint(*spec.indicator);
  }
  lay_centres(spec);
  titrants_ = 2 * static_cast<std::size_t>(centres_) * Distance::kNodes;
  nodes_.assign(titrants_ * Strength::kNodes, {std::numeric_limits<float>::quiet_NaN(), 0.0F});
  paint(spec.indicator.value_or(Indicator{}), backdrop);
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

// The share of the coloured form where there is one; else how many protons are off.
void FieldTable::choose_tint(const Indicator& indicator) {
  std::array<bool, 4> coloured{};
  for (const AbsorptionBand& band : indicator.bands) {
    if (band.form >= 0) coloured[static_cast<std::size_t>(band.form)] = true;
  }
  const bool single = std::count(coloured.begin(), coloured.end(), true) == 1;
  for (std::size_t form = 0; form < 4; ++form) {
    if (single)
      tint_of_form_[form] = coloured[form] ? 1.0 : 0.0;
    else
      tint_of_form_[form] = static_cast<double>(form);
  }
  most_tint_ = single ? 1.0 : indicator.system.steps;
  tints_per_tint_ = static_cast<float>((kTints - 1.0001) / most_tint_);
}

std::array<double, 4> FieldTable::forms_of(double tint) const {
  std::array<double, 4> forms{};
  if (tint_of_form_[1] == 1.0 && tint_of_form_[2] == 2.0) {  // protons off
    const auto below = static_cast<std::size_t>(std::min(tint, most_tint_ - 0.5));
    forms[below + 1] = tint - static_cast<double>(below);
    forms[below] = 1.0 - forms[below + 1];
    return forms;
  }
  for (std::size_t form = 0; form < 4; ++form) {
    if (tint_of_form_[form] == 1.0) forms[form] = tint;
  }
  return forms;
}

void FieldTable::paint(const Indicator& indicator, Backdrop backdrop) {
  const Spectrum behind = backdrop == Backdrop::white_tile ? white_tile() : bare_bench();
  const IndicatorSpectra spectra(indicator);
  colours_.reserve(kTints * Amount::kNodes);
  for (std::size_t tint = 0; tint < kTints; ++tint) {
    const auto forms = forms_of(most_tint_ * static_cast<double>(tint) / (kTints - 1));
    for (std::size_t node = 0; node < Amount::kNodes; ++node) {
      const Spectrum absorbance = spectra.absorbance(most_amount_ * Amount::value_at(node), forms);
      const Rgb rgb = to_rgb(seen_through(behind, absorbance));
      const auto code = [](double linear) { return static_cast<float>(exact_code(linear)); };
      colours_.push_back({code(rgb.r), code(rgb.g), code(rgb.b), 255.0F});
    }
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
  double tint = 0.0;
  if (solver_.ingredients() > kIndicator) {
    const FormShares forms = solver_.form_fractions(kIndicator, there);
    for (std::size_t form = 0; form < 4; ++form) tint += forms[form] * tint_of_form_[form];
  }
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

  const Colour* const colours = colours_.data();
  const float tints_per_tint = tints_per_tint_;
  const double per_amount = most_amount_ > 0.0 ? indicator_mol_dm3_ / most_amount_ : 0.0;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    looks[i] = painted(colours, seen[i][kTint] * tints_per_tint,
                       cells[i].flask * cells[i].path_cm * per_amount, seen[i][kPh]);
  }
}

}  // namespace halfdrop
