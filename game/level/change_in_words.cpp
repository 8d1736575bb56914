#include "game/level/change_in_words.h"

#include <array>
#include <charconv>
#include <cmath>

namespace halfdrop {
namespace {

std::string gradual_in_words(const VisibleChange& change) {
  return "gradual: from " + where(change.first_cm3) + " to " + where(change.last_cm3);
}

std::string why_unfit(const VisibleChange& change) {
  if (change.fit != Fit::no_jump) return endpoint_in_words(change);
  return "the pH hardly jumps at the equivalence that its endpoint, at " + where(change.endpoint_cm3()) +
         ", is nearest to, " + where(change.nearest.volume_cm3);
}

}  // namespace

std::string where(double volume_cm3) {
  std::array<char, 64> text{};
  // Adding 0 takes the sign off a zero.
  const double rounded_cm3 = std::round(volume_cm3 * 100.0) / 100.0 + 0.0;
  const auto result =
      std::to_chars(text.data(), text.data() + text.size(), rounded_cm3, std::chars_format::fixed, 2);
  return std::string(text.data(), result.ptr) + " cm3";
}

std::string endpoint_in_words(const VisibleChange& change) {
  const double away_cm3 = change.endpoint_cm3() - change.nearest.volume_cm3;
  return "its endpoint shows at " + where(change.endpoint_cm3()) + ", " + where(std::abs(away_cm3)) +
         (away_cm3 < 0.0 ? " before" : " past") + " the nearest equivalence, at " +
         where(change.nearest.volume_cm3) +
         (change.gradual() ? "; the change is " + gradual_in_words(change) : std::string());
}

std::string warning_about(const Titration& titration, const std::vector<VisibleChange>& changes) {
  const std::string& indicator = titration.spec().indicator->name;
  if (titration.equivalences().empty())
    return indicator + " does not fit this titration: there is no equivalence that it could show";
  if (changes.empty()) return indicator + " does not fit this titration: it shows no change";
  const VisibleChange& change = best_of(changes);
  if (change.fit != Fit::fits)
    return indicator + " does not fit this titration within 1 %: " + why_unfit(change);
  if (!change.gradual()) return {};
  return "the change of " + indicator + " is " + gradual_in_words(change) + ", its endpoint at " +
         where(change.endpoint_cm3());
}

}  // namespace halfdrop
