// Looks at the drawn picture itself, as a reader does: finds the marks and the dark curve's lower edge among
// its pixels, and reads one off the other.

#include <doctest/doctest.h>

#include <SFML/Graphics/RenderTexture.hpp>
#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <vector>

#include "game/scenes/bench_layout.h"
#include "game/scenes/display_probe.h"
#include "game/scenes/eye_light.h"
#include "game/scenes/eye_picture.h"
#include "game/scenes/eye_scene.h"
#include "physics/eye/sight_line.h"
#include "tests/support/near.h"

using namespace halfdrop;

namespace {

constexpr unsigned kWidth = 2560, kHeight = 1440;

BenchSpec settled() {
  BenchSpec spec;
  settle(spec);
  return spec;
}

/// The picture, in mm across from the tube's middle and pixels down.
class Picture {
 public:
  Picture(const View& view, const BenchSpec& spec) {
    REQUIRE_MESSAGE(!display_fault(), "this test draws and needs a display: xvfb-run -a ctest ...");
    const auto fonts = Fonts::load();
    REQUIRE(fonts.has_value());
    sf::RenderTexture target;
    REQUIRE(target.create(kWidth, kHeight));
    Canvas canvas(target, *fonts);
    EyePicture::draw(canvas, layout::kEye, view, spec);
    target.display();
    image_ = target.getTexture().copyToImage();
    const Rect inner = EyePicture::frame(layout::kEye).grown(-10);
    per_mm_ = static_cast<double>(canvas.scale()) * EyePicture::units_per_mm(layout::kEye, spec);
    middle_x_ = static_cast<double>(canvas.to_pixels(inner.centre()).x);
    top_ = static_cast<std::size_t>(canvas.to_pixels({inner.x, inner.y}).y);
    bottom_ = static_cast<std::size_t>(canvas.to_pixels({inner.x, inner.bottom()}).y);
  }

  [[nodiscard]] double per_mm() const { return per_mm_; }
  /// Luma of a column of the picture from its top, 0 to 255.
  [[nodiscard]] std::vector<double> column(double x_mm) const {
    std::vector<double> luma;
    for (std::size_t y = top_; y < bottom_; ++y) {
      const auto x = static_cast<unsigned>(std::lround(middle_x_ + x_mm * per_mm_));
      const sf::Color c = image_.getPixel(x, static_cast<unsigned>(y));
      luma.push_back(0.2126 * c.r + 0.7152 * c.g + 0.0722 * c.b);
    }
    return luma;
  }

 private:
  sf::Image image_;
  double per_mm_ = 0.0, middle_x_ = 0.0;
  std::size_t top_ = 0, bottom_ = 0;
};

/// Rows of the thin lines printed across a column: unlike what is above and below them, the same way.
std::vector<double> lines_in(const std::vector<double>& luma, double per_mm) {
  const auto beside = static_cast<std::size_t>(0.25 * per_mm);
  std::vector<double> rows;
  double weight = 0.0, sum = 0.0;
  for (std::size_t i = beside; i + beside < luma.size(); ++i) {
    const double above = luma[i] - luma[i - beside], below = luma[i] - luma[i + beside];
    const double stands_out = above * below > 0.0 ? std::min(std::fabs(above), std::fabs(below)) : 0.0;
    if (stands_out > 25.0) {
      weight += stands_out;
      sum += stands_out * static_cast<double>(i);
    } else if (weight > 0.0) {
      rows.push_back(sum / weight);
      weight = sum = 0.0;
    }
  }
  return rows;
}

/// A column without its thin lines: each pixel the middle one of those around it.
std::vector<double> without_lines(const std::vector<double>& luma, double per_mm) {
  const auto reach = static_cast<std::size_t>(0.22 * per_mm);
  std::vector<double> plain = luma;
  for (std::size_t i = reach; i + reach < luma.size(); ++i) {
    std::vector<double> around(luma.begin() + static_cast<std::ptrdiff_t>(i - reach),
                               luma.begin() + static_cast<std::ptrdiff_t>(i + reach + 1));
    std::nth_element(around.begin(), around.begin() + static_cast<std::ptrdiff_t>(reach), around.end());
    plain[i] = around[reach];
  }
  return plain;
}

/// The lower end of the first broad dark stripe from the top.
struct DarkCurve {
  double dark = 0.0, light = 0.0;    ///< in it and just below
  double half_row = 0.0, row = 0.0;  ///< half-way from dark to light, and where the light is (nearly) full
};
std::optional<DarkCurve> dark_curve(const std::vector<double>& plain, double per_mm) {
  const auto broad = static_cast<std::size_t>(0.7 * per_mm), below = static_cast<std::size_t>(1.0 * per_mm);
  std::size_t run = 0, i = 0;
  while (i < plain.size() && !(run >= broad && plain[i] > 120.0)) {
    run = plain[i] < 120.0 ? run + 1 : 0;
    ++i;
  }
  if (i + below >= plain.size()) return std::nullopt;
  DarkCurve found;
  found.dark = *std::min_element(plain.begin() + static_cast<std::ptrdiff_t>(i - run),
                                 plain.begin() + static_cast<std::ptrdiff_t>(i));
  found.light = *std::max_element(plain.begin() + static_cast<std::ptrdiff_t>(i),
                                  plain.begin() + static_cast<std::ptrdiff_t>(i + below));
  const auto reaches = [&](double share) {
    const double level = found.dark + share * (found.light - found.dark);
    std::size_t at = i - 1;
    while (at > 0 && plain[at] > level) --at;  // into the stripe
    while (at + 1 < plain.size() && plain[at] < level) ++at;
    return static_cast<double>(at) - (plain[at] - level) / std::max(1.0, plain[at] - plain[at - 1]);
  };
  found.half_row = reaches(0.5);
  found.row = reaches(0.94);
  return found;
}

/// Of the lines in a column those that stand a mark's pitch apart: backs of rings and figures do not.
std::vector<double> evenly_spaced(const std::vector<double>& rows, double pitch) {
  const auto in_step = [&](double one, double other) {
    const double steps = (other - one) / pitch;
    return std::fabs(steps - std::round(steps)) * pitch < 1.0;
  };
  std::vector<double> best;
  for (const double first : rows) {
    std::vector<double> comb;
    std::copy_if(rows.begin(), rows.end(), std::back_inserter(comb),
                 [&](double row) { return in_step(first, row); });
    if (comb.size() > best.size()) best = comb;
  }
  return best;
}

/// The longest marks: the lines that reach so far come in pairs ten pitches apart.
double a_longest_mark(const std::vector<double>& rows, const std::vector<double>& marks, double pitch) {
  for (const double one : rows) {
    const double steps = (one - marks.front()) / pitch;
    if (std::fabs(steps - std::round(steps)) * pitch > 5.0) continue;
    for (const double other : rows) {
      if (std::fabs(other - one - 10.0 * pitch) < 2.0) return one;
    }
  }
  FAIL("no two numbered marks are in the picture");
  return 0.0;
}

/// Reads the row of the lower edge against the marks next to it. `near_cm3` only says which whole cm3 the
/// long marks stand for.
double read_off(const Picture& picture, double row, double near_cm3) {
  const double pitch = 1.1 * picture.per_mm();  // ISO 385: 50 cm3 on 550 mm
  const std::vector<double> marks = evenly_spaced(lines_in(picture.column(0.5), picture.per_mm()), pitch);
  REQUIRE(marks.size() > 10);
  const double longest = a_longest_mark(lines_in(picture.column(2.0), picture.per_mm()), marks, pitch);
  const auto next = std::upper_bound(marks.begin(), marks.end(), row);
  REQUIRE(next != marks.begin());
  REQUIRE(next != marks.end());
  const double above_it = next[-1];
  const double below_long_cm3 = 0.1 * (std::round((above_it - longest) / pitch) + (row - above_it) / pitch);
  return std::round(near_cm3 - below_long_cm3) + below_long_cm3;
}

enum class CardIs { away, right, too_low };

/// An eye so far above a meniscus that it reads half-way between two marks.
View view_of(const BenchSpec& spec, double above_mm, CardIs card) {
  const SightGeometry& sight = sight_geometry(spec);
  constexpr double kReads_cm3 = 21.65;
  View view;
  view.column_empty = false;
  const auto error_cm3 = apparent_reading_cm3(sight, above_mm, 0.0);
  view.meniscus_cm3 = kReads_cm3 - error_cm3;
  view.hands.eye_mm = above_mm - sight.mm_per_cm3 * view.meniscus_cm3;
  view.apparent_cm3 = apparent_reading_cm3(sight, view.hands.eye_mm, view.meniscus_cm3);
  view.hands.card_mm = kEyeLowest_mm;
  if (card == CardIs::away) return view;
  // Slid until its dark edge shows so far below the curve.
  const EyeScene scene(view, spec);
  const SightRay out =
      scene.look_through(0.0, scene.lower_edge_mm(0.0) - (card == CardIs::right ? 2.0 : 7.0)).out;
  const double to_card_mm = (sight.outer_mm + kCardBehind_mm - out.from.z) / out.towards.z;
  view.hands.card_mm = out.from.y + to_card_mm * out.towards.y;
  return view;
}

/// What the picture reads.
double seen_cm3(const View& view, const BenchSpec& spec) {
  const Picture picture(view, spec);
  const auto curve = dark_curve(without_lines(picture.column(0.0), picture.per_mm()), picture.per_mm());
  REQUIRE(curve.has_value());
  return read_off(picture, curve->row, view.apparent_cm3);
}

}  // namespace

TEST_CASE("the drawn meniscus reads on the drawn scale what the sight lines say, with and without the card") {
  const BenchSpec spec = settled();
  for (const double above_mm : {0.0, 60.0, -60.0, 20.0, -20.0, 110.0}) {
    for (const CardIs card : {CardIs::right, CardIs::away}) {
      CAPTURE(above_mm);
      CAPTURE(card == CardIs::right);
      const View view = view_of(spec, above_mm, card);
      CHECK_NEAR(view.apparent_cm3, 21.65, 1e-9);
      CHECK_NEAR(seen_cm3(view, spec), view.apparent_cm3, 0.01);
    }
  }
}

TEST_CASE("a picture drawn by another geometry does not read what the sight lines say") {
  const BenchSpec spec = settled();
  BenchSpec nearer = spec;
  nearer.settled.sight.eye_distance_mm = 200.0;
  for (const double above_mm : {60.0, -60.0}) {
    CAPTURE(above_mm);
    const View view = view_of(spec, above_mm, CardIs::right);
    CHECK(std::fabs(seen_cm3(view, nearer) - view.apparent_cm3) > 0.015);
    View moved = view;
    moved.meniscus_cm3 += 0.02;
    CHECK(std::fabs(seen_cm3(moved, spec) - view.apparent_cm3) > 0.015);
  }
}

// Source: practice books have the card's dark edge a little below the meniscus, where it makes the line sharp
// and black (common practice); a surface that mirrors shows there what lies below it (law of reflection).
TEST_CASE("the card makes the lower edge sharp, and blurred and higher when its dark edge is far too low") {
  const BenchSpec spec = settled();
  const auto curve_with = [&](CardIs card) {
    const Picture picture(view_of(spec, 0.0, card), spec);
    const auto curve = dark_curve(without_lines(picture.column(0.0), picture.per_mm()), picture.per_mm());
    REQUIRE(curve.has_value());
    return *curve;
  };
  const DarkCurve away = curve_with(CardIs::away), right = curve_with(CardIs::right);
  const DarkCurve low = curve_with(CardIs::too_low);
  CHECK(right.light - right.dark > 150.0);
  CHECK(right.row - right.half_row < 0.5 * (away.row - away.half_row));
  CHECK(low.half_row < right.half_row - 2.0);
}
