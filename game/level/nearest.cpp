#include "game/level/nearest.h"

#include <algorithm>
#include <vector>

namespace halfdrop {
namespace {

constexpr std::size_t kLongestWord = 80;
constexpr std::size_t kMostLettersOff = 2;

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before_last, last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, changed});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        row[j] = std::min(row[j], before_last[j - 2] + 1);
    }
    before_last = last;
    last = row;
  }
  return last[b.size()];
}

std::string_view nearest(std::string_view word, std::span<const std::string_view> known) {
  if (word.size() > kLongestWord) return {};
  std::string_view best;
  std::size_t best_distance = std::clamp<std::size_t>(word.size() / 3, 1, kMostLettersOff) + 1;
  for (const std::string_view name : known) {
    const std::size_t distance = edit_distance(word, name);
    if (distance >= best_distance) continue;
    best_distance = distance;
    best = name;
  }
  return best;
}

std::string did_you_mean(std::string_view word, std::span<const std::string_view> known) {
  const std::string_view name = nearest(word, known);
  return name.empty() ? std::string() : "; did you mean \"" + std::string(name) + "\"?";
}

}  // namespace halfdrop
