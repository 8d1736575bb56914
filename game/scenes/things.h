#pragma once
// What lies on the bench and can be taken hold of: where it is, what can be done with it now, and by which
// key.

#include <optional>
#include <string>
#include <vector>

#include "game/scenes/bench_picture.h"
#include "game/session/apparatus.h"
#include "physics/bench/deeds.h"

namespace halfdrop {

enum class Grip {
  none,
  tap,
  flask,
  far_eye,
  eye_rail,
  card,
  pour,
  wash,
  burette,
  clamp,
  filler,
  tip,
  let_in
};

struct Thing {
  std::string name;  ///< one word, for driving by mouse and for tests
  Rect rect;
  std::string says;                ///< one line; keys stand in [brackets]
  std::optional<Deed> deed;        ///< on a click
  std::optional<Deed> other_deed;  ///< on a click with the right button
  Grip grip = Grip::none;          ///< while the left button is held
  /// Takes this bottle up and pours from it while held: with the left button where the grip is to pour, else
  /// with the right.
  std::optional<Deed> pours = {};
};

/// What comes next with a pipette that is worked by hand: dip, lift, lean on the flask, lift away.
[[nodiscard]] Deed next_of_pipette(const PipetteView& pipette);
/// How far its filler is worked by a hand there, gently or not: draws up, lets down, lets run.
[[nodiscard]] double filler_strength(const PipetteView& pipette, bool gently);
/// The pipette is rinsed with the water in hand, else with the sample.
[[nodiscard]] Deed pipette_rinse(const View& view);
/// Things as they lie now, nearest to the viewer first.
[[nodiscard]] std::vector<Thing> things(const BenchPicture& picture);
/// Which piece of apparatus a thing is; nothing for bottles, eye, clothes and so on.
[[nodiscard]] std::optional<Piece> piece_of(const Thing& thing);
/// The one under a point.
[[nodiscard]] const Thing* thing_at(const std::vector<Thing>& all, Point point);

}  // namespace halfdrop
