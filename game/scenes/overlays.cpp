#include "game/scenes/overlays.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <span>

#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

struct Piece {
  std::string words;
  bool key = false;
};

std::vector<Piece> pieces_of(const std::string& words) {
  std::vector<Piece> pieces(1);
  for (const char c : words) {
    if (c == '[' || c == ']') {
      pieces.push_back({"", c == '['});
    } else {
      pieces.back().words += c;
    }
  }
  std::erase_if(pieces, [](const Piece& piece) { return piece.words.empty(); });
  return pieces;
}

TextStyle piece_style(const Piece& piece, float size, Face face = Face::regular) {
  return {size, piece.key ? palette::pill_key : palette::pill_text, piece.key ? Face::bold : face,
          Align::left};
}

float width_of(const Canvas& canvas, const std::vector<Piece>& pieces, float size,
               Face face = Face::regular) {
  float width = 0;
  for (const Piece& piece : pieces) width += canvas.text_width(piece.words, piece_style(piece, size, face));
  return width;
}

/// Broken once, at the space nearest to the middle.
std::vector<std::string> two_lines(const std::string& words) {
  const std::size_t half = words.size() / 2;
  const std::size_t before = words.rfind(' ', half), after = words.find(' ', half);
  const std::size_t at =
      after != std::string::npos && (before == std::string::npos || after - half < half - before) ? after
                                                                                                  : before;
  if (at == std::string::npos) return {words};
  return {words.substr(0, at), words.substr(at + 1)};
}

void card(Canvas& canvas, const Rect& rect) {
  canvas.flush();
  canvas.rect(canvas.window(), faded(palette::shadow, 0.42));
  canvas.soft_rect({rect.x + 4, rect.y + 12, rect.w, rect.h}, 14, 26, faded(palette::shadow, 0.6));
  canvas.rounded_rect(
      rect, 14, Paint::vertical(rect.y, rect.bottom(), {{0, sf::Color::White}, {1, palette::paper_shade}}));
}

/// What a key needs to be of any use.
enum class Needs { nothing, liquid, pouring, titration, by_hand, practised, reading, delivery, filling };

struct HelpLine {
  const char *keys, *words;
  Needs needs = Needs::nothing;
};

constexpr std::array kHelp = {HelpLine{"\u2190 \u2192", "tap: shut, open", Needs::liquid},
                              HelpLine{"Shift, Ctrl + \u2190 \u2192", "finer, coarser (hold)", Needs::liquid},
                              HelpLine{"S, D", "snap it shut, back to where it was", Needs::liquid},
                              HelpLine{"\u2191 \u2193", "eye 1 mm up, down"},
                              HelpLine{"Shift + \u2191 \u2193", "eye 10 mm"},
                              HelpLine{"PgUp PgDn", "eye 50 mm"},
                              HelpLine{"K", "hold the card below the eye"},
                              HelpLine{"Space (hold)", "swirl (Shift: as hard as you can)", Needs::titration},
                              HelpLine{"W (hold)", "wash down", Needs::titration},
                              HelpLine{"P (hold)", "pour into the burette (Shift: gently)", Needs::pouring},
                              HelpLine{"Q", "take up titrant, water, sample in turn", Needs::titration},
                              HelpLine{"E (hold)", "burette aslant, turned about", Needs::titration},
                              HelpLine{"F", "flask under the jet, aside", Needs::titration},
                              HelpLine{"N", "funnel in, out", Needs::pouring},
                              HelpLine{"Ctrl + \u2191 \u2193", "raise, lower the burette", Needs::pouring},
                              HelpLine{"Home", "burette over the bench's edge, back", Needs::pouring},
                              HelpLine{"O", "touch off what hangs (half drops)", Needs::liquid},
                              HelpLine{"J", "flick the jet with a finger", Needs::liquid},
                              HelpLine{"L", "white tile", Needs::titration},
                              HelpLine{"C", "coat on", Needs::liquid},
                              HelpLine{"G", "eye protection on, off", Needs::liquid},
                              HelpLine{"B", "beaker under the jet, away", Needs::liquid},
                              HelpLine{"Shift + B", "pour the beaker out", Needs::liquid},
                              HelpLine{"A", "pipette: fill, let out", Needs::practised},
                              HelpLine{"A", "pipette: dip, lift, to flask, away", Needs::by_hand},
                              HelpLine{"Z (hold)", "its filler (Shift: gently)", Needs::by_hand},
                              HelpLine{"Shift + A", "its tip off the flask, or on", Needs::by_hand},
                              HelpLine{"Y", "rinse the pipette", Needs::titration},
                              HelpLine{"U", "blow out the pipette's last drop", Needs::titration},
                              HelpLine{"I", "a drop of indicator", Needs::titration},
                              HelpLine{"X", "empty the flask", Needs::titration},
                              HelpLine{"V, Shift + V", "rinse the flask: water, sample", Needs::titration},
                              HelpLine{"M", "wipe the pipette, wet outside", Needs::by_hand},
                              HelpLine{"M", "mop the bench", Needs::liquid},
                              HelpLine{"R", "write the next result", Needs::titration},
                              HelpLine{"T", "results sheet to the front", Needs::titration},
                              HelpLine{"0 \u2026 9, Enter", "write the reading, turn over", Needs::reading},
                              HelpLine{"0 \u2026 9, Enter", "write the reading", Needs::filling},
                              HelpLine{"Enter", "say that it is in the beaker", Needs::delivery},
                              HelpLine{"H", "hand in"},
                              HelpLine{"F1", "these keys"},
                              HelpLine{"F2", "how it is done"},
                              HelpLine{"F3", "guide: hide, show, ask", Needs::titration},
                              HelpLine{"F4", "the working on other figures", Needs::titration},
                              HelpLine{"Esc, F11", "pause, full screen"}};

bool has(const Outfit& outfit, Needs needs) {
  switch (needs) {
    case Needs::nothing:
      return true;
    case Needs::liquid:
      return outfit.liquid;
    case Needs::pouring:
      return outfit.pouring;
    case Needs::titration:
      return outfit.titration;
    case Needs::by_hand:
      return outfit.titration && outfit.pipette_by_hand;
    case Needs::practised:
      return outfit.titration && !outfit.pipette_by_hand;
    case Needs::reading:
      return !outfit.liquid;
    case Needs::delivery:
      return outfit.beaker_takes_it;
    case Needs::filling:
      return outfit.pouring && !outfit.titration;
  }
  return false;
}

void help_column(Canvas& canvas, std::span<const HelpLine> lines, Point at, float step) {
  for (const HelpLine& line : lines) {
    canvas.text(line.keys, {at.x + 150, at.y}, {17, palette::accent, Face::bold, Align::right});
    canvas.text(line.words, {at.x + 166, at.y}, {17, palette::print});
    at.y += step;
  }
}

/// As large as the room lets a method's steps be.
struct MethodLines {
  float size = 20, step = 26, gap = 11, height = 0;
};

MethodLines method_lines(const Canvas& canvas, const std::vector<std::string>& steps, float width,
                         float most) {
  MethodLines lines;
  for (;; lines.size -= 1, lines.step -= 1.25F, lines.gap -= 1) {
    lines.height = steps.empty() ? 60.0F : 0.0F;
    for (const std::string& step : steps) {
      const std::size_t broken = canvas.wrapped(step, width, {lines.size, palette::print}).size();
      lines.height += lines.step * static_cast<float>(broken) + lines.gap;
    }
    if (lines.height <= most || lines.size <= 15) return lines;
  }
}

}  // namespace

void draw_words_with_keys(Canvas& canvas, const std::string& words, Point at, float size, Face face) {
  for (const Piece& piece : pieces_of(words)) {
    canvas.text_middle(piece.words, at, piece_style(piece, size, face));
    at.x += canvas.text_width(piece.words, piece_style(piece, size, face));
  }
}

std::vector<std::string> broken_words(const Canvas& canvas, const std::string& words, float width, float size,
                                      Face face) {
  std::vector<std::string> lines;
  std::string line;
  bool in_key = false;
  for (std::size_t from = 0; from < words.size();) {
    std::size_t to = from;  // up to the next space outside a key
    while (to < words.size() && (in_key || words[to] != ' ')) {
      in_key = words[to] == '[' || (in_key && words[to] != ']');
      ++to;
    }
    while (to < words.size() && words[to] == ' ') ++to;
    const std::string longer = line + words.substr(from, to - from);
    if (!line.empty() && width_of(canvas, pieces_of(longer), size, face) > width) {
      lines.push_back(line);
      line = words.substr(from, to - from);
    } else {
      line = longer;
    }
    from = to;
  }
  lines.push_back(line);
  return lines;
}

void draw_pill(Canvas& canvas, const std::string& words, bool is_warning, bool projector) {
  if (words.empty()) return;
  constexpr float most = 810.0F;  // left of the paper
  float size = projector ? 29.0F : 17.0F;
  std::vector<std::string> lines = {words};
  if (width_of(canvas, pieces_of(words), size) > most - 44) lines = two_lines(words);
  float width = 0;
  for (const std::string& line : lines) width = std::max(width, width_of(canvas, pieces_of(line), size));
  if (width > most - 44) size *= (most - 44) / width;
  width = std::min(width, most - 44);
  const float step = size * 1.25F, height = step * static_cast<float>(lines.size()) + size * 0.75F;
  const Rect pill{430 - width / 2 - 22, 712 - height, width + 44, height};
  canvas.flush();
  canvas.soft_rect({pill.x, pill.y + 3, pill.w, pill.h}, 16, 8, faded(palette::shadow, 0.4));
  canvas.rounded_rect(pill, 17, palette::pill);
  if (is_warning) canvas.stroke(rounded_rect_points(pill, 17), {1.8F, true}, palette::tap_handle);
  float y = pill.y + size * 0.375F + step / 2;
  for (const std::string& line : lines) {
    const float x = pill.centre().x - width_of(canvas, pieces_of(line), size) / 2;
    draw_words_with_keys(canvas, line, {x, y}, size, Face::regular);
    y += step;
  }
  canvas.flush();
}

void draw_help_card(Canvas& canvas, const Outfit& outfit) {
  std::vector<HelpLine> lines;
  std::copy_if(kHelp.begin(), kHelp.end(), std::back_inserter(lines),
               [&](const HelpLine& line) { return has(outfit, line.needs); });
  const std::span<const HelpLine> all(lines);
  const std::size_t half = (all.size() + 1) / 2;
  // A drill has few keys; a titration as many as the window holds.
  constexpr float head = 96, foot = 44, most = 696;
  const auto count = static_cast<float>(half);
  const float step = std::min(27.0F, (most - head - foot) / count);
  const float height = head + foot + step * count;
  const Rect rect{200, std::min(60.0F, (720 - height) / 2), 880, height};
  card(canvas, rect);
  canvas.text("The bench by keys", {rect.x + 40, rect.y + 52}, {28, palette::accent, Face::bold});
  canvas.text("Everything goes by mouse as well: what the pointer lies on says what it does.",
              {rect.right() - 40, rect.y + 52}, {16, palette::print_soft, Face::italic, Align::right});
  help_column(canvas, all.first(half), {rect.x + 30, rect.y + head}, step);
  help_column(canvas, all.subspan(half), {rect.x + 450, rect.y + head}, step);
  canvas.text("A rehearsal. It is no evidence of practical competence and replaces no risk assessment.",
              {rect.centre().x, rect.bottom() - 24}, {16, palette::print_soft, Face::regular, Align::centre});
  canvas.flush();
}

void draw_method_card(Canvas& canvas, const std::vector<std::string>& steps) {
  constexpr float width = 1080, words = width - 140, around = 134, most = 696;
  const MethodLines lines = method_lines(canvas, steps, words, most - around);
  const Rect rect{100, std::min(36.0F, (720 - around - lines.height) / 2), width, around + lines.height};
  card(canvas, rect);
  canvas.text("How it is done", {rect.x + 48, rect.y + 52}, {28, palette::accent, Face::bold});
  if (steps.empty())
    canvas.text("This level leaves the method to you.", {rect.x + 48, rect.y + 100}, {19, palette::print});
  float y = rect.y + 92;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    canvas.text(std::to_string(i + 1), {rect.x + 72, y},
                {lines.size + 1, palette::accent, Face::bold, Align::right});
    y += canvas.paragraph(steps[i], {rect.x + 90, y}, words, lines.step, {lines.size, palette::print}) +
         lines.gap;
  }
  canvas.text("Your teacher's instructions come first. Any key: back to the bench",
              {rect.centre().x, rect.bottom() - 22}, {16, palette::print_soft, Face::regular, Align::centre});
  canvas.flush();
}

const std::vector<PauseButton>& pause_buttons() {
  static const std::vector<PauseButton> buttons = {
      {PauseChoice::go_on, "go-on", "Go on", {490, 300, 300, 48}},
      {PauseChoice::method, "method", "How it is done", {490, 358, 300, 48}},
      {PauseChoice::level_list, "level-list", "Leave it for later", {490, 416, 300, 48}},
      {PauseChoice::hand_in, "hand-in-now", "Hand in …", {490, 474, 300, 48}}};
  return buttons;
}

void draw_pause(Canvas& canvas, std::size_t chosen) {
  const Rect rect{430, 190, 420, 386};
  card(canvas, rect);
  canvas.text("Time stands still", {rect.centre().x, 246}, {28, palette::accent, Face::bold, Align::centre});
  canvas.text("What you did so far is saved.", {rect.centre().x, 276},
              {16, palette::print_soft, Face::regular, Align::centre});
  for (std::size_t i = 0; i < pause_buttons().size(); ++i) {
    const PauseButton& button = pause_buttons()[i];
    const bool on = i == chosen;
    canvas.rounded_rect(button.rect, 10, on ? palette::accent : palette::paper_shade);
    canvas.stroke(rounded_rect_points(button.rect, 10), {1.5F, true}, palette::accent);
    canvas.text_middle(button.words, button.rect.centre(),
                       {20, on ? palette::paper : palette::accent, Face::semibold, Align::centre});
  }
  canvas.text("Esc goes on", {rect.centre().x, 554}, {15, palette::print_soft, Face::regular, Align::centre});
  canvas.flush();
}

void draw_wait(Canvas& canvas, const std::string& words) {
  canvas.flush();
  canvas.rect(canvas.window(), faded(palette::shadow, 0.5));
  const Rect rect{420, 320, 440, 80};
  canvas.rounded_rect(rect, 14, palette::paper);
  canvas.text_middle(words, rect.centre(), {22, palette::print, Face::semibold, Align::centre});
  canvas.flush();
}

}  // namespace halfdrop
