// The card of "know your apparatus": what a piece is there for; what the wrong one is for; what to do with
// it.

#include "game/level/say.h"
#include "game/scenes/bench_layout.h"
#include "game/scenes/drill_card.h"
#include "game/scenes/palette.h"
#include "game/session/apparatus.h"

namespace halfdrop {

namespace {

std::string name_of(Piece piece) { return std::string(piece_label(piece)); }
std::string purpose_of(Piece piece) { return std::string(piece_purpose(piece)); }

/// What is said of the last answer.
std::string last_answer(const PieceAsked& asked) {
  if (asked.told) return say("drill.knowing.told", {{"piece", name_of(asked.piece)}});
  if (asked.wrong.empty()) return {};
  const Piece taken = asked.wrong.back();
  return say("drill.knowing.that_is", {{"piece", name_of(taken)}, {"purpose", purpose_of(taken)}});
}

class ApparatusCard : public DrillCard {
 public:
  ApparatusCard(const Session& session, const Rect& area, bool large)
      : DrillCard(session, area, large), words_(words_for(apparatus_round(session))) {}

 protected:
  [[nodiscard]] bool takes_figures() const override { return false; }

  void step(Session& session) override {
    const ApparatusRound round = apparatus_round(session);
    if (round.over()) return ask();
    put({piece_cell(static_cast<int>(round.now) + 1), std::string(kDoNotKnow)}, session);
    tell({});  // it is no number, and need not be
  }

  [[nodiscard]] std::string step_words() const override { return words_; }

  void draw_inside(Canvas& canvas, const Session& session) const override {
    const ApparatusRound round = apparatus_round(session);
    words_ = words_for(round);
    const Rect in = inside();
    const float size = word_size(19), line = size * 1.2F;
    if (round.over()) {
      canvas.text(say("drill.knowing.all"), {in.x, in.y + size}, {size, palette::print, Face::bold});
      canvas.paragraph(say("drill.knowing.all_then"), {in.x, in.y + size * 2.6F}, in.w, line,
                       {size, palette::print, Face::regular});
      return;
    }
    const PieceAsked& asked = round.piece();
    const std::string number = say("drill.knowing.number", {{"number", std::to_string(round.now + 1)},
                                                            {"of", std::to_string(round.asked.size())}});
    const TextStyle bold{size, palette::print, Face::bold},
        soft{word_size(16), palette::print_soft, Face::regular};
    canvas.text(number, {in.x, in.y + soft.size}, soft);
    float y = in.y + soft.size + size * 1.5F;
    if (round.to_pick()) {
      y += canvas.paragraph(say("drill.knowing.which", {{"purpose", purpose_of(asked.piece)}}), {in.x, y},
                            in.w, line, bold);
      const std::string answer = last_answer(asked);
      if (!answer.empty())
        canvas.paragraph(answer, {in.x, y + size * 0.6F}, in.w, line, {size, palette::bad, Face::regular});
      return;
    }
    y += canvas.paragraph(say("drill.knowing.right", {{"piece", name_of(asked.piece)}}), {in.x, y}, in.w,
                          line, {size, palette::good, Face::bold});
    canvas.paragraph(std::string(piece_use(asked.piece)), {in.x, y + size * 0.6F}, in.w, line, bold);
  }

 private:
  static std::string words_for(const ApparatusRound& round) {
    if (round.over()) return say("drill.knowing.hand_in");
    return round.to_pick() ? say("drill.knowing.do_not_know") : say("drill.knowing.leave_out");
  }

  mutable std::string words_;
};

}  // namespace

std::unique_ptr<DrillCard> apparatus_card(const Session& session, bool large) {
  return std::make_unique<ApparatusCard>(session, layout::kDrillCard, large);
}

}  // namespace halfdrop
