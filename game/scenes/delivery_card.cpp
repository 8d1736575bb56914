// The card of "deliver exactly": what is asked for, one after the other.

#include <algorithm>
#include <optional>

#include "game/level/say.h"
#include "game/marking/delivery_drill.h"
#include "game/scenes/bench_layout.h"
#include "game/scenes/drill_card.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

class DeliveryCard : public DrillCard {
 public:
  DeliveryCard(const Session& session, const Rect& area, bool large)
      : DrillCard(session, area, large), at_last_close_(came_in(session)) {}

 protected:
  void step(Session& session) override {
    const std::size_t now = closed(session);
    if (now == asked().size()) return ask();
    // Enter may still be held down from the page before, or hit twice: there is no way back.
    if (came_in(session) == at_last_close_ && empty_asked_ != now) {
      empty_asked_ = now;
      return tell(say("drill.delivery.nothing_came"));
    }
    if (const auto refused = session.act(Deed::close_volume)) return tell(*refused);
    at_last_close_ = came_in(session);
    empty_asked_.reset();
    if (closed(session) == asked().size()) ask();
  }

  [[nodiscard]] std::string step_words() const override { return say("drill.delivery.step"); }
  [[nodiscard]] bool takes_figures() const override { return false; }

  void draw_inside(Canvas& canvas, const Session& session) const override {
    const Rect in = inside();
    const float heading = word_size(18);
    const bool came_in_since = empty_asked_ && came_in(session) != at_last_close_;
    const bool says = !message().empty() && !came_in_since;
    TextStyle style{heading, says ? palette::bad : palette::print, Face::bold};
    const std::string words = says ? message() : say("drill.delivery.heading");
    // What refuses a volume may be longer than the card is wide.
    style.size = std::min(heading, heading * in.w / canvas.text_width(words, style));
    canvas.text(words, {in.x, in.y + heading}, style);
    const float top = in.y + heading + 10, rows = static_cast<float>(asked().size());
    const float row = std::min(38.0F, (in.bottom() - top) / rows);
    for (std::size_t i = 0; i < asked().size(); ++i)
      draw_row(canvas, {in.x, top + row * static_cast<float>(i), in.w, row}, i, closed(session));
  }

 private:
  Quanta at_last_close_;                    ///< came into the beaker until then, or until the card was made
  std::optional<std::size_t> empty_asked_;  ///< volume of which nothing came in, and that was said

  [[nodiscard]] const std::vector<Delivery>& asked() const { return drill_.deliveries; }
  static Quanta came_in(const Session& session) {
    return session.state().ledger.entered(Account::beaker).volume;
  }
  static std::size_t closed(const Session& session) {
    return static_cast<std::size_t>(session.state().drill_step);
  }

  void draw_row(Canvas& canvas, const Rect& at, std::size_t i, std::size_t now) const {
    const float size = std::min(word_size(21), at.h * 0.86F), middle = at.centre().y;
    if (i == now) canvas.rounded_rect({at.x - 6, at.y + 1, at.w + 12, at.h - 2}, 6, rgb(0xfbe9b7, 0.9));
    canvas.text_middle(std::to_string(i + 1), {at.x + 16, middle},
                       {size, palette::print_soft, Face::semibold, Align::centre});
    canvas.text_middle(asked_text(asked()[i]), {at.x + 40, middle},
                       {size, i < now ? palette::print_soft : palette::print, Face::semibold});
    if (i <= now)
      canvas.text_middle(i < now ? say("drill.delivery.let_in") : say("drill.delivery.now"),
                         {at.right() - 6, middle},
                         {size, i < now ? palette::print_soft : palette::ink, Face::italic, Align::right});
  }
};

}  // namespace

std::unique_ptr<DrillCard> delivery_card(const Session& session, bool large) {
  return std::make_unique<DeliveryCard>(session, layout::kDrillCard, large);
}

}  // namespace halfdrop
