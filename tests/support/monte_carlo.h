#pragma once
// Propagation of distributions by drawing (JCGM 101:2008): an independent way to a budget's uncertainty, with
// no slopes in it.

#include <cmath>
#include <numbers>
#include <span>
#include <vector>

#include "game/marking/uncertainty_budget.h"
#include "physics/random.h"

namespace halfdrop::test {

/// One value of a quantity, drawn from its own distribution.
inline double draw(const Quantity& quantity, Random& random) {
  if (quantity.shape == Shape::rectangular) {
    return quantity.value + quantity.standard * std::sqrt(3.0) * random.uniform(-1.0, 1.0);
  }
  if (quantity.shape == Shape::triangular) {
    const double half = 0.5 * quantity.standard * std::sqrt(6.0);
    const double one = random.uniform(-half, half);
    return quantity.value + one + random.uniform(-half, half);
  }
  const double radius = std::sqrt(-2.0 * std::log(1.0 - random.uniform()));  // Box and Muller
  return quantity.value + quantity.standard * radius * std::cos(2.0 * std::numbers::pi * random.uniform());
}

struct Drawn {
  double mean = 0.0, sd = 0.0;
  double mean_error = 0.0, sd_error = 0.0;  ///< standard errors; that of sd from the fourth moment
  double inside = 0.0;                      ///< share within the budget's value ± expanded
};

inline Drawn monte_carlo(const std::vector<Quantity>& inputs, const MeasurementFunction& result,
                         const UncertaintyBudget& budget, std::uint64_t seed, int draws = 200'000) {
  Random random{seed};
  std::vector<double> at(inputs.size());
  double first = 0.0, second = 0.0, third = 0.0, fourth = 0.0, inside = 0.0;
  for (int n = 0; n < draws; ++n) {
    for (std::size_t i = 0; i < inputs.size(); ++i) at[i] = draw(inputs[i], random);
    const double off = result(at) - budget.value;
    first += off / draws;
    second += off * off / draws;
    third += off * off * off / draws;
    fourth += off * off * off * off / draws;
    if (std::fabs(off) <= budget.expanded) inside += 1.0 / draws;
  }
  const double variance = second - first * first;
  const double central =
      fourth - 4.0 * first * third + 6.0 * first * first * second - 3.0 * std::pow(first, 4);
  Drawn drawn{budget.value + first, std::sqrt(variance), std::sqrt(variance / draws), 0.0, inside};
  drawn.sd_error = std::sqrt((central - variance * variance) / draws) / (2.0 * drawn.sd);
  return drawn;
}

}  // namespace halfdrop::test

/// Four standard errors: a right budget fails once in some ten thousand seeds. k = 2 covers "approximately 95
/// %" (JCGM 100:2008, 6.3.3).
#define CHECK_DRAWN_LIKE(drawn, budget)                                 \
  do {                                                                  \
    CHECK_NEAR((drawn).mean, (budget).value, 4.0 * (drawn).mean_error); \
    CHECK_NEAR((drawn).sd, (budget).standard, 4.0 * (drawn).sd_error);  \
    CHECK_NEAR((drawn).inside, 0.95, 0.02);                             \
  } while (false)
