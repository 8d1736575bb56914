#include "game/scenes/eye_picture.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "game/scenes/eye_scene.h"
#include "game/scenes/palette.h"
#include "game/scenes/words.h"
#include "physics/bench/hands.h"

namespace halfdrop {

namespace {

constexpr float kRailWidth = 62.0F;
constexpr float kFrame = 8.0F;                               ///< width of the frame
constexpr double kLeastSeen_mm = 18.0;                       ///< of the tube's length, top to bottom
constexpr double kTubeShare = 0.86;                          ///< of the picture's width
constexpr double kShortest_mm = 0.13, kLongest_mm = 0.16;    ///< thickness; ISO 385 allows 0.3
constexpr double kFigures_mm = 2.35;                         ///< size of the type
constexpr double kCardWhite_mm = 45.0, kCardDark_mm = 75.0;  ///< halves of the card

const sf::Color kDarkCard = rgb(0x46565b);
const sf::Color kMarkOnDark = rgb(0xf2f6f5);

/// The scene on the screen.
struct Pane {
  Canvas& canvas;
  const EyeScene& scene;
  Rect inner;
  double per_mm;
  double middle_mm;

  [[nodiscard]] float x(double x_mm) const { return inner.centre().x + static_cast<float>(x_mm * per_mm); }
  [[nodiscard]] float y(double y_mm) const {
    return inner.centre().y - static_cast<float>((y_mm - middle_mm) * per_mm);
  }
  [[nodiscard]] Point at(const PointOnScale& p) const { return {x(p.x_mm), y(p.y_mm)}; }
  [[nodiscard]] Points at(const std::vector<PointOnScale>& points) const {
    Points on_screen;
    for (const PointOnScale& p : points) on_screen.push_back(at(p));
    return on_screen;
  }
  [[nodiscard]] float units(double mm) const { return static_cast<float>(mm * per_mm); }
  [[nodiscard]] double top_mm() const { return middle_mm + 0.5 * static_cast<double>(inner.h) / per_mm; }
  [[nodiscard]] double bottom_mm() const { return middle_mm - 0.5 * static_cast<double>(inner.h) / per_mm; }
  /// The card's dark half stands behind a height of the screen.
  [[nodiscard]] bool on_dark(float at_y) const {
    const float edge = y(scene.card_edge_mm());
    return at_y > edge && at_y < edge + units(kCardDark_mm);
  }
  /// The tube's own part of the picture, seen half-way through it.
  [[nodiscard]] float tube_top() const {
    return std::max(inner.y - 20, y(scene.seen(0, scene.rim_mm(), scene.outer_mm()).y_mm));
  }
  [[nodiscard]] float tube_bottom() const {
    return std::min(inner.bottom() + 20, y(scene.seen(0, scene.foot_mm(), scene.outer_mm()).y_mm));
  }
};

Rect upright(float left, float right, float top, float bottom) {
  return {left, top, right - left, bottom - top};
}

void draw_backdrop(const Pane& pane) {
  const Rect& in = pane.inner;
  pane.canvas.rect(in, Paint::vertical(in.y, in.bottom(), {{0, rgb(0xf8f4ea)}, {1, rgb(0xe9e2d4)}}));
  const float edge = pane.y(pane.scene.card_edge_mm());
  const float white_top = edge - pane.units(kCardWhite_mm), dark_bottom = edge + pane.units(kCardDark_mm);
  if (white_top < in.bottom() && edge > in.y) {
    pane.canvas.rect(upright(in.x, in.right(), std::max(in.y, white_top), std::min(in.bottom(), edge)),
                     rgb(0xfdfcf8));
  }
  if (edge < in.bottom() && dark_bottom > in.y) {
    pane.canvas.rect(
        upright(in.x, in.right(), std::max(in.y - 2, edge), std::min(in.bottom() + 2, dark_bottom)),
        Paint::horizontal(in.x, in.right(), {{0, rgb(0x5c6b70)}, {0.5F, kDarkCard}, {1, rgb(0x55646a)}}));
  }
}

/// Empty glass: air inside, walls at the sides.
void draw_glass_behind(const Pane& pane) {
  const float left = pane.x(-pane.scene.outer_mm()), right = pane.x(pane.scene.outer_mm());
  const float top = pane.tube_top(), bottom = pane.tube_bottom();
  if (bottom <= top) return;
  const auto tint = [](double opacity) { return faded(palette::glass_tint, opacity); };
  pane.canvas.rect(upright(left, right, top, bottom), Paint::horizontal(left, right,
                                                                        {{0, rgb(0x8fa9b0, 0.75)},
                                                                         {0.05F, tint(0.85)},
                                                                         {0.16F, tint(0.30)},
                                                                         {0.5F, tint(0.12)},
                                                                         {0.84F, tint(0.34)},
                                                                         {0.95F, tint(0.9)},
                                                                         {1, rgb(0x86a1a9, 0.8)}}));
}

/// From the meniscus to the foot; a filled tube is a strong lens, darker towards its sides.
void draw_liquid(const Pane& pane, const Points& curve) {
  const float bottom = pane.tube_bottom(), middle = pane.inner.centre().x;
  const float half = pane.units(pane.scene.bore_mm());
  Points points = curve;
  std::vector<sf::Color> colours;
  for (const Point& p : curve) {
    const double share = static_cast<double>((p.x - middle) / half);
    const double lit = std::exp(-std::pow((share - 0.28) / 0.30, 2.0));
    const double side = std::pow(std::abs(share), 5.0);
    colours.push_back(mixed(mixed(rgb(0x7fb0c0, 0.24), rgb(0xd8eef4, 0.20), lit), rgb(0x3f6675, 0.50), side));
  }
  for (const Point& p : curve) points.push_back({p.x, std::max(p.y, bottom)});
  colours.insert(colours.end(), colours.begin(), colours.begin() + static_cast<std::ptrdiff_t>(curve.size()));
  pane.canvas.mesh(points, colours, curve.size());
}

/// The surface between contact ring and bowl: lit when seen from above, silvery from below.
void draw_surface(const Pane& pane, const Points& curve) {
  const EyeScene& scene = pane.scene;
  const double edge = scene.meniscus_mm() + scene.meniscus_rise_mm();
  const Points back = pane.at(scene.ring(scene.bore_mm(), edge, 90, 270));
  const Points front = pane.at(scene.ring(scene.bore_mm(), edge, -90, 90));
  // Liquid that climbs the wall around the air of the bowl.
  Points crescent = curve;
  crescent.insert(crescent.end(), back.begin() + 1, back.end() - 1);
  const float low = pane.y(scene.seen(0, scene.meniscus_mm(), scene.outer_mm()).y_mm);
  const float high = pane.y(scene.seen(0, edge, scene.outer_mm()).y_mm);
  const bool from_above = scene.look_down() > 0;
  const double open = std::min(1.0, std::abs(scene.look_down()) * 5.0);
  pane.canvas.polygon(crescent,
                      Paint::vertical(high, low, {{0, rgb(0x9db9c2, 0.30)}, {1, rgb(0x7c9ba6, 0.46)}}));
  Points lid = front;
  lid.insert(lid.end(), back.begin() + 1, back.end() - 1);
  const sf::Color sheen = from_above ? rgb(0xf4fbfc, 0.75 * open) : rgb(0x5f7f8b, 0.50 * open);
  pane.canvas.polygon(lid, sheen);
  const StrokeStyle thin{std::max(1.0F, pane.units(0.07))};
  pane.canvas.stroke(back, thin, rgb(0x557782, from_above ? 0.65 : 0.35));
  pane.canvas.stroke(front, thin, rgb(0x486a76, from_above ? 0.55 : 0.75));
}

/// The curve thickened inwards, most at its bottom: its outer edge stays where the meniscus is seen.
Points inner_curve(const Pane& pane, const Points& curve, double crisp) {
  Points inner;
  const double half = static_cast<double>(pane.units(pane.scene.bore_mm()));
  for (std::size_t i = 0; i < curve.size(); ++i) {
    const Point along = curve[std::min(i + 1, curve.size() - 1)] - curve[i > 0 ? i - 1 : 0];
    const float length = std::max(1e-4F, std::hypot(along.x, along.y));
    const double share = static_cast<double>(curve[i].x - pane.inner.centre().x) / half;
    const double thick_mm = 0.10 + (0.14 + 0.20 * crisp) * std::max(0.0, 1.0 - 1.3 * share * share);
    inner.push_back(curve[i] + Point{along.y, -along.x} * (pane.units(thick_mm) / length));
  }
  return inner;
}

/// The dark curve, whose lower edge is the meniscus: crisp when the card's dark edge stands just below it.
void draw_curve(const Pane& pane, const Points& curve) {
  const EyeScene& scene = pane.scene;
  const double below_mm = scene.seen(0, scene.meniscus_mm(), scene.outer_mm()).y_mm - scene.card_edge_mm();
  const bool covered = below_mm < 0.1 && below_mm > -75.0;
  const double crisp = covered ? 0.0 : std::clamp(1.0 - (below_mm - 2.5) / 4.0, 0.0, 1.0);
  const sf::Color colour = covered ? rgb(0xb9ccd2, 0.75) : mixed(rgb(0x6d8c98, 0.75), rgb(0x14272f), crisp);
  const Points inner = inner_curve(pane, curve, crisp);
  Points band = curve;
  band.insert(band.end(), inner.begin(), inner.end());
  pane.canvas.mesh(band, std::vector<sf::Color>(band.size(), colour), curve.size());
  for (const Points& side : {curve, inner}) pane.canvas.stroke(side, {pane.canvas.pixel()}, colour);
  // Light thrown under the curve.
  Points under;
  for (const Point& p : curve) under.push_back({p.x, p.y + pane.units(0.13)});
  pane.canvas.stroke(under, {pane.units(0.12)}, rgb(0xffffff, covered ? 0.12 : 0.35 + 0.3 * crisp));
}

struct Span {
  double from, to;
};
/// Angles a graduation runs through on the front: left of the figures; long ones go all round but for a gap
/// there.
Span front_of(EyeMark::Length length) {
  switch (length) {
    case EyeMark::Length::longest:
      return {-90, 20};
    case EyeMark::Length::middle:
      return {-90, 16};
    case EyeMark::Length::shortest:
      break;
  }
  return {-58, 10};
}

float thickness(const Pane& pane, const EyeMark& mark) {
  return pane.units(mark.length == EyeMark::Length::shortest ? kShortest_mm : kLongest_mm);
}

void draw_mark_backs(const Pane& pane, const std::vector<EyeMark>& marks) {
  for (const EyeMark& mark : marks) {
    if (mark.length == EyeMark::Length::shortest) continue;
    const bool round = mark.length == EyeMark::Length::longest;
    const Points line = pane.at(pane.scene.mark_ring(mark, round ? 90 : -90, round ? 270 : -150));
    const sf::Color colour =
        pane.on_dark(line[line.size() / 2].y) ? faded(kMarkOnDark, 0.34) : faded(palette::scale_print, 0.28);
    pane.canvas.stroke(line, {thickness(pane, mark)}, colour);
  }
}

void draw_mark_fronts(const Pane& pane, const std::vector<EyeMark>& marks) {
  for (const EyeMark& mark : marks) {
    const Span span = front_of(mark.length);
    const float y = pane.at(pane.scene.mark_ring(mark, -1, 1))[1].y;
    const sf::Color colour = pane.on_dark(y) ? kMarkOnDark : palette::scale_print;
    pane.canvas.stroke(pane.at(pane.scene.mark_ring(mark, span.from, span.to)), {thickness(pane, mark)},
                       colour);
    if (mark.length != EyeMark::Length::longest) continue;
    pane.canvas.stroke(pane.at(pane.scene.mark_ring(mark, 66, 90)), {thickness(pane, mark)}, colour);
    pane.canvas.text_middle(std::to_string(mark.tenths / 10), {pane.x(pane.scene.outer_mm() * 0.655), y},
                            {pane.units(kFigures_mm), colour, Face::bold, Align::centre});
  }
}

/// Walls, and the window's light on the front.
void draw_glass_front(const Pane& pane) {
  Canvas& canvas = pane.canvas;
  const double outer = pane.scene.outer_mm(), bore = pane.scene.bore_mm();
  const float top = pane.tube_top(), bottom = pane.tube_bottom();
  if (bottom <= top) return;
  for (const double side : {-1.0, 1.0}) {
    const float a = pane.x(side * outer), b = pane.x(side * bore);
    canvas.rect(upright(std::min(a, b), std::max(a, b), top, bottom),
                Paint::horizontal(a, b,
                                  {{0, rgb(0x5f7a84, 0.75)},
                                   {0.35F, rgb(0xdfecee, 0.55)},
                                   {0.8F, rgb(0xa5bdc4, 0.5)},
                                   {1, rgb(0x7896a0, 0.55)}}));
    canvas.line({a, top}, {a, bottom}, std::max(1.2F, pane.units(0.12)), palette::glass_edge);
  }
  const float from = pane.x(-outer * 0.74), to = pane.x(-outer * 0.56);
  canvas.rect(upright(from, to, top, bottom),
              Paint::horizontal(
                  from, to, {{0, rgb(0xffffff, 0.0)}, {0.4F, rgb(0xffffff, 0.6)}, {1, rgb(0xffffff, 0.0)}}));
  const float dim_from = pane.x(outer * 0.80), dim_to = pane.x(outer * 0.92);
  canvas.rect(
      upright(dim_from, dim_to, top, bottom),
      Paint::horizontal(dim_from, dim_to,
                        {{0, rgb(0xffffff, 0.0)}, {0.6F, rgb(0xffffff, 0.34)}, {1, rgb(0xffffff, 0.0)}}));
}

void draw_ends(const Pane& pane) {
  const EyeScene& scene = pane.scene;
  if (scene.rim_mm() < pane.top_mm() + 4) {
    for (const double radius : {scene.outer_mm(), scene.bore_mm()}) {
      Points rim = pane.at(scene.ring(radius, scene.rim_mm(), -180, 174));
      pane.canvas.stroke(rim, {pane.units(0.14), true}, palette::glass_edge);
    }
  }
  if (scene.foot_mm() < pane.bottom_mm() - 4) return;
  const float y = pane.tube_bottom();
  const double outer = scene.outer_mm();
  const Points shoulder =
      Path({pane.x(-outer), y})
          .cubic({pane.x(-outer), y + pane.units(4)}, {pane.x(-3.2), y + pane.units(4)},
                 {pane.x(-3.0), y + pane.units(9)})
          .line({pane.x(3.0), y + pane.units(9)})
          .cubic({pane.x(3.2), y + pane.units(4)}, {pane.x(outer), y + pane.units(4)}, {pane.x(outer), y})
          .points();
  pane.canvas.polygon(shoulder, faded(palette::glass_tint, 0.6));
  pane.canvas.stroke(shoulder, {pane.units(0.14)}, palette::glass_edge);
}

/// Says where to look when the meniscus is out of the picture.
void draw_way(const Pane& pane) {
  if (!pane.scene.has_liquid()) return;
  const double y_mm = pane.scene.seen(0, pane.scene.meniscus_mm(), pane.scene.outer_mm()).y_mm;
  const bool lower = y_mm<pane.bottom_mm(), higher = y_mm> pane.top_mm();
  if (!lower && !higher) return;
  const Rect& in = pane.inner;
  const float y = lower ? in.bottom() - 24 : in.y + 24;
  pane.canvas.rounded_rect({in.centre().x - 80, y - 14, 160, 28}, 14, palette::pill);
  pane.canvas.text_middle(lower ? words::kMeniscusLower : words::kMeniscusHigher, {in.centre().x, y},
                          {15, palette::pill_text, Face::semibold, Align::centre});
}

void draw_picture(Canvas& canvas, const Rect& frame, const Pane& pane) {
  canvas.soft_rect({frame.x + 2, frame.y + 6, frame.w, frame.h}, 16, 12, faded(palette::shadow, 0.22));
  canvas.rounded_rect(frame, 18, palette::accent);
  canvas.rounded_rect(frame.grown(-2), 16, rgb(0xfffdf8));
  canvas.clip(pane.inner);
  draw_backdrop(pane);
  draw_glass_behind(pane);
  const auto marks = pane.scene.marks_between(pane.bottom_mm() - 8, pane.top_mm() + 8);
  draw_mark_backs(pane, marks);
  if (pane.scene.has_liquid()) {
    const Points curve = pane.at(pane.scene.meniscus());
    draw_liquid(pane, curve);
    draw_surface(pane, curve);
    draw_curve(pane, curve);
  }
  draw_ends(pane);
  draw_glass_front(pane);
  draw_mark_fronts(pane, marks);
  canvas.flush();
  draw_way(pane);
  canvas.unclip();
  // The frame's round inner corners, and the shade it throws.
  const Rect& in = pane.inner;
  canvas.stroke(rounded_rect_points(in.grown(1.5F), 9), {5, true}, rgb(0xfffdf8));
  canvas.stroke(rounded_rect_points(in.grown(-1), 8), {1.2F, true}, rgb(0x241d15, 0.22));
  canvas.rect({in.x, in.y, in.w, 7},
              Paint::vertical(in.y, in.y + 7, {{0, rgb(0x241d15, 0.16)}, {1, rgb(0x241d15, 0.0)}}));
}

void draw_eye(Canvas& canvas, Point at, double look_down) {
  const Points almond = Path({at.x - 19, at.y})
                            .quad({at.x - 2, at.y - 18}, {at.x + 18, at.y})
                            .quad({at.x - 2, at.y + 18}, {at.x - 19, at.y})
                            .points();
  canvas.soft_ellipse({at.x, at.y + 4}, 16, 8, 6, faded(palette::shadow, 0.25));
  canvas.polygon(almond, rgb(0xffffff));
  const Point iris{at.x - 3, at.y + static_cast<float>(std::clamp(look_down * 9.0, -3.0, 3.0))};
  canvas.circle(iris, 6.4F, palette::accent);
  canvas.circle(iris, 3.0F, rgb(0x10242d));
  canvas.circle({iris.x - 2.1F, iris.y - 2.2F}, 1.6F, rgb(0xffffff, 0.9));
  canvas.stroke(almond, {2.2F, true}, palette::accent);
}

void draw_card_handle(Canvas& canvas, const Rect& card) {
  canvas.soft_rect({card.x + 1, card.y + 2, card.w, card.h}, 2, 3, faded(palette::shadow, 0.3));
  canvas.rect(card, rgb(0xfdfcf8));
  canvas.rect({card.x, card.centre().y, card.w, card.h / 2}, kDarkCard);
  canvas.stroke(rounded_rect_points(card, 1), {1, true}, palette::accent);
}

void draw_rail(Canvas& canvas, const Rect& area, const View& view, const BenchSpec& spec, double look_down) {
  const Rect rail = EyePicture::rail(area);
  const float x = rail.centre().x;
  canvas.rounded_rect({x - 2, rail.y, 4, rail.h}, 2, faded(palette::accent, 0.30));
  // The burette's scale along the rail.
  const float zero = EyePicture::rail_y(area, 0),
              last = EyePicture::rail_y(area, -spec.burette.scale_length_mm);
  canvas.rounded_rect({x - 2, zero, 4, last - zero}, 2, faded(palette::accent, 0.62));
  const TextStyle style{13, palette::print, Face::regular, Align::left};
  for (const auto& [y, figure] : {std::pair{zero, 0.0}, std::pair{last, spec.burette.nominal_cm3}}) {
    canvas.line({x - 5, y}, {x + 5, y}, 2, palette::accent);
    canvas.text_middle(std::to_string(static_cast<int>(figure)), {x + 22, y}, style);
  }
  canvas.flush();
  draw_card_handle(canvas, EyePicture::card_handle(area, view.hands.card_mm));
  draw_eye(canvas, {x, EyePicture::rail_y(area, view.hands.eye_mm)}, look_down);
}

}  // namespace

Rect EyePicture::frame(const Rect& area) { return {area.x, area.y, area.w - kRailWidth, area.h}; }

Rect EyePicture::rail(const Rect& area) {
  return {area.right() - kRailWidth + 14, area.y + 12, kRailWidth - 14, area.h - 24};
}

float EyePicture::rail_y(const Rect& area, double eye_mm) {
  const Rect r = rail(area);
  const double share = (kEyeHighest_mm - eye_mm) / (kEyeHighest_mm - kEyeLowest_mm);
  return r.y + r.h * static_cast<float>(std::clamp(share, 0.0, 1.0));
}

double EyePicture::eye_mm_at(const Rect& area, float y) {
  const Rect r = rail(area);
  const double share = std::clamp(static_cast<double>((y - r.y) / r.h), 0.0, 1.0);
  return kEyeHighest_mm - share * (kEyeHighest_mm - kEyeLowest_mm);
}

Rect EyePicture::eye_handle(const Rect& area, double eye_mm) {
  return {rail(area).centre().x - 20, rail_y(area, eye_mm) - 16, 44, 32};
}

Rect EyePicture::card_handle(const Rect& area, double card_mm) {
  return {rail(area).centre().x - 35, rail_y(area, card_mm) - 10, 14, 20};
}

double EyePicture::units_per_mm(const Rect& area, const BenchSpec& spec) {
  const Rect inner = frame(area).grown(-kFrame);
  return std::min(static_cast<double>(inner.w) * kTubeShare / (2.0 * spec.burette.outer_half_width_mm),
                  static_cast<double>(inner.h) / kLeastSeen_mm);
}

void EyePicture::draw(Canvas& canvas, const Rect& area, const View& view, const BenchSpec& spec) {
  const EyeScene scene(view, spec);
  canvas.flush();
  const Pane pane{canvas, scene, frame(area).grown(-kFrame), units_per_mm(area, spec), scene.gaze_mm()};
  draw_picture(canvas, frame(area), pane);
  canvas.flush();
  draw_rail(canvas, area, view, spec, scene.has_liquid() ? scene.look_down() : 0.0);
  canvas.flush();
}

}  // namespace halfdrop
