#include "game/scenes/handed_in_page.h"

#include <filesystem>
#include <utility>

#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

constexpr Rect kSheet{150, 110, 980, 500};
constexpr Rect kGoOn{780, 534, 310, 48};

}  // namespace

HandedInPage::HandedInPage(std::string level_title, std::string file, bool whole)
    : level_title_(std::move(level_title)), file_(std::move(file)), whole_(whole) {}

void HandedInPage::draw(Canvas& canvas) const {
  draw_page_ground(canvas);
  draw_paper_ground(canvas, kSheet, false);
  canvas.flush();
  const float left = kSheet.x + 48, width = kSheet.w - 96;
  canvas.text(words::kHandedIn, {left, kSheet.y + 70}, {34, palette::print, Face::bold});
  canvas.text(level_title_, {left, kSheet.y + 106}, {20, palette::print, Face::semibold});
  float y = kSheet.y + 162;
  y += canvas.paragraph(words::kFileToHandIn, {left, y}, width, 28, {20, palette::print}) + 18;
  const std::filesystem::path path(file_);
  canvas.paragraph(path.filename().string(), {left, y}, width, 30, {22, palette::ink, Face::bold});
  y += 44;
  canvas.text(words::kInFolder, {left, y}, {18, palette::print});
  y += 30 + canvas.paragraph(path.parent_path().string(), {left, y + 28}, width, 26, {19, palette::ink});
  canvas.paragraph(whole_ ? words::kTeacherReplays : words::kNotWhole, {left, y + 24}, width, 26,
                   {18, whole_ ? palette::print : palette::bad, whole_ ? Face::regular : Face::bold});
  draw_page_button(canvas, kGoOn, words::kSeeMarks, true, 18);
  canvas.flush();
}

void HandedInPage::event(const sf::Event& event, sf::Vector2f pointer) {
  if (event.type == sf::Event::KeyPressed)
    left_ = left_ || event.key.code == sf::Keyboard::Enter || event.key.code == sf::Keyboard::Escape;
  if (event.type == sf::Event::MouseButtonPressed && event.mouseButton.button == sf::Mouse::Left)
    left_ = left_ || kGoOn.contains(pointer);
}

}  // namespace halfdrop
