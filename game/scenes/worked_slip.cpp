#include "game/scenes/worked_slip.h"

#include <algorithm>

#include "game/level/say.h"
#include "game/records/attempt_file.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "game/scenes/shelf_files.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

constexpr Rect kArea{862, 30, 406, 662};
constexpr float kMargin = 18.0F;

std::string joined(const std::vector<std::string>& parts) {
  std::string all;
  for (const std::string& part : parts) all += (all.empty() ? "" : "; ") + part;
  return all;
}

std::string name_of(const std::string& cell) { return cell.substr(cell.find('/') + 1); }

ResultsSheet sheet_of(const Attempt& attempt) {
  ResultsSheet sheet;
  for (const Change& change : attempt.changes) {
    if (const auto* writing = std::get_if<Writing>(&change.what)) sheet.write(change.tick, *writing);
  }
  return sheet;
}

}  // namespace

Rect WorkedSlip::area() { return kArea; }

bool WorkedSlip::is_withdrawn(const std::string& cell) const {
  return std::find(withdrawn_.begin(), withdrawn_.end(), cell) != withdrawn_.end();
}

std::size_t WorkedSlip::standing() const {
  return static_cast<std::size_t>(
      std::count_if(example_.lines.begin(), example_.lines.end(),
                    [&](const WorkedLine& line) { return !is_withdrawn(line.cell); }));
}

bool WorkedSlip::offered() const { return standing() > 0; }

float WorkedSlip::draw_line(Canvas& canvas, float y, std::size_t index, bool marked) const {
  const WorkedLine& line = example_.lines[index];
  const float left = kArea.x + kMargin, width = kArea.w - 2 * kMargin;
  const bool gone = is_withdrawn(line.cell);
  const TextStyle words{14 + larger() / 2, palette::print};
  TextStyle figures{16 + larger(), palette::ink, Face::italic};
  while (figures.size > 14 && canvas.text_width(line.figures, figures) > width - 20) figures.size -= 0.5F;
  const auto lines = [&](const std::string& text, const TextStyle& style) {
    return static_cast<float>(canvas.wrapped(text, width - 20, style).size());
  };
  const float high = gone ? 40.0F
                          : 22 + 17 * lines(line.words, words) +
                                (19 + larger()) * lines(line.figures, figures) + 2 * larger();
  if (marked) {
    canvas.rounded_rect({left - 8, y, width + 16, high}, 5, rgb(0xfbe9b7, 0.9));
    canvas.stroke(rounded_rect_points({left - 8, y, width + 16, high}, 5), {1.4F, true}, palette::accent);
  }
  canvas.text(std::to_string(index + 1) + "  " + name_of(line.cell), {left, y + 17},
              {15 + larger() / 2, palette::print, Face::semibold});
  float at = y + 34 + larger() / 2;
  if (gone) {
    canvas.text(words::kWithdrawn, {left + 20, at}, {14, palette::good, Face::italic});
  } else {
    at += canvas.paragraph(line.words, {left + 20, at}, width - 20, 17, words);
    canvas.paragraph(line.figures, {left + 20, at + 1 + larger() / 2}, width - 20, 19 + larger(), figures);
  }
  return high + 3 + 2 * larger();
}

void WorkedSlip::draw(Canvas& canvas, const std::string& cell) const {
  draw_paper_ground(canvas, kArea, true);
  const float left = kArea.x + kMargin, width = kArea.w - 2 * kMargin;
  canvas.text(words::kWorkedHeading, {left, kArea.y + 34}, {19, palette::print, Face::bold});
  float y = kArea.y + 58;
  y += canvas.paragraph(say("worked.given", {{"given", joined(example_.given)}}), {left, y}, width, 18,
                        {14, palette::print});
  for (std::size_t i = 0; i < example_.lines.size(); ++i) {
    y += draw_line(canvas, y - 4, i, example_.lines[i].cell == cell);
  }
  canvas.paragraph(words::kWorkedFoot, {left, kArea.bottom() - 28}, width, 17, {14, palette::print});
}

std::vector<std::string> withdrawn_lines(const std::string& folder, const Level& level,
                                         const std::string& alias) {
  std::vector<std::vector<std::string>> done;
  for (const auto& path : attempts_at(folder, level.id)) {
    const auto file = read_attempt(path.string());
    if (!file || file->attempt.level.id != level.id || file->attempt.alias != alias) continue;
    if (has_ended(file->attempt)) done.push_back(lines_done_rightly(level, sheet_of(file->attempt)));
  }
  return lines_withdrawn(level, done);
}

}  // namespace halfdrop
