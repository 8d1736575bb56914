#include "game/scenes/mean_chart.h"

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/scenes/palette.h"
#include "game/scenes/waterfall_chart.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

constexpr int kMostFigures = 7;

FallsReach reach(const MeanTruth& truth, double within_cm3) {
  FallsReach reach{truth.ideal_cm3 - 1.6 * within_cm3, truth.ideal_cm3 + 1.6 * within_cm3};
  for (const double titre : truth.titres_cm3) {
    reach.low = std::min(reach.low, titre - 0.6 * within_cm3);
    reach.high = std::max(reach.high, titre + 0.6 * within_cm3);
  }
  return reach;
}

}  // namespace

void draw_mean_chart(Canvas& canvas, const Rect& at, const MeanTruth& truth, double within_cm3) {
  const FallsReach shown = reach(truth, within_cm3);
  const auto x = [&](double cm3) {
    return at.x + at.w * static_cast<float>((cm3 - shown.low) / (shown.high - shown.low));
  };
  const float axis = at.bottom() - 30, middle = at.y + 70;
  const Rect band{x(truth.ideal_cm3 - within_cm3), at.y + 28, 0, axis - at.y - 28};
  canvas.rect({band.x, band.y, x(truth.ideal_cm3 + within_cm3) - band.x, band.h}, faded(palette::good, 0.16));
  canvas.line({at.x, axis}, {at.right(), axis}, 1.4F, palette::print_soft);
  const double step = axis_step(shown, kMostFigures);
  for (double mark = std::ceil(shown.low / step) * step; mark <= shown.high; mark += step) {
    canvas.line({x(mark), axis}, {x(mark), axis + 6}, 1.2F, palette::print_soft);
    canvas.text(words::fixed(mark, 2), {x(mark), axis + 24},
                {15, palette::print, Face::regular, Align::centre});
  }
  canvas.line({x(truth.ideal_cm3), band.y}, {x(truth.ideal_cm3), axis}, 2.6F, palette::good);
  canvas.text(say("wager.chart.truth"), {x(truth.ideal_cm3), at.y + 18},
              {17, palette::good, Face::bold, Align::centre});
  for (std::size_t i = 0; i < truth.titres_cm3.size(); ++i)  // side by side where they fall on one place
    canvas.circle({x(truth.titres_cm3[i]), middle - 14 + 14 * static_cast<float>(i)}, 6, palette::ink);
  const float mean = x(truth.mean_cm3);
  canvas.polygon({{mean, axis - 1}, {mean - 9, axis - 17}, {mean + 9, axis - 17}}, palette::accent);
  const bool crowded = std::fabs(mean - x(truth.ideal_cm3)) < 60;
  canvas.text(say("wager.chart.mean"), {mean + (crowded && truth.off_cm3() < 0 ? -14.0F : 14.0F), axis - 6},
              {16, palette::accent, Face::bold, crowded && truth.off_cm3() < 0 ? Align::right : Align::left});
}

}  // namespace halfdrop
