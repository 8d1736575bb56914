#pragma once
// The bench as a picture of a View: far (whole burette), near (tap, jet, flask), what lies about.

#include <vector>

#include "game/scenes/bench_layout.h"
#include "game/scenes/canvas.h"
#include "game/scenes/outfit.h"
#include "game/session/view.h"
#include "physics/flask/tint_table.h"

namespace halfdrop {

struct BenchPicture {
  const View& view;
  const BenchSpec& spec;
  const Outfit& outfit;
  const TintTable& tints;                              ///< of the flask's liquid on what it stands on
  double clock_s = 0.0;                                ///< for cosmetic movement only
  std::string titrant_label, sample_label, indicator;  ///< words on the bottles
  double pipette_let_run_s = 1e9;                      ///< since the pipette was let run; cosmetic
};

/// As it fits a dropper bottle's paper, on two lines where it is long.
[[nodiscard]] std::string short_indicator_name(const std::string& name);
/// For a flask with as much as a twentieth of the indicator's bottle in it, 10 cm deep.
[[nodiscard]] TintTable tints_of(const BenchSpec& spec, Backdrop backdrop);

/// How long the picture of a draining pipette lasts: far shorter than life (15 to 20 s for 25 cm3, ISO 648
/// class AS).
inline constexpr double kPipetteRuns_s = 2.2;

/// The burette's stand in the far picture.
void draw_far_stand(Canvas& canvas, const BenchPicture& picture);
/// The whole burette in its clamps, with liquid, funnel, the bottle while pouring, and the eye beside it.
void draw_far(Canvas& canvas, const BenchPicture& picture);
/// The far picture's lengths as the burette stands: where the clamps hold it, over the bench or its edge.
[[nodiscard]] layout::FarScale far_scale(const BenchPicture& picture);
/// Where the upper clamp holds it there, to be dragged.
[[nodiscard]] Rect far_clamp(const BenchPicture& picture);
/// Where the eye's marker stands in the far picture.
[[nodiscard]] Rect far_eye(const BenchSpec& spec, double eye_mm);

/// What stands along the wall and is not in use.
void draw_things_behind(Canvas& canvas, const BenchPicture& picture);
/// Tube's foot, tap with its handle, jet, hanging drop, drops on their way.
void draw_tap_and_jet(Canvas& canvas, const BenchPicture& picture);
void draw_tap_handle(Canvas& canvas, const BenchPicture& picture);
/// The burette while it is held aslant and turned about; nothing while it stands in its clamps.
void draw_burette_in_hand(Canvas& canvas, const BenchPicture& picture);
/// Flask where it stands, with its liquid.
void draw_flask(Canvas& canvas, const BenchPicture& picture);
/// Wash bottle in the hand while it is squeezed.
void draw_washing(Canvas& canvas, const BenchPicture& picture);
/// Room, shelves and what stands there unused: the same for many frames.
void draw_still_bench(Canvas& canvas, const BenchPicture& picture);
/// Another key, another still bench.
[[nodiscard]] std::vector<int> still_key(const BenchPicture& picture);
/// What lies over it, except the eye's picture and the paper.
void draw_moving_bench(Canvas& canvas, const BenchPicture& picture);

/// The pipette is in the hand: filled, running out, or dipped into the sample.
[[nodiscard]] bool pipette_in_hand(const BenchPicture& picture);
/// Where it is then: over the flask, its tip against the wall of the neck unless it is held free; or, worked
/// by hand, above or in a small beaker.
[[nodiscard]] Rect held_pipette(const BenchPicture& picture);

/// Flask's axis and foot as it stands, or would stand upright while it is swirled.
[[nodiscard]] Point flask_foot(const BenchPicture& picture);

}  // namespace halfdrop
