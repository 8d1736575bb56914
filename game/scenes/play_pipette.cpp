// Keys and clicks of a pipette that is worked by hand.

#include "game/scenes/play_scene.h"

namespace halfdrop {

/// What comes next with the pipette; `other` takes its tip off the flask's wall, or puts it there.
void PlayScene::move_pipette(bool other) {
  const PipetteView& pipette = view_.pipette;
  if (other)
    return act(pipette.place == PipettePlace::over_flask ? Deed::lean_pipette : Deed::hold_pipette_free);
  if (session_.hands().valve != 0.0) {
    HandsChange shut;
    shut.valve = 0.0;
    move_hands(shut);
  }
  act(next_of_pipette(pipette));
}

/// Over the flask the valve stays as it is put: half a minute is long to hold a key.
bool PlayScene::runs_by_itself() const {
  return view_.pipette.place == PipettePlace::at_wall || view_.pipette.place == PipettePlace::over_flask;
}

void PlayScene::work_filler(bool gently) {
  if (!runs_by_itself()) return take(Grasp::filler, filler_strength(view_.pipette, gently));
  HandsChange change;
  change.valve = session_.hands().valve > 0.0 ? 0.0 : filler_strength(view_.pipette, gently);
  move_hands(change);
}

}  // namespace halfdrop
