#pragma once
// A small owned generator (SplitMix64, Steele, Lea and Flood 2014) with separate streams, so that one
// mistake never shifts the draws of another purpose.

#include <cstddef>
#include <cstdint>
#include <vector>

namespace halfdrop {

/// What a stream of random numbers is for. Adding one never changes the others.
enum class Purpose : std::uint64_t {
  unknown = 1,
  burette_glass = 2,
  pipette_glass = 3,
  titrant_strength = 4,
  drill = 5,
  wager = 6,
  worked_example = 16,
  balance = 20,
  weighing_bottle = 21,
  lumps = 22,
  volumetric_glass = 23
};

struct Random {
  std::uint64_t state = 0;

  /// The stream of one attempt's seed, one run (0: the whole attempt) and one purpose.
  static Random stream(std::uint64_t seed, std::uint64_t run, Purpose purpose);
  std::uint64_t next();
  /// Uniform in [0, 1), 53 bits.
  double uniform();
  /// Uniform in [low, high).
  double uniform(double low, double high);
};

/// 0 .. count - 1 in an order drawn from a stream, each alike likely (Fisher and Yates).
[[nodiscard]] std::vector<std::size_t> shuffled(std::size_t count, Random& random);

}  // namespace halfdrop
