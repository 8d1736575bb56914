#pragma once
// The tube with its scale and liquid, as the eye sees it.

#include "game/scenes/canvas.h"
#include "game/scenes/eye_scene.h"

namespace halfdrop {

/// A piece of the plane of the scale on the screen.
struct EyePane {
  Canvas& canvas;
  const EyeScene& scene;
  Rect inner;
  double per_mm;     ///< design units
  double middle_mm;  ///< height of its middle

  [[nodiscard]] float x(double x_mm) const { return inner.centre().x + static_cast<float>(x_mm * per_mm); }
  [[nodiscard]] float y(double y_mm) const {
    return inner.centre().y - static_cast<float>((y_mm - middle_mm) * per_mm);
  }
  [[nodiscard]] Point at(const PointOnScale& p) const { return {x(p.x_mm), y(p.y_mm)}; }
  [[nodiscard]] Points at(const std::vector<PointOnScale>& points) const;
  [[nodiscard]] float units(double mm) const { return static_cast<float>(mm * per_mm); }
  [[nodiscard]] double mm_at(float y_units) const {
    return middle_mm + static_cast<double>(inner.centre().y - y_units) / per_mm;
  }
  [[nodiscard]] double top_mm() const { return mm_at(inner.y); }
  [[nodiscard]] double bottom_mm() const { return mm_at(inner.bottom()); }
};

/// Room and card beside the tube, the tube and all that shows in it.
void draw_eye_tube(const EyePane& pane);

}  // namespace halfdrop
