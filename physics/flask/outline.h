#pragma once

#include <algorithm>

#include "physics/bench/bench_spec.h"

namespace halfdrop {

/// Half as wide as the flask is inside at a height above its foot, cm: a cone, then the neck.
[[nodiscard]] inline double inside_radius_cm(const FlaskSpec& flask, double height_cm) {
  const double share = std::clamp(height_cm / (flask.height_cm - flask.neck_length_cm), 0.0, 1.0);
  return flask.base_radius_cm + (flask.neck_radius_cm - flask.base_radius_cm) * share;
}

}  // namespace halfdrop
