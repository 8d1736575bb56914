#include <SFML/Graphics/Glyph.hpp>
#include <SFML/System/String.hpp>
#include <algorithm>
#include <cmath>

#include "game/scenes/canvas.h"

namespace halfdrop {

namespace {

sf::String decoded(std::string_view utf8) { return sf::String::fromUtf8(utf8.begin(), utf8.end()); }

bool is_digit(sf::Uint32 c) { return c >= '0' && c <= '9'; }

/// Kerning between digits would spoil columns of figures.
float kerning(const sf::Font& font, sf::Uint32 last, sf::Uint32 next, unsigned size) {
  return is_digit(last) && is_digit(next) ? 0.0F : font.getKerning(last, next, size);
}

}  // namespace

unsigned Canvas::pixel_size(const TextStyle& style) const {
  return static_cast<unsigned>(std::max(6.0F, std::round(style.size * scale_)));
}

float Canvas::text_width(std::string_view utf8, const TextStyle& style) const {
  const unsigned size = pixel_size(style);
  float width = 0;
  sf::Uint32 last = 0;
  for (const sf::Uint32 c : decoded(utf8)) {
    const sf::Font& font = fonts_.font_for(style.face, c);
    width += kerning(font, last, c, size) + font.getGlyph(c, size, false).advance;
    last = c;
  }
  return width / scale_;
}

void Canvas::glyphs(const sf::String& text, Point pen, const TextStyle& style) {
  const unsigned size = pixel_size(style);
  sf::Uint32 last = 0;
  for (const sf::Uint32 c : text) {
    const sf::Font& font = fonts_.font_for(style.face, c);
    pen.x += kerning(font, last, c, size);
    last = c;
    const sf::Glyph& glyph = font.getGlyph(c, size, false);
    const sf::FloatRect& b = glyph.bounds;
    const sf::IntRect& t = glyph.textureRect;
    if (t.width > 0 && t.height > 0) {
      const Point at{std::round(pen.x) + b.left, pen.y + b.top};
      const Point in{static_cast<float>(t.left), static_cast<float>(t.top)};
      const auto corner = [&](float x, float y) {
        const Point d{x * static_cast<float>(t.width), y * static_cast<float>(t.height)};
        return sf::Vertex(at + d, style.colour, in + d);
      };
      auto& corners = texts_[{&font, size}].corners;
      const sf::Vertex quad[] = {corner(0, 0), corner(1, 0), corner(1, 1),
                                 corner(0, 0), corner(1, 1), corner(0, 1)};
      corners.insert(corners.end(), std::begin(quad), std::end(quad));
    }
    pen.x += glyph.advance;
  }
}

void Canvas::text(std::string_view utf8, Point at, const TextStyle& style) {
  Point pen = to_pixels(at);
  const float width = style.align == Align::left ? 0.0F : text_width(utf8, style) * scale_;
  pen.x -= style.align == Align::centre ? width / 2 : width;
  glyphs(decoded(utf8), {std::round(pen.x), std::round(pen.y)}, style);
}

void Canvas::text_middle(std::string_view utf8, Point at, const TextStyle& style) {
  // Capital height of Lato: 0.72 of the size.
  text(utf8, {at.x, at.y + 0.36F * style.size}, style);
}

std::vector<std::string> Canvas::wrapped(std::string_view utf8, float width, const TextStyle& style) const {
  std::vector<std::string> lines(1);
  std::size_t from = 0;
  while (from < utf8.size()) {
    const std::size_t to = std::min(utf8.find_first_of(" \n", from), utf8.size());
    const std::string word(utf8.substr(from, to - from));
    const std::string longer = lines.back().empty() ? word : lines.back() + " " + word;
    if (lines.back().empty() || text_width(longer, style) <= width) {
      lines.back() = longer;
    } else {
      lines.push_back(word);
    }
    if (to < utf8.size() && utf8[to] == '\n') lines.emplace_back();
    from = to + 1;
  }
  return lines;
}

float Canvas::paragraph(std::string_view utf8, Point at, float width, float line_height,
                        const TextStyle& style) {
  const auto lines = wrapped(utf8, width, style);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    text(lines[i], {at.x, at.y + line_height * static_cast<float>(i)}, style);
  }
  return line_height * static_cast<float>(lines.size());
}

}  // namespace halfdrop
