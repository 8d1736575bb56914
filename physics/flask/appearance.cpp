#include "physics/flask/appearance.h"

#include <algorithm>
#include <cmath>
#include <optional>

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
          at_least_none(Component::indicator), at_least_none(Component::carbonate)};
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
        indicator_(solutes_of(flask_.indicator)) {
    if (!flask_.even() && flask_.of(Source::water).empty() && flask_.of(Source::indicator).empty())
      line_.emplace(spec, rest_, titrant_);
  }

  /// Share of the cell that a source takes up.
  FormAmounts at(std::size_t cell, double volume) {
    const auto share = [&](Source source) {
      const CellField& field = flask_.of(source);
      return field.empty() ? 0.0 : field[cell] / volume;
    };
    const double fresh = share(Source::fresh), meeting = share(Source::meeting),
                 titrant = share(Source::titrant), water = share(Source::water),
                 indicator = share(Source::indicator);
    const double mixed = std::max(1.0 - fresh - meeting, 1e-9);
    if (line_) return on_the_line(fresh, meeting, titrant / mixed);
    Solutes around{};
    add_to(around, std::max(mixed - titrant - water - indicator, 0.0) / mixed, rest_);
    add_to(around, titrant / mixed, titrant_);
    add_to(around, indicator / mixed, indicator_);
    FormAmounts forms{};
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
  FormAmounts on_the_line(double fresh, double meeting, double around) {
    FormAmounts forms{};
    const std::array<double, kZones> zones = zones_of(fresh, meeting), pure{fresh, meeting, 0.0};
    for (std::size_t kind = 0; kind < kZones; ++kind) {
      if (zones[kind] < kSeen) continue;
      const double own = std::min(pure[kind] / zones[kind], 1.0), share = own + (1.0 - own) * around;
      const FormShares there = line_->at(share);
      const double indicator = (1.0 - share) * rest_[kIndicator] + share * titrant_[kIndicator];
      for (std::size_t form = 0; form < forms.size(); ++form)
        forms[form] += static_cast<float>(zones[kind] * indicator * there[form]);
    }
    return forms;
  }

  /// A mixture that was solved, to begin the next of its zone from.
  struct Solved {
    Solutes mixture{-1.0, -1.0, -1.0, -1.0};
    std::optional<Equilibrium> there;
    FormShares forms{};
  };

  void add_zone(FormAmounts& forms, std::size_t kind, double zone, double titrant, const Solutes& around) {
    if (zone < kSeen) return;
    Solutes mixture{};
    const double pure = std::min(titrant / zone, 1.0);
    add_to(mixture, 1.0 - pure, around);
    add_to(mixture, pure, titrant_);
    Solved& solved = solved_[kind];
    if (!same(mixture, solved.mixture)) solve(mixture, solved);
    for (std::size_t form = 0; form < forms.size(); ++form)
      forms[form] += static_cast<float>(zone * mixture[kIndicator] * solved.forms[form]);
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
    solved.there = solved.there ? solver.solve(mixture, *solved.there) : solver.solve(mixture);
    solved.forms = indicator_forms(spec_, *solved.there);
    solved.mixture = mixture;
  }

  static constexpr auto kIndicator = static_cast<std::size_t>(Solute::indicator);
  const BenchSpec& spec_;
  const FlaskLiquid& flask_;
  Solutes rest_, titrant_, indicator_;
  std::array<Solved, kZones> solved_;
  std::optional<MixingLine> line_;
};

}  // namespace

LiquidLook look_at(const BenchSpec& spec, const BenchState& state, std::size_t every) {
  LiquidLook look;
  Looker looker(spec, state);
  const Quanta laid_out = state.flask.laid_out;
  if (laid_out == 0) {
    look.forms.push_back(looker.at(0, 1.0));
    look.mean = look.forms.front();
    return look;
  }
  const GridSize grid{spec.flask.columns(), spec.flask.rows()};
  const std::vector<double> volume = cell_quanta(spec, laid_out);
  look.grid = {grid.columns / every, grid.rows / every};
  look.forms.reserve(look.grid.cells());
  std::array<double, 4> sum{};
  double all = 0.0;
  for (std::size_t j = 0; j < look.grid.rows; ++j) {
    for (std::size_t i = 0; i < look.grid.columns; ++i) {
      const std::size_t cell = (j * every + every / 2) * grid.columns + i * every + every / 2;
      look.forms.push_back(looker.at(cell, volume[cell]));
      for (std::size_t form = 0; form < sum.size(); ++form)
        sum[form] += volume[cell] * static_cast<double>(look.forms.back()[form]);
      all += volume[cell];
    }
  }
  for (std::size_t form = 0; form < sum.size(); ++form) look.mean[form] = static_cast<float>(sum[form] / all);
  return look;
}

Xyz colour_of(const BenchSpec& spec, const FormAmounts& forms, double path_cm, Backdrop backdrop) {
  FormShares shares{};
  double amount = 0.0;
  for (const float form : forms) amount += static_cast<double>(form);
  for (std::size_t form = 0; form < forms.size(); ++form)
    shares[form] = amount > 0.0 ? static_cast<double>(forms[form]) / amount : 0.0;
  const Spectrum behind = backdrop == Backdrop::white_tile ? white_tile() : bare_bench();
  return seen_through(behind, spec.settled.spectra.absorbance(amount * path_cm, shares));
}

double path_share(double u) { return 4.0 / kPi * half_chord(u); }

}  // namespace halfdrop
