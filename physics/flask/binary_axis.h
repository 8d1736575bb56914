#pragma once
// An axis of a table whose nodes lie closer the nearer they are to 0.

#include <bit>
#include <cstddef>
#include <cstdint>

namespace halfdrop {

/// A place between a node of an axis and the next.
struct Found {
  std::size_t node;
  float part;
};

/// Nodes from 0 to 2: one at 0, then each power of two from 2^-Below on cut into 2^Bits equal parts. The part
/// of a number's own bits that says where it lies is its node.
template <int Below, int Bits>
struct BinaryAxis {
  static constexpr std::size_t kNodes = 2 + (std::size_t{Below + 1} << Bits);
  static constexpr double kFirst = 1.0 / static_cast<double>(std::uint64_t{1} << Below);
  static constexpr int kShift = 52 - Bits;
  static constexpr std::uint64_t kBase = std::bit_cast<std::uint64_t>(kFirst) >> kShift;

  /// 0 <= value < 2
  static Found find(double value) {
    if (value < kFirst) [[unlikely]]
      return {0, static_cast<float>(value * (1.0 / kFirst))};
    return find_above_first(value);
  }
  static Found find_above_first(double value) {
    const std::uint64_t bits = std::bit_cast<std::uint64_t>(value);
    const auto rest = static_cast<std::uint32_t>(bits >> (29 - Bits)) & 0x7fffffU;  // as a float has it
    return {static_cast<std::size_t>((bits >> kShift) - kBase) + 1,
            std::bit_cast<float>(rest | std::bit_cast<std::uint32_t>(1.0F)) - 1.0F};
  }
  static double value_at(std::size_t node) {
    return node == 0 ? 0.0 : std::bit_cast<double>((kBase + node - 1) << kShift);
  }
};

}  // namespace halfdrop
