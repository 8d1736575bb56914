#pragma once
// Wet glass made ready before it measures: burette with titrant, pipette with the sample.

#include "game/demonstrator/habits.h"
#include "game/demonstrator/moves.h"

namespace halfdrop {

/// Twice with a little of the bottle that the habit takes, held aslant and turned about, let out through the
/// jet. Afterwards the tap is shut, the beaker under the jet, the funnel out and the titrant in hand.
void rinse_burette(AtBench& bench, Moves& moves, const Habits& habits);
/// Where the pipette stands wet and the habit is to rinse it.
void rinse_pipette(AtBench& bench, const Habits& habits);
/// Opens the tap until the tube has run empty, and waits for the jet.
void run_out(AtBench& bench);

}  // namespace halfdrop
