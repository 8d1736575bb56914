#pragma once
// What stands on the bench in a level, and where the eye's picture is: an exercise has everything, a drill
// what it needs.

#include "game/level/level.h"
#include "game/scenes/paint.h"

namespace halfdrop {

struct Outfit {
  bool titration = true;          ///< flask, tile, pipette, sample, indicator, wash bottle, sink
  bool pouring = true;            ///< bottle of titrant, funnel
  bool liquid = true;             ///< tap, beaker, cloth, coat and goggles: otherwise one only reads
  bool pieces = false;            ///< the pieces alone, to be known: without bottles of anything but water
  bool beaker_takes_it = false;   ///< what is delivered; otherwise the beaker is for waste
  bool pipette_by_hand = false;   ///< worked with its filler
  bool second_indicator = false;  ///< for a second endpoint of the same flask
  bool makes_up = false;          ///< a standard is weighed out and made up
  Rect eye;                       ///< the eye's picture with its rail

  /// Flask, tile, pipette, wash bottle, burette in clamps that move.
  [[nodiscard]] bool glass() const { return titration || pieces; }
  [[nodiscard]] bool funnel() const { return pouring || pieces; }
};

[[nodiscard]] Outfit outfit_of(const Level& level);

}  // namespace halfdrop
