#include "game/scenes/drop_strip.h"

#include <SFML/Graphics/RenderTexture.hpp>
#include <SFML/Graphics/Sprite.hpp>
#include <algorithm>
#include <cmath>
#include <cstdio>

#include "game/level/say.h"
#include "game/scenes/attempt_shelf.h"
#include "game/scenes/bench_layout.h"
#include "game/scenes/bench_picture.h"
#include "game/scenes/glassware.h"
#include "game/scenes/palette.h"
#include "game/scenes/room_picture.h"
#include "game/scenes/still_picture.h"

namespace halfdrop {

namespace {

constexpr float kMargin = 14, kGap = 6, kRow = 356, kHead = 40, kFoot = 36;
constexpr float kBelowFoot = 34;  ///< of the bench, design units of the play screen
constexpr float kBeside = 6;

/// How far the swirling hand leads the foot to a side in any of the pictures.
float farthest_out(const OneDrop& drop) {
  double out_cm = 0.0;
  for (const View& view : drop.swirled)
    out_cm = std::max(out_cm, std::fabs(view.swirl_reach_cm * std::cos(2 * kPi * view.swirl_turns)));
  return static_cast<float>(out_cm) * layout::kNearUnits_cm;
}

/// The flask on its tile as the play screen has it, near enough to fill a cell.
class CloseUp {
 public:
  CloseUp(const Fonts& fonts, const OneDrop& drop, sf::Vector2u size)
      : drop_(drop), outfit_(outfit_of(drop.bench.level())), tints_(tints_of(drop.bench.spec(), backdrop())) {
    const float base = static_cast<float>(drop.bench.spec().flask.base_radius_cm) * layout::kNearUnits_cm;
    const float scale = static_cast<float>(size.x) / (2 * (base + kBeside + farthest_out(drop)));
    (void)bench_.create(static_cast<unsigned>(std::lround(kDesignWidth * scale)),
                        static_cast<unsigned>(std::lround(kDesignHeight * scale)));
    canvas_.emplace(bench_, fonts);
    const Point low = canvas_->to_pixels({layout::kJetX, layout::kFootY + kBelowFoot});
    part_ = {static_cast<int>(low.x) - static_cast<int>(size.x) / 2,
             static_cast<int>(low.y) - static_cast<int>(size.y), static_cast<int>(size.x),
             static_cast<int>(size.y)};
  }

  [[nodiscard]] sf::Sprite of(const View& view) {
    const BenchPicture picture{view, drop_.bench.spec(), outfit_, tints_, view.time_s, "", "", "", 1e9};
    bench_.clear(palette::wall);
    canvas_->begin();
    draw_room(*canvas_);
    if (view.tile_laid) draw_laid_tile(*canvas_, layout::kTileLaid);
    draw_flask(*canvas_, picture);
    canvas_->flush();
    bench_.display();
    return {bench_.getTexture(), part_};
  }

 private:
  [[nodiscard]] Backdrop backdrop() const {
    return drop_.still.front().flask_on_tile ? Backdrop::white_tile : Backdrop::bare_bench;
  }

  const OneDrop& drop_;
  Outfit outfit_;
  TintTable tints_;
  sf::RenderTexture bench_;
  std::optional<Canvas> canvas_;
  sf::IntRect part_;
};

Rect cell(std::size_t row, std::size_t column) {
  constexpr auto count = static_cast<float>(kDropMoments_s.size());
  const float width = (kDesignWidth - 2 * kMargin - (count - 1) * kGap) / count;
  return {kMargin + static_cast<float>(column) * (width + kGap), static_cast<float>(row) * kRow + kHead + 4,
          width, kRow - kHead - kFoot};
}

std::string moment_words(double s) {
  char words[32];
  std::snprintf(words, sizeof words, "%g s", s);
  return words;
}

void row_words(Canvas& canvas, std::size_t row, Phrase what) {
  const Rect first = cell(row, 0);
  canvas.text(what, {first.x, first.y - 11}, {28, palette::print, Face::bold, Align::left});
  for (std::size_t i = 0; i < kDropMoments_s.size(); ++i) {
    const Rect place = cell(row, i);
    canvas.text(moment_words(kDropMoments_s[i]), {place.centre().x, place.bottom() + 26},
                {24, palette::print, Face::semibold, Align::centre});
  }
}

}  // namespace

void draw_strip(sf::RenderTarget& target, const Fonts& fonts, const OneDrop& drop) {
  Canvas canvas(target, fonts);
  const auto pixel = [&](Point p) {
    const Point at = canvas.to_pixels(p);
    return sf::Vector2i{static_cast<int>(std::lround(at.x)), static_cast<int>(std::lround(at.y))};
  };
  const Rect any = cell(0, 0);
  const auto width = static_cast<unsigned>(any.w * canvas.scale());
  const auto height = static_cast<unsigned>(any.h * canvas.scale());
  CloseUp close_up(fonts, drop, {width, height});
  for (const std::size_t row : {0U, 1U}) {
    const DropViews& views = row == 0 ? drop.swirled : drop.still;
    for (std::size_t i = 0; i < views.size(); ++i) {
      sf::Sprite sprite = close_up.of(views[i]);
      const Rect place = cell(row, i);
      sprite.setPosition(sf::Vector2f(pixel({place.x, place.y})));
      target.draw(sprite, sf::BlendNone);
    }
    row_words(canvas, row, row == 0 ? Phrase("strip.swirled") : Phrase("strip.not_swirled"));
  }
  canvas.flush();
}

int draw_strip(const Options& options) {
  const std::string path = find_level(options.level);
  if (looks_like_attempt(path)) {
    std::fprintf(stderr, "%s: --strip needs a level, and this is an attempt\n", path.c_str());
    return 2;
  }
  const auto level = read_level(path);
  if (!level) return report(level.error());
  const auto drop = one_drop_twice(*level, options.seed.value_or(1));
  if (!drop) {
    std::fprintf(stderr, "%s\n", drop.error().c_str());
    return 1;
  }
  return draw_into(options.strip, options, palette::paper,
                   [&](sf::RenderTarget& target, const Fonts& fonts) { draw_strip(target, fonts, *drop); });
}

}  // namespace halfdrop
