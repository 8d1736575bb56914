#pragma once
// The drill of pieces as trained hands do it: each is pointed at, and put to its use.

#include "game/demonstrator/moves.h"

namespace halfdrop {

/// Precondition: the level is such a drill.
void know_pieces(AtBench& bench, const Habits& habits);

}  // namespace halfdrop
