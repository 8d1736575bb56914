#include "physics/flask/appearance.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <span>

#include "physics/flask/engulfment.h"
#include "physics/flask/liquid.h"
#include "physics/flask/mixing_line.h"
#include "physics/flask/stirring.h"

namespace halfdrop {

namespace {

Solutes solutes_of(const Parcel& parcel) {
  if (parcel.volume <= 0) return {};
  const auto at_least_none = [&](Component component) { return std::max(mol_dm3(parcel, component), 0.0); };
  return {at_least_none(Component::titrant), at_least_none(Component::analyte),
          at_least_none(Component::indicator), at_least_none(Component::carbonate),
          at_least_none(Component::second_indicator)};
}

void add_to(Solutes& sum, double share, const Solutes& more) {
  for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += share * more[i];
}

/// Where titrant is all that came in, all mixtures are of two liquids; otherwise solves one mixture after
/// another, each from the one before.
class Looker {
 public:
  Looker(const BenchSpec& spec, const BenchState& state)
      : spec_(spec),
        flask_(state.flask),
        rest_(solutes_of(rest_of(state))),
        titrant_(solutes_of(flask_.titrant)),
        indicator_(solutes_of(flask_.indicator)),
        second_(solutes_of(flask_.second_indicator)),
        indicators_(spec.then ? 2 : 1) {
    if (!flask_.even() && flask_.of(Source::water).empty() && flask_.of(Source::indicator).empty() &&
        flask_.of(Source::second_indicator).empty())
      line_.emplace(spec, rest_, titrant_);
  }

  /// Share of the cell that a source takes up.
  TintHere at(std::size_t cell, double volume) {
    const auto share = [&](Source source) {
      const CellField& field = flask_.of(source);
      return field.empty() ? 0.0 : field[cell] / volume;
    };
    const double fresh = share(Source::fresh), meeting = share(Source::meeting),
                 titrant = share(Source::titrant), water = share(Source::water),
                 indicator = share(Source::indicator), second = share(Source::second_indicator);
    const double mixed = std::max(1.0 - fresh - meeting, 1e-9);
    if (line_) return on_the_line(fresh, meeting, titrant / mixed);
    Solutes around{};
    add_to(around, std::max(mixed - titrant - water - indicator - second, 0.0) / mixed, rest_);
    add_to(around, titrant / mixed, titrant_);
    add_to(around, indicator / mixed, indicator_);
    if (second > 0.0) add_to(around, second / mixed, second_);
    TintHere forms;
    const std::array<double, kZones> zones = zones_of(fresh, meeting);
    add_zone(forms, 0, zones[0], fresh, around);
    add_zone(forms, 1, zones[1], meeting, around);
    add_zone(forms, 2, zones[2], 0.0, around);
    return forms;
  }

 private:
  static constexpr double kSeen = 1e-3;  ///< a zone that takes up less of its cell is not looked at
  static constexpr std::size_t kZones = 3;

  /// Zones take their surroundings in; what is left of the cell is mixed.
  static std::array<double, kZones> zones_of(double fresh, double meeting) {
    const double fresh_zone = std::min(kFreshDilution * fresh, 1.0);
    const double meeting_zone = std::min(kMeetingDilution * meeting, 1.0 - fresh_zone);
    return {fresh_zone, meeting_zone, 1.0 - fresh_zone - meeting_zone};
  }

  /// `around`: titrant's share of what is around the zones.
  TintHere on_the_line(double fresh, double meeting, double around) {
    TintHere forms;
    const std::array<double, kZones> zones = zones_of(fresh, meeting), pure{fresh, meeting, 0.0};
    for (std::size_t kind = 0; kind < kZones; ++kind) {
      if (zones[kind] < kSeen) continue;
      const double own = std::min(pure[kind] / zones[kind], 1.0), share = own + (1.0 - own) * around;
      const BothForms there = line_->at(share);
      const auto indicator = [&](std::size_t one) {
        return (1.0 - share) * rest_[one] + share * titrant_[one];
      };
      add_forms(forms, zones[kind], indicator(kIndicator), indicator(kSecond), there);
    }
    return forms;
  }

  /// A mixture that was solved, to begin the next of its zone from.
  struct Solved {
    Solutes mixture{-1.0, -1.0, -1.0, -1.0, -1.0};
    std::optional<Equilibrium> there;
    BothForms forms{};
  };

  /// So many mol/dm3 of both indicators in a zone, by their forms.
  void add_forms(TintHere& tint, double zone, double first, double second, const BothForms& there) const {
    for (std::size_t form = 0; form < tint.first.size(); ++form)
      tint.first[form] += static_cast<float>(zone * first * there[0][form]);
    if (indicators_ < 2) return;
    for (std::size_t form = 0; form < tint.second.size(); ++form)
      tint.second[form] += static_cast<float>(zone * second * there[1][form]);
  }

  void add_zone(TintHere& forms, std::size_t kind, double zone, double titrant, const Solutes& around) {
    if (zone < kSeen) return;
    Solutes mixture{};
    const double pure = std::min(titrant / zone, 1.0);
    add_to(mixture, 1.0 - pure, around);
    add_to(mixture, pure, titrant_);
    Solved& solved = solved_[kind];
    if (!same(mixture, solved.mixture)) solve(mixture, solved);
    add_forms(forms, zone, mixture[kIndicator], mixture[kSecond], solved.forms);
  }

  /// To a part in 10^9 of the strongest: far below what is seen.
  static bool same(const Solutes& one, const Solutes& other) {
    double most = 0.0, off = 0.0;
    for (std::size_t i = 0; i < one.size(); ++i) {
      most = std::max(most, one[i]);
      off = std::max(off, std::fabs(one[i] - other[i]));
    }
    return off <= 1e-9 * most;
  }

  void solve(const Solutes& mixture, Solved& solved) {
    const Solver& solver = spec_.settled.as_it_stands;
    const auto mixed = std::span<const double>(mixture).first(solver.ingredients());
    solved.there = solved.there ? solver.solve(mixed, *solved.there) : solver.solve(mixed);
    solved.forms = both_forms(spec_, *solved.there);
    solved.mixture = mixture;
  }

  static constexpr auto kIndicator = static_cast<std::size_t>(Solute::indicator),
                        kSecond = static_cast<std::size_t>(Solute::second_indicator);
  const BenchSpec& spec_;
  const FlaskLiquid& flask_;
  Solutes rest_, titrant_, indicator_, second_;
  std::size_t indicators_;
  std::array<Solved, kZones> solved_;
  std::optional<MixingLine> line_;
};

}  // namespace

namespace {

/// One place after another, and the mean of them weighted by their liquid.
class Gathered {
 public:
  Gathered(LiquidLook& look, bool both) : look_(look), both_(both) {
    look_.forms.reserve(look_.grid.cells());
    if (both_) look_.second_forms.reserve(look_.grid.cells());
  }
  void add(const TintHere& tint, double volume) {
    look_.forms.push_back(tint.first);
    weigh(tint.first, volume, sum_);
    all_ += volume;
    if (!both_) return;
    look_.second_forms.push_back(tint.second);
    weigh(tint.second, volume, second_sum_);
  }
  void finish() {
    for (std::size_t form = 0; form < sum_.size(); ++form) {
      look_.mean[form] = static_cast<float>(sum_[form] / all_);
      if (both_) look_.second_mean[form] = static_cast<float>(second_sum_[form] / all_);
    }
  }

 private:
  static void weigh(const FormAmounts& forms, double volume, std::array<double, 4>& sum) {
    for (std::size_t form = 0; form < sum.size(); ++form)
      sum[form] += volume * static_cast<double>(forms[form]);
  }
  LiquidLook& look_;
  bool both_;
  std::array<double, 4> sum_{}, second_sum_{};
  double all_ = 0.0;
};

FormShares shares_of(const FormAmounts& forms, double& amount) {
  FormShares shares{};
  for (const float form : forms) amount += static_cast<double>(form);
  for (std::size_t form = 0; form < forms.size(); ++form)
    shares[form] = amount > 0.0 ? static_cast<double>(forms[form]) / amount : 0.0;
  return shares;
}

}  // namespace

LiquidLook look_at(const BenchSpec& spec, const BenchState& state, std::size_t every) {
  LiquidLook look;
  Looker looker(spec, state);
  const Quanta laid_out = state.flask.laid_out;
  const bool both = spec.then.has_value();
  if (laid_out == 0) {
    const TintHere tint = looker.at(0, 1.0);
    look.forms.push_back(look.mean = tint.first);
    if (both) look.second_forms.push_back(look.second_mean = tint.second);
    return look;
  }
  const GridSize grid{spec.flask.columns(), spec.flask.rows()};
  const std::vector<double> volume = cell_quanta(spec, laid_out);
  look.grid = {grid.columns / every, grid.rows / every};
  Gathered gathered(look, both);
  for (std::size_t j = 0; j < look.grid.rows; ++j) {
    for (std::size_t i = 0; i < look.grid.columns; ++i) {
      const std::size_t cell = (j * every + every / 2) * grid.columns + i * every + every / 2;
      gathered.add(looker.at(cell, volume[cell]), volume[cell]);
    }
  }
  gathered.finish();
  return look;
}

Xyz colour_of(const BenchSpec& spec, const FormAmounts& forms, double path_cm, Backdrop backdrop) {
  return colour_of(spec, TintHere{forms, {}}, path_cm, backdrop);
}

Xyz colour_of(const BenchSpec& spec, const TintHere& tint, double path_cm, Backdrop backdrop) {
  double amount = 0.0, second_amount = 0.0;
  const FormShares shares = shares_of(tint.first, amount), second = shares_of(tint.second, second_amount);
  Spectrum absorbance = spec.settled.spectra.absorbance(amount * path_cm, shares);
  if (second_amount > 0.0) {
    const Spectrum more = spec.settled.second_spectra.absorbance(second_amount * path_cm, second);
    for (std::size_t i = 0; i < absorbance.size(); ++i) absorbance[i] += more[i];
  }
  return seen_through(backdrop == Backdrop::white_tile ? white_tile() : bare_bench(), absorbance);
}

double path_share(double u) { return 4.0 / kPi * half_chord(u); }

}  // namespace halfdrop
