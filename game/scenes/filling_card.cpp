// The card of "fill without air": one reading to write.

#include "game/level/say.h"
#include "game/scenes/bench_layout.h"
#include "game/scenes/drill_card.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

class FillingCard : public DrillCard {
 public:
  using DrillCard::DrillCard;

 protected:
  void step(Session& session) override {
    if (typed().empty()) {
      if (!session.cell(reading_cell(1)).empty()) return ask();
      return tell(say("drill.filling.type_first"));
    }
    write(reading_cell(1), session);
  }

  [[nodiscard]] std::string step_words() const override { return say("drill.filling.step"); }

  void draw_inside(Canvas& canvas, const Session& session) const override {
    const Rect in = inside();
    const float size = word_size(18);
    // A line a thing: two lines of the largest words must fit below the figure.
    canvas.text(large() ? say("drill.filling.heading_short") : say("drill.filling.heading"),
                {in.x, in.y + size}, {size, palette::print, Face::bold});
    const Rect entry{in.x, in.y + size * 1.6F, in.w - 84, large() ? 52.0F : 62.0F};
    draw_entry(canvas, entry, session.cell(reading_cell(1)));
    canvas.text_middle("cm\u00b3", {in.right() - 70, entry.centre().y}, {word_size(24), palette::print});
    const bool written = !session.cell(reading_cell(1)).empty();
    const std::string note =
        !message().empty() ? message() : (written ? say("drill.filling.written") : say("drill.filling.read"));
    canvas.paragraph(note, {in.x, entry.bottom() + size * 1.25F}, in.w, size * 1.15F,
                     {size, message().empty() ? palette::print : palette::bad, Face::regular});
  }
};

}  // namespace

std::unique_ptr<DrillCard> filling_card(const Session& session, bool large) {
  return std::make_unique<FillingCard>(session, layout::kDrillCard, large);
}

}  // namespace halfdrop
