#include "physics/random.h"

#include <utility>

namespace halfdrop {
namespace {

// The output function of SplitMix64: a bijection in which every input bit reaches every output bit.
std::uint64_t mixed(std::uint64_t z) {
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9;
  z = (z ^ (z >> 27)) * 0x94d049bb133111eb;
  return z ^ (z >> 31);
}

constexpr std::uint64_t kGoldenGamma = 0x9e3779b97f4a7c15;

}  // namespace

Random Random::stream(std::uint64_t seed, std::uint64_t run, Purpose purpose) {
  const std::uint64_t of_seed = mixed(seed + kGoldenGamma);
  const std::uint64_t of_run = mixed(of_seed ^ mixed(run + 2 * kGoldenGamma));
  return {mixed(of_run ^ mixed(static_cast<std::uint64_t>(purpose) + 3 * kGoldenGamma))};
}

std::uint64_t Random::next() {
  state += kGoldenGamma;
  return mixed(state);
}

double Random::uniform() { return static_cast<double>(next() >> 11) * 0x1p-53; }

double Random::uniform(double low, double high) {
  const double value = low + (high - low) * uniform();
  return value < high ? value : low;
}

std::vector<std::size_t> shuffled(std::size_t count, Random& random) {
  std::vector<std::size_t> order(count);
  for (std::size_t i = 0; i < count; ++i) order[i] = i;
  for (std::size_t i = count; i > 1; --i)
    std::swap(order[i - 1], order[static_cast<std::size_t>(random.uniform() * static_cast<double>(i))]);
  return order;
}

}  // namespace halfdrop
