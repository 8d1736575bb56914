#pragma once
// A difference told step by step: from one figure to another, each cause hanging where the one before it
// ended.

#include <optional>
#include <string>
#include <vector>

#include "game/marking/result_split.h"
#include "game/marking/titre_breakdown.h"

namespace halfdrop {

/// Where on its way the titrant was when a cause acted: the identity's own order (DEVELOPERS.md), so that
/// what stands between two stages is a real amount (equivalents in the flask, volume out of the tip, what was
/// seen).
enum class Stage : std::uint8_t { flask, burette, eye, paper };
[[nodiscard]] Stage stage_of(Cause cause);

struct WaterfallStep {
  std::string name;
  double from = 0.0, to = 0.0;
  Stage stage = Stage::paper;
  std::optional<Cause> cause;  ///< nothing for what is no cause of the titre, and for several together
  std::size_t merged = 0;      ///< how many causes, where smaller ones stand together

  [[nodiscard]] double size() const { return to - from; }
};

/// Steps follow each other without a gap: the first begins at `start`, the last ends at `end`.
struct Waterfall {
  double start = 0.0, end = 0.0;
  std::vector<WaterfallStep> steps;
};

inline constexpr double kSmallCause_cm3 = 0.005;  ///< a tenth of a drop
inline constexpr double kSmallPart_percent = 0.02;

/// From the ideal titre to the recorded one, from the flask to the paper (cm3). Causes below `small_cm3`
/// stand together at the end, with the remainder.
[[nodiscard]] Waterfall titre_waterfall(const TitreBreakdown& breakdown, double small_cm3 = kSmallCause_cm3);

/// From the true result (0) to the reported one, in 100 ln: per cent that add up.
[[nodiscard]] Waterfall result_waterfall(const ResultSplit& split, double small_percent = kSmallPart_percent);

}  // namespace halfdrop
