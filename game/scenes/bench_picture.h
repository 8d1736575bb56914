#pragma once
// The bench as a picture of a View: far (whole burette), near (tap, jet, flask), what lies about.

#include "game/scenes/canvas.h"
#include "game/session/view.h"

namespace halfdrop {

struct BenchPicture {
  const View& view;
  const BenchSpec& spec;
  double clock_s = 0.0;                                ///< for cosmetic movement only
  std::string titrant_label, sample_label, indicator;  ///< words on the bottles
};

/// The whole burette on its stand, with liquid, funnel, the bottle while pouring, and the eye beside it.
void draw_far(Canvas& canvas, const BenchPicture& picture);
/// Where the eye's marker stands in the far picture.
[[nodiscard]] Rect far_eye(const BenchSpec& spec, double eye_mm);

/// What stands along the wall and is not in use.
void draw_things_behind(Canvas& canvas, const BenchPicture& picture);
/// Tube's foot, tap with its handle, jet, hanging drop, drops on their way.
void draw_tap_and_jet(Canvas& canvas, const BenchPicture& picture);
void draw_tap_handle(Canvas& canvas, const BenchPicture& picture);
/// Flask where it stands, with its liquid.
void draw_flask(Canvas& canvas, const BenchPicture& picture);
/// Wash bottle in the hand while it is squeezed.
void draw_washing(Canvas& canvas, const BenchPicture& picture);
/// All of it in order, except the eye's picture and the paper.
void draw_bench(Canvas& canvas, const BenchPicture& picture);

/// Flask's axis and foot now, swirling included.
[[nodiscard]] Point flask_foot(const BenchPicture& picture);

}  // namespace halfdrop
