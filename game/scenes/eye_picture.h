#pragma once
// The framed picture of what the eye sees at the meniscus, with the rail that carries the eye to its right.

#include "game/level/level.h"
#include "game/scenes/canvas.h"
#include "game/session/view.h"

namespace halfdrop {

class EyePicture {
 public:
  static void draw(Canvas& canvas, const Rect& area, const View& view, const BenchSpec& spec);

  /// Where the picture itself stands within the area.
  [[nodiscard]] static Rect frame(const Rect& area);
  /// Where the rail can be grabbed.
  [[nodiscard]] static Rect rail(const Rect& area);
  /// Height of the eye on the rail, design units, and back (mm above the zero mark, within the hand's range).
  /// Heights along the rail are over the burette's zero mark, wherever the clamps hold that.
  [[nodiscard]] static float rail_y(const Rect& area, double eye_mm);
  [[nodiscard]] static double eye_mm_at(const Rect& area, float y);
  /// Where eye and card can be grabbed on the rail.
  [[nodiscard]] static Rect eye_handle(const Rect& area, double eye_mm);
  [[nodiscard]] static Rect card_handle(const Rect& area, double card_mm);
  /// Design units for a mm at the meniscus.
  [[nodiscard]] static double units_per_mm(const Rect& area, const BenchSpec& spec);
};

}  // namespace halfdrop
