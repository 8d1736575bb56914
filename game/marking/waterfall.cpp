#include "game/marking/waterfall.h"

#include <array>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/cause_titles.h"

namespace halfdrop {

namespace {

/// Hangs one step below the other; what is small is kept for the end.
class Hanging {
 public:
  Hanging(double start, double small) : small_(small), at_(start) { falls_.start = start; }

  void add(std::string name, double size, std::optional<Cause> cause) {
    if (std::fabs(size) < small_) {
      if (size != 0.0) ++merged_;
      return;
    }
    const Stage stage = cause ? stage_of(*cause) : Stage::paper;
    falls_.steps.push_back({std::move(name), at_, at_ + size, stage, cause, 0});
    at_ += size;
  }

  /// The smaller ones together lead to the end.
  Waterfall finish(double end) {
    falls_.end = end;
    if (merged_ > 0) {
      falls_.steps.push_back({merged_ == 1 ? say("part.one_smaller") : say("part.smaller"), at_, end,
                              Stage::paper, std::nullopt, merged_});
    } else if (!falls_.steps.empty()) {
      falls_.steps.back().to = end;
    }
    return falls_;
  }

 private:
  Waterfall falls_;
  double small_, at_;
  std::size_t merged_ = 0;
};

}  // namespace

Stage stage_of(Cause cause) {
  if (cause >= Cause::titrant_strength) return Stage::flask;
  if (cause >= Cause::burette_scale) return Stage::burette;
  return cause >= Cause::parallax_initial ? Stage::eye : Stage::paper;
}

Waterfall titre_waterfall(const TitreBreakdown& breakdown, double small_cm3) {
  Hanging hanging(breakdown.ideal_cm3, small_cm3);
  for (std::size_t i = kCauses; i-- > 0;) {
    const auto cause = static_cast<Cause>(i);
    hanging.add(std::string(cause_title(cause, breakdown.of(cause))), breakdown.of(cause), cause);
  }
  return hanging.finish(breakdown.recorded_cm3);
}

Waterfall result_waterfall(const ResultSplit& split, double small_percent) {
  Hanging hanging(0.0, small_percent);
  for (const ResultPart& part : split.parts) {
    hanging.add(part.name, part.percent, part.cause);
  }
  return hanging.finish(split.percent);
}

}  // namespace halfdrop
