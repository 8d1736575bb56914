#pragma once
// What the bench does for a drill: it stands ready, and pictures of a meniscus are turned over. Liquid moves
// by the ledger as ever; what a picture has too much goes back into the bottle it came from. Leaves out the
// film that a meniscus would lay on its way: pictures are turned over, no burette is run.

namespace halfdrop {

struct BenchSpec;
struct BenchState;

/// Fills the burette, clears the jet and shows the first picture, as far as the drill says. Nothing in an
/// exercise.
void lay_out_drill(const BenchSpec& spec, BenchState& state);

[[nodiscard]] bool has_further_picture(const BenchSpec& spec, const BenchState& state);
/// Precondition: there is a further one. Moves meniscus, eye and card to where it has them.
void turn_picture(const BenchSpec& spec, BenchState& state);

}  // namespace halfdrop
