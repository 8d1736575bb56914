#include "physics/random.h"

#include <doctest/doctest.h>

#include <array>
#include <bit>
#include <cmath>
#include <set>

#include "tests/support/near.h"

using halfdrop::Purpose;
using halfdrop::Random;

// Source: The first outputs published with the generator's reference code for seed 1234567 (from memory).
TEST_CASE("the generator gives SplitMix64's published numbers") {
  Random random{1234567};
  CHECK(random.next() == 6457827717110365317u);
  CHECK(random.next() == 3203168211198807973u);
  CHECK(random.next() == 9817491932198370423u);
}

TEST_CASE("streams of other seeds, runs and purposes share no start") {
  std::set<std::uint64_t> states;
  std::size_t streams = 0;
  for (std::uint64_t seed = 0; seed < 200; ++seed) {
    for (std::uint64_t run = 0; run < 8; ++run) {
      for (const Purpose purpose :
           {Purpose::unknown, Purpose::burette_glass, Purpose::pipette_glass, Purpose::titrant_strength}) {
        states.insert(Random::stream(seed, run, purpose).state);
        ++streams;
      }
    }
  }
  CHECK(states.size() == streams);
}

TEST_CASE("neighbouring streams differ in half their bits, as unrelated numbers do") {
  double flipped = 0.0;
  int pairs = 0;
  for (std::uint64_t seed = 0; seed < 2000; ++seed) {
    const std::uint64_t one = Random::stream(seed, 1, Purpose::unknown).next();
    flipped += std::popcount(one ^ Random::stream(seed + 1, 1, Purpose::unknown).next());
    flipped += std::popcount(one ^ Random::stream(seed, 2, Purpose::unknown).next());
    flipped += std::popcount(one ^ Random::stream(seed, 1, Purpose::burette_glass).next());
    pairs += 3;
  }
  // 6000 pairs of 64 fair bits: standard deviation of the mean 4 / sqrt(6000) = 0.05 bits.
  CHECK_NEAR(flipped / pairs, 32.0, 0.3);
}

TEST_CASE("a stream is a function of its three names alone") {
  Random one = Random::stream(42, 3, Purpose::unknown);
  Random again = Random::stream(42, 3, Purpose::unknown);
  for (int i = 0; i < 10; ++i) CHECK(one.next() == again.next());
}

TEST_CASE("uniform numbers fill 0 to 1 evenly and never reach 1") {
  Random random = Random::stream(7, 0, Purpose::unknown);
  constexpr int kDraws = 100000;
  std::array<int, 10> tenths{};
  double sum = 0.0;
  bool inside = true;
  for (int i = 0; i < kDraws; ++i) {
    const double u = random.uniform();
    inside = inside && u >= 0.0 && u < 1.0;
    sum += u;
    ++tenths[static_cast<std::size_t>(u * 10.0)];
  }
  CHECK(inside);
  CHECK_NEAR(sum / kDraws, 0.5, 0.004);  // four standard deviations of the mean
  for (const int count : tenths) CHECK_NEAR(count, kDraws / 10.0, 400.0);
}

TEST_CASE("a range keeps its upper end out, however narrow it is") {
  Random random{5};
  const double low = 1.0;
  const double high = std::nextafter(1.0, 2.0);
  bool inside = true;
  for (int i = 0; i < 1000; ++i) {
    const double value = random.uniform(low, high);
    inside = inside && value >= low && value < high;
  }
  CHECK(inside);
}

TEST_CASE("a shuffle holds every number once, and each is as likely to come first") {
  std::array<int, 3> firsts{};
  Random random = Random::stream(1, 0, Purpose::drill);
  constexpr int kTimes = 6000;
  for (int i = 0; i < kTimes; ++i) {
    const std::vector<std::size_t> order = halfdrop::shuffled(3, random);
    CHECK(std::set(order.begin(), order.end()).size() == 3);
    ++firsts[order.front()];
  }
  // A third of 6000 within four standard deviations of a binomial, 36.5.
  for (const int count : firsts) CHECK_NEAR(count, kTimes / 3.0, 146.0);
}
