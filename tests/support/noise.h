#pragma once
// Damage to texts, by our own generator: the same on every machine.

#include <string>

#include "physics/random.h"

namespace halfdrop::test {

inline std::size_t below(Random& random, std::size_t end) {
  return end == 0 ? 0 : static_cast<std::size_t>(random.next() % end);
}

/// Flips a bit, cuts the end off, doubles a piece, drops a piece or puts JSON's own characters in: one to
/// four times.
inline std::string damaged(std::string text, Random& random) {
  static const std::string kMarks = "{}[],:\"\\0-9eE.\n\tnulltruefalse";
  const std::size_t times = 1 + below(random, 4);
  for (std::size_t i = 0; i < times; ++i) {
    const std::size_t at = below(random, text.size());
    const std::size_t length = 1 + below(random, 40);
    switch (below(random, 5)) {
      case 0:
        if (!text.empty()) text[at] = static_cast<char>(text[at] ^ (1 << below(random, 8)));
        break;
      case 1:
        text.resize(at);
        break;
      case 2:
        text.insert(at, text.substr(at, length));
        break;
      case 3:
        text.erase(at, length);
        break;
      default:
        text.insert(at, 1, kMarks[below(random, kMarks.size())]);
        break;
    }
  }
  return text;
}

}  // namespace halfdrop::test
