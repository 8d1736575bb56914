#pragma once
// A batched painter over an SFML target. Everything is said in design units (1280 x 720), scaled alike in
// both directions and centred; edges are feathered by one real pixel in geometry. Within a layer all shapes
// lie under all text; flush() ends a layer, so that what follows lies above it.

#include <SFML/Graphics/RenderTarget.hpp>
#include <SFML/Graphics/Vertex.hpp>
#include <map>
#include <span>
#include <string_view>

#include "game/scenes/fonts.h"
#include "game/scenes/paint.h"

namespace halfdrop {

inline constexpr float kDesignWidth = 1280.0F;
inline constexpr float kDesignHeight = 720.0F;

enum class Align { left, centre, right };

struct TextStyle {
  float size = 16.0F;  ///< design units; drawn at the nearest whole number of pixels
  sf::Color colour;
  Face face = Face::regular;
  Align align = Align::left;
};

struct StrokeStyle {
  float width = 1.0F;
  bool closed = false;
  bool round_ends = false;
};

class Canvas {
 public:
  Canvas(sf::RenderTarget& target, const Fonts& fonts);

  /// Before a frame: takes the target's present size.
  void begin();
  /// Draws what was said so far: what follows lies above it.
  void flush();

  /// Real pixels a design unit.
  [[nodiscard]] float scale() const { return scale_; }
  /// One real pixel in design units.
  [[nodiscard]] float pixel() const { return 1.0F / scale_; }
  /// All of the window in design units; more than 1280 x 720 when its shape is another.
  [[nodiscard]] Rect window() const;
  [[nodiscard]] Point to_design(int x, int y) const;
  [[nodiscard]] sf::Vector2u target_size() const { return target_.getSize(); }
  [[nodiscard]] const Fonts& fonts() const { return fonts_; }
  [[nodiscard]] Point to_pixels(Point p) const { return origin_ + p * scale_; }

  /// Any simple polygon.
  void polygon(const Points& outline, const Paint& paint);
  void rect(const Rect& rect, const Paint& paint);
  void rounded_rect(const Rect& rect, float radius, const Paint& paint);
  void ellipse(Point centre, float rx, float ry, const Paint& paint);
  void circle(Point centre, float radius, const Paint& paint) { ellipse(centre, radius, radius, paint); }
  void stroke(const Points& line, const StrokeStyle& style, const Paint& paint);
  void line(Point from, Point to, float width, const Paint& paint);
  void dashed(const Points& line, float width, float dash, float gap, sf::Color colour);
  /// From the centre's colour to the rim's, through stops at shares of the radius.
  void glow(Point centre, float rx, float ry, const std::vector<Stop>& stops);
  /// A soft dark under a thing: full inside, fading over `blur` outwards and inwards.
  void soft_ellipse(Point centre, float rx, float ry, float blur, sf::Color colour);
  void soft_rect(const Rect& rect, float radius, float blur, sf::Color colour);
  /// A patchwork of rows x columns points with a colour each, not feathered.
  void mesh(std::span<const Point> points, std::span<const sf::Color> colours, std::size_t columns);

  /// `at` is the baseline's left end, middle or right end.
  void text(std::string_view utf8, Point at, const TextStyle& style);
  /// Vertically centred on at.y by capital height.
  void text_middle(std::string_view utf8, Point at, const TextStyle& style);
  /// Broken at spaces (and at line ends) to a width; returns the design height used. `at` is the first
  /// baseline.
  float paragraph(std::string_view utf8, Point at, float width, float line_height, const TextStyle& style);
  [[nodiscard]] std::vector<std::string> wrapped(std::string_view utf8, float width,
                                                 const TextStyle& style) const;
  [[nodiscard]] float text_width(std::string_view utf8, const TextStyle& style) const;

  /// Turns all shapes that follow clockwise (as seen) about a point, until upright(); words stay.
  void lean(Point about, double radians);
  void upright() { lean({}, 0); }

  /// Covers all of the target with a picture of its size. Flushes.
  void cover(const sf::Texture& picture);

  /// Nothing is drawn outside until unclip(). Both flush. Clips do not nest: the last one counts.
  void clip(const Rect& rect);
  void unclip();

 private:
  struct TextBatch {
    std::vector<sf::Vertex> corners;  ///< three a triangle
  };
  void triangle(Point a, Point b, Point c, const Paint& paint);
  void band(const Points& inner, const Points& outer, bool closed, const Paint& paint);
  void ring(const Points& inner, sf::Color inner_colour, const Points& outer, sf::Color outer_colour);
  void vertex(Point p, sf::Color colour) { shapes_.emplace_back(to_pixels(leaning(p)), colour); }
  [[nodiscard]] Point leaning(Point p) const {
    const Point off = p - pivot_;
    return pivot_ + Point{lean_.x * off.x - lean_.y * off.y, lean_.y * off.x + lean_.x * off.y};
  }
  [[nodiscard]] unsigned pixel_size(const TextStyle& style) const;
  void glyphs(const sf::String& text, Point pen, const TextStyle& style);
  void use_view(const Rect& pixels);

  sf::RenderTarget& target_;
  const Fonts& fonts_;
  float scale_ = 1.0F;
  Point origin_;
  Point pivot_, lean_{1, 0};  ///< cosine and sine
  std::vector<sf::Vertex> shapes_;
  std::map<std::pair<const sf::Font*, unsigned>, TextBatch> texts_;
};

}  // namespace halfdrop
