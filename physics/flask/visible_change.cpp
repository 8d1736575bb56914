#include "physics/flask/visible_change.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <optional>

namespace halfdrop {
namespace {

/// A form of the indicator with this share of it shows its own colour (our own choice).
constexpr double kAllButPure = 0.9;

/// Where a condition that is false at `low` and true at `high` begins to hold, to the last digit or so.
template <class Holds>
double beginning_cm3(double low, double high, Holds holds) {
  constexpr int kHalvings = 50;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (low + high);
    (holds(middle) ? high : low) = middle;
  }
  return 0.5 * (low + high);
}

/// The titrant with which a form between the first and the last is at its purest, if it gets pure anywhere.
std::optional<double> purest_cm3(const Titration& titration, int form, double far_cm3) {
  const auto beyond = [&](double v) { return titration.indicator_protons_lost(v) > form; };
  const bool at_first = beyond(0.0), at_last = beyond(far_cm3);
  if (at_first == at_last) return std::nullopt;
  const double volume_cm3 = beginning_cm3(0.0, far_cm3, [&](double v) { return beyond(v) == at_last; });
  if (titration.indicator_share(volume_cm3, form) < kAllButPure) return std::nullopt;
  return volume_cm3;
}

/// Titrant, cm3, of every lasting colour, ascending.
std::vector<double> lasting_colours(const Titration& titration) {
  const double far_cm3 = 2.0 * titration.equivalences().back().volume_cm3;
  std::vector<double> titrant_cm3{0.0, far_cm3};
  for (int form = 1; form < titration.spec().indicator->system.steps; ++form)
    if (const auto volume_cm3 = purest_cm3(titration, form, far_cm3)) titrant_cm3.push_back(*volume_cm3);
  std::sort(titrant_cm3.begin(), titrant_cm3.end());
  return titrant_cm3;
}

class Eye {
 public:
  Eye(const Titration& titration, const Viewing& viewing) : titration_(titration), viewing_(viewing) {}

  /// How far the flask is, in CIEDE2000, from its colour with the titrant of `lasting_cm3` in it.
  [[nodiscard]] double off(double lasting_cm3, double volume_cm3) const {
    return ciede2000(seen(volume_cm3, volume_cm3), seen(volume_cm3, lasting_cm3));
  }
  [[nodiscard]] bool colourless(double volume_cm3) const {
    const Spectrum behind = viewing_.backdrop == Backdrop::white_tile ? white_tile() : bare_bench();
    const Lab bare = to_lab(seen_by(viewing_.vision, seen_through(behind, Spectrum{})));
    const Lab flask = seen(volume_cm3, volume_cm3);
    const double a = flask.a - bare.a, b = flask.b - bare.b;
    return std::sqrt(a * a + b * b) < kColourless;
  }

 private:
  [[nodiscard]] Lab seen(double volume_cm3, double titrant_cm3) const {
    const Xyz light =
        titration_.colour(volume_cm3, titration_.solve(volume_cm3, titrant_cm3), viewing_.backdrop);
    return to_lab(seen_by(viewing_.vision, light));
  }

  const Titration& titration_;
  Viewing viewing_;
};

Turn turn_between(const Eye& eye, double before_cm3, double after_cm3) {
  const bool colourless_before = eye.colourless(before_cm3), colourless_after = eye.colourless(after_cm3);
  if (colourless_before == colourless_after) return Turn::changes_colour;
  return colourless_before ? Turn::gains_colour : Turn::loses_colour;
}

std::vector<Sight> endpoints_of(Turn turn) {
  switch (turn) {
    case Turn::gains_colour:
      return {Sight::first};
    case Turn::loses_colour:
      return {Sight::last};
    case Turn::changes_colour:
      break;
  }
  return {Sight::middle, Sight::first, Sight::last};
}

double seen_at(const VisibleChange& change, Sight sight) {
  return sight == Sight::first  ? change.first_cm3
         : sight == Sight::last ? change.last_cm3
                                : change.middle_cm3;
}

void choose_endpoint(VisibleChange& change, const std::vector<Equivalence>& equivalences) {
  double least = -1.0;
  for (const Sight sight : endpoints_of(change.turn)) {
    for (const Equivalence& at : equivalences) {
      const double away = std::abs(at.volume_cm3 - seen_at(change, sight));
      if (least >= 0.0 && away >= least) continue;
      least = away;
      change.endpoint = sight;
      change.nearest = at;
    }
  }
}

Fit fit_of(const VisibleChange& change) {
  const double volume_cm3 = change.nearest.volume_cm3;
  if (std::abs(change.endpoint_cm3() - volume_cm3) > kUnfitFromShare * volume_cm3) return Fit::too_far;
  return change.nearest.jump_ph < kLeastJump ? Fit::no_jump : Fit::fits;
}

VisibleChange change_between(const Eye& eye, double before_cm3, double after_cm3) {
  const auto begins = [&](auto holds) { return beginning_cm3(before_cm3, after_cm3, holds); };
  const auto off_before = [&](double v) { return eye.off(before_cm3, v); };
  const auto off_after = [&](double v) { return eye.off(after_cm3, v); };
  VisibleChange change;
  change.first_cm3 = begins([&](double v) { return off_before(v) >= kFirstVisibleChange; });
  change.middle_cm3 = begins([&](double v) { return off_before(v) >= off_after(v); });
  change.last_cm3 = begins([&](double v) { return off_after(v) < kFirstVisibleChange; });
  change.turn = turn_between(eye, before_cm3, after_cm3);
  return change;
}

}  // namespace

double VisibleChange::endpoint_cm3() const { return seen_at(*this, endpoint); }

bool VisibleChange::gradual() const { return last_cm3 - first_cm3 > kGradualShare * nearest.volume_cm3; }

std::vector<VisibleChange> visible_changes(const Titration& titration, const Viewing& viewing) {
  std::vector<VisibleChange> changes;
  if (!titration.spec().indicator || titration.equivalences().empty()) return changes;
  const Eye eye(titration, viewing);
  const std::vector<double> lasting = lasting_colours(titration);
  double before_cm3 = lasting.front();
  for (std::size_t i = 1; i < lasting.size(); ++i) {
    if (eye.off(before_cm3, lasting[i]) < kFirstVisibleChange) continue;
    changes.push_back(change_between(eye, before_cm3, lasting[i]));
    choose_endpoint(changes.back(), titration.equivalences());
    changes.back().fit = fit_of(changes.back());
    before_cm3 = lasting[i];
  }
  return changes;
}

const VisibleChange& best_of(const std::vector<VisibleChange>& changes) {
  assert(!changes.empty());
  const auto unfitness = [](const VisibleChange& change) {
    if (change.fit == Fit::fits) return 0.0;
    return std::abs(change.endpoint_cm3() - change.nearest.volume_cm3) + 1e-12;
  };
  return *std::min_element(changes.begin(), changes.end(),
                           [&](const auto& a, const auto& b) { return unfitness(a) < unfitness(b); });
}

}  // namespace halfdrop
