#pragma once
// What the flask's liquid looks like, place by place: each cell's mixed part and its fresh titrant have
// equilibria of their own, and their indicator colours the light that crosses them. A view; never state.
// Carbon dioxide and carbonate that came or went since the liquid was last the same throughout count to the
// liquid that was.

#include <array>
#include <vector>

#include "physics/bench/bench_spec.h"
#include "physics/bench/bench_state.h"
#include "physics/flask/contents.h"
#include "physics/flask/grid.h"

namespace halfdrop {

/// mol/dm3 of each form of an indicator.
using FormAmounts = std::array<float, 4>;
/// Both indicators of a place; the second's are 0 where there is none.
struct TintHere {
  FormAmounts first{}, second{};
};

struct LiquidLook {
  GridSize grid{1, 1};                    ///< of the places looked at, evenly spread over width and height
  std::vector<FormAmounts> forms;         ///< row by row from the bottom
  FormAmounts mean{};                     ///< over all the liquid
  std::vector<FormAmounts> second_forms;  ///< of the second indicator; empty where there is none
  FormAmounts second_mean{};
  [[nodiscard]] TintHere at(std::size_t place) const {
    return {forms[place], second_forms.empty() ? FormAmounts{} : second_forms[place]};
  }
  [[nodiscard]] TintHere all() const { return {mean, second_mean}; }
  [[nodiscard]] bool even() const { return forms.size() == 1; }
};

/// Looks at every `every`-th column and row (1: all of them). One place when the liquid is the same
/// throughout. Precondition: the flask is not empty.
[[nodiscard]] LiquidLook look_at(const BenchSpec& spec, const BenchState& state, std::size_t every);

/// Colour of indicator forms seen through `path_cm` of liquid that holds them, against a backdrop.
[[nodiscard]] Xyz colour_of(const BenchSpec& spec, const FormAmounts& forms, double path_cm,
                            Backdrop backdrop);

/// The same of both indicators together: their absorbances add.
[[nodiscard]] Xyz colour_of(const BenchSpec& spec, const TintHere& tint, double path_cm, Backdrop backdrop);

/// How the light's path through a place compares with that through the mixed flask: chord over mean chord, 0
/// at the walls to 4/pi in the middle. u: from the axis, in radii.
[[nodiscard]] double path_share(double u);

}  // namespace halfdrop
