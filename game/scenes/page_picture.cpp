#include "game/scenes/page_picture.h"

#include "game/scenes/marks_page.h"
#include "game/scenes/palette.h"
#include "game/scenes/sheet_paper.h"
#include "game/scenes/still_picture.h"

namespace halfdrop {

namespace {

/// The answer that was right, so that the page stands as after it.
Diagnosis right_answer(const MarkedAttempt& marked) {
  const auto was = largest_cause(marked);
  return was ? Diagnosis{was->cause, was->mean_cm3 > 0.0} : Diagnosis{};
}

void draw_marks(Canvas& canvas, const Options& options, const Session& session) {
  MarkedAttempt marked = mark(session.attempt());
  const Diagnosis answer = right_answer(marked);
  MarksPage page(std::move(marked), {}, options.play.projector);
  if (options.page != "question") page.answer(answer);
  page.draw(canvas);
  page.turn_to(options.page);
  page.draw(canvas);
}

void draw_sheet(Canvas& canvas, const Options& options, const Session& session) {
  SheetPaper sheet(session.level(), WorkedSlip{worked_example(session.level(), session.attempt().seed), {}});
  sheet.come_forward(true);
  sheet.show_example(options.page == "example");
  sheet.draw(canvas, session);
}

}  // namespace

const std::vector<std::string>& page_names() {
  static const std::vector<std::string> kNames = {"sheet",  "example",     "question", "marks",   "titres",
                                                  "result", "uncertainty", "findings", "harmless"};
  return kNames;
}

int draw_page(const Options& options, const Session& session) {
  const bool sheet = options.page == "sheet" || options.page == "example";
  if (sheet && session.level().drill)
    return report({Fault{FaultKind::invalid, options.level, "", "a drill has no sheet"}});
  return draw_into(options.picture, options, palette::wall,
                   [&](sf::RenderTarget& target, const Fonts& fonts) {
                     Canvas canvas(target, fonts);
                     canvas.begin();
                     sheet ? draw_sheet(canvas, options, session) : draw_marks(canvas, options, session);
                     canvas.flush();
                   });
}

}  // namespace halfdrop
