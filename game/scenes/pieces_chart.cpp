// Chart of "know your apparatus": each piece, and what was taken for it.

#include "game/level/say.h"
#include "game/scenes/chart_pen.h"
#include "game/scenes/page_pen.h"

namespace halfdrop {

float draw_pieces(Canvas& canvas, Point top_left, float width, const DrillCharts& charts) {
  const auto& pieces = std::get<KnowingDrill>(charts.drill).pieces;
  const ChartWords sizes = chart_words(charts.large);
  const float row = sizes.normal * 1.6F;
  const float height = 20 + sizes.heading * 1.25F + row * static_cast<float>(pieces.size()) + 16;
  const Rect in = draw_chart_card(canvas, {top_left.x, top_left.y, width, height}, say("drill.knowing.chart"),
                                  charts.large);
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const PieceAsked& asked = pieces[i];
    const float y = in.y + row * (static_cast<float>(i) + 0.5F);
    draw_tick_or_cross(canvas, {in.x + 9, y}, 8, asked.first_try());
    canvas.text_middle(std::string(piece_label(asked.piece)), {in.x + 28, y},
                       {sizes.normal, palette::print, Face::semibold});
    canvas.text_middle(found_words(asked), {in.x + 28 + sizes.normal * 8.0F, y},
                       {sizes.normal, palette::print, Face::regular});
    canvas.text_middle(
        use_words(asked), {in.right(), y},
        {sizes.normal, asked.used ? palette::good : palette::bad, Face::regular, Align::right});
  }
  canvas.flush();
  return height;
}

}  // namespace halfdrop
