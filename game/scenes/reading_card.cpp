// The card of "read the meniscus": which picture it is, the figure being written, how many are done.

#include "game/level/say.h"
#include "game/scenes/bench_layout.h"
#include "game/scenes/drill_card.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

constexpr int kDotsInRow = 10;

std::string method_words(double to_cm3) {
  return to_cm3 < 0.02 ? say("drill.reading.method_0_01") : say("drill.reading.method_0_05");
}

class ReadingCard : public DrillCard {
 public:
  using DrillCard::DrillCard;

 protected:
  void step(Session& session) override {
    const int number = shown(session);
    const bool skips = typed().empty() && session.cell(reading_cell(number)).empty();
    if (skips && skip_asked_ != number) {
      skip_asked_ = number;
      tell(say("drill.reading.nothing_written"));
      return;
    }
    if (!typed().empty() && !write(reading_cell(number), session)) return;
    if (number == drill_.pictures) return ask();
    if (const auto refused = session.act(Deed::next_picture)) tell(*refused);
  }

  [[nodiscard]] std::string step_words() const override {
    return large() ? say("drill.reading.step_short") : say("drill.reading.step");
  }

  void draw_inside(Canvas& canvas, const Session& session) const override {
    const Rect in = inside();
    const int number = shown(session), of = drill_.pictures;
    canvas.text(
        say("drill.reading.picture", {{"number", std::to_string(number)}, {"of", std::to_string(of)}}),
        {in.x, in.y + 36}, {34, palette::print, Face::bold});
    canvas.text(words::clock(session.state().tick), {in.right(), in.y + 36},
                {word_size(22), palette::print_soft, Face::semibold, Align::right});
    draw_dots(canvas, {in.x, in.y + 58}, session);
    const int rows = (of + kDotsInRow - 1) / kDotsInRow;
    float y = in.y + 58 + 26 * static_cast<float>(rows) + 26;
    y += canvas.paragraph(method_words(drill_.to_cm3), {in.x, y + 18}, in.w, word_size(20) * 1.25F,
                          {word_size(20), palette::print, Face::semibold}) +
         14;
    draw_entry(canvas, {in.x, y, in.w - 90, 104}, session.cell(reading_cell(number)));
    canvas.text_middle("cm\u00b3", {in.right() - 74, y + 52}, {34, palette::print});
    y += 104 + 14;
    if (!message().empty())
      canvas.paragraph(message(), {in.x, y + 22}, in.w, word_size(18) * 1.25F,
                       {word_size(18), palette::bad, Face::semibold});
    draw_hints(canvas);
  }

 private:
  static int shown(const Session& session) { return static_cast<int>(session.state().drill_step) + 1; }

  /// One a picture: written, present, to come.
  void draw_dots(Canvas& canvas, Point at, const Session& session) const {
    const float pitch = inside().w / static_cast<float>(kDotsInRow);
    for (int i = 0; i < drill_.pictures; ++i) {
      const Point centre{at.x + pitch * (static_cast<float>(i % kDotsInRow) + 0.5F),
                         at.y + 12 + 26 * static_cast<float>(i / kDotsInRow)};
      const bool written = !session.cell(reading_cell(i + 1)).empty();
      canvas.circle(centre, 7, written ? palette::accent : rgb(0xe3ddcf));
      if (i + 1 == shown(session))
        canvas.stroke(ellipse_points(centre, 10.5F, 10.5F), {2.2F, true}, palette::tap_handle);
    }
  }

  void draw_hints(Canvas& canvas) const {
    const Rect in = inside();
    const float size = word_size(17), step = size * 1.45F;
    float y = in.bottom() - 3 * step + 4;
    for (const auto& [keys, what] :
         {std::pair{"\u2191 \u2193", large() ? say("drill.reading.eye_short") : say("drill.reading.eye")},
          std::pair{"K", large() ? say("drill.reading.card_short") : say("drill.reading.card")},
          std::pair{"0 \u2026 9", large() ? say("drill.reading.write_short") : say("drill.reading.write")}}) {
      canvas.text(keys, {in.x, y}, {size, palette::accent, Face::bold});
      canvas.text(what, {in.x + size * 3.9F, y},
                  fitted(canvas, what, in.w - size * 3.9F, {size, palette::print}));
      y += step;
    }
  }

  int skip_asked_ = 0;  ///< picture that may be left unread
};

}  // namespace

std::unique_ptr<DrillCard> reading_card(const Session& session, bool large) {
  return std::make_unique<ReadingCard>(session, layout::kReadingCard, large);
}

}  // namespace halfdrop
