#include "physics/chemistry/equivalence.h"

#include <algorithm>
#include <cmath>

namespace halfdrop {
namespace {

constexpr double kPkOfStrongAcid = -2.0;  // below any acid that water leaves whole
constexpr double kPkOfWater = 15.7;       // of H2O as an acid, counted at 55 mol/dm3 (textbook)
constexpr double kSettledByPk = 0.5;

/// The protons of one mole of a substance, those that come off most easily first. Position p: p of them are
/// off; below 0 free H+ goes with it, above the last one free OH-.
class ProtonLadder {
 public:
  explicit ProtonLadder(const Substance& substance) {
    double charge = substance.strong_charge();
    for (const AcidSystem& system : substance.systems) {
      charge += system.count * system.protonated_charge;
      for (int copy = 0; copy < static_cast<int>(std::lround(system.count)); ++copy)
        pks_.insert(pks_.end(), system.pk.begin(), system.pk.begin() + system.steps);
    }
    start_ = static_cast<int>(std::lround(charge));
    std::sort(pks_.begin(), pks_.end());
  }

  [[nodiscard]] int start() const { return start_; }
  [[nodiscard]] int last() const { return static_cast<int>(pks_.size()); }
  [[nodiscard]] bool holds(int position) const { return position >= 0 && position <= last(); }
  /// pK of the acid that gives off the next proton.
  [[nodiscard]] double acid_pk(int position) const { return pk_of(position + 1); }
  /// pK of the acid that this position's base turns into.
  [[nodiscard]] double base_pk(int position) const { return pk_of(position); }

 private:
  [[nodiscard]] double pk_of(int proton) const {
    if (proton <= 0) return kPkOfStrongAcid;
    return proton > last() ? kPkOfWater : pks_[static_cast<std::size_t>(proton - 1)];
  }

  std::vector<double> pks_;
  int start_ = 0;
};

bool settled(const ProtonLadder& one, int at_one, const ProtonLadder& other, int at_other) {
  const double strongest_acid = std::min(one.acid_pk(at_one), other.acid_pk(at_other));
  const double strongest_base = std::max(one.base_pk(at_one), other.base_pk(at_other));
  return strongest_acid > strongest_base + kSettledByPk;
}

/// Where `giver` has given `given` protons a molecule and `taker` has taken `taken`.
void collect(const ProtonLadder& giver, const ProtonLadder& taker, bool analyte_gives,
             std::vector<double>& ratios) {
  for (int given = 1; giver.start() + given <= giver.last(); ++given) {
    for (int taken = 1; taker.start() - taken >= 0; ++taken) {
      const int at_giver = giver.start() + given, at_taker = taker.start() - taken;
      if (!giver.holds(at_giver) || !taker.holds(at_taker)) continue;
      if (!settled(giver, at_giver, taker, at_taker)) continue;
      ratios.push_back(analyte_gives ? 1.0 * given / taken : 1.0 * taken / given);
    }
  }
}

}  // namespace

std::vector<double> equivalence_ratios(const Substance& analyte, const Substance& titrant) {
  const ProtonLadder flask(analyte), burette(titrant);
  std::vector<double> ratios;
  collect(flask, burette, true, ratios);
  collect(burette, flask, false, ratios);
  std::sort(ratios.begin(), ratios.end());
  ratios.erase(std::unique(ratios.begin(), ratios.end()), ratios.end());
  return ratios;
}

}  // namespace halfdrop
