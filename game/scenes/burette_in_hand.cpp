// The burette out of its clamps: held aslant before the shelf and turned about.

#include <algorithm>
#include <array>
#include <cmath>

#include "game/scenes/bench_picture.h"
#include "game/scenes/glassware.h"
#include "game/scenes/palette.h"

namespace halfdrop {

namespace {

const Point kRim{222, 330}, kTap{716, 366};  ///< ends of the tube, in design units
constexpr float kHalf = 13.0F, kJet = 96.0F;
constexpr double kTurnEvery_s = 1.5;

/// Points along the burette and across it, on the screen.
class Aslant {
 public:
  Aslant()
      : length_(std::hypot(kTap.x - kRim.x, kTap.y - kRim.y)),
        along_{(kTap.x - kRim.x) / length_, (kTap.y - kRim.y) / length_} {}

  [[nodiscard]] Point at(float along, float down) const {
    return {kRim.x + along_.x * along - along_.y * down, kRim.y + along_.y * along + along_.x * down};
  }
  [[nodiscard]] Points box(float from, float to, float top, float bottom) const {
    return {at(from, top), at(to, top), at(to, bottom), at(from, bottom)};
  }
  [[nodiscard]] Paint across(std::vector<Stop> stops) const {
    return Paint::along(at(0, -kHalf), at(0, kHalf), std::move(stops));
  }
  [[nodiscard]] float length() const { return length_; }

 private:
  float length_;
  Point along_;
};

/// Height in a lying round tube, as a share of its width, that a share of its room fills (by halving).
float depth_share(double room_share) {
  const auto filled = [](double depth) {
    const double c = 1.0 - 2.0 * depth;
    return (std::acos(c) - c * std::sqrt(std::max(0.0, 1.0 - c * c))) / kPi;
  };
  double low = 0.0, high = 1.0;
  for (int i = 0; i < 24; ++i) {
    const double middle = 0.5 * (low + high);
    (filled(middle) < room_share ? low : high) = middle;
  }
  return static_cast<float>(low);
}

void liquid(Canvas& canvas, const BenchPicture& picture, const Aslant& lies, double round) {
  const BuretteSpec& burette = picture.spec.burette;
  const double room_cm3 = burette.above_zero_cm3 + burette.nominal_cm3 + burette.below_scale_cm3;
  if (picture.view.column_cm3 <= 0.0) return;
  const float depth = 2 * (kHalf - 2) * depth_share(std::min(1.0, picture.view.column_cm3 / room_cm3));
  // It rides up the wall that turns away, so the band sways a little.
  const float sways = 1.6F * static_cast<float>(std::sin(round));
  const float top = std::max(-kHalf + 2, kHalf - 2 - depth + sways);
  canvas.polygon(lies.box(3, lies.length() - 4, top, kHalf - 2),
                 lies.across({{0.2F, palette::water}, {1, palette::water_edge}}));
  canvas.stroke({lies.at(3, top), lies.at(lies.length() - 4, top)}, {1.2F}, faded(palette::glass_dark, 0.7));
}

/// The printed scale goes round with the tube: seen while it is on this side.
void scale(Canvas& canvas, const Aslant& lies, double round) {
  const double face = std::cos(round);
  const auto middle = static_cast<float>(std::sin(round)) * (kHalf - 4);
  for (int mark = 0; mark <= 50; ++mark) {
    const float along = 44 + (lies.length() - 90) * static_cast<float>(mark) / 50;
    const float half = (mark % 10 == 0 ? 6.0F : 3.0F) * static_cast<float>(std::fabs(face));
    const double strength = face > 0 ? 0.85 : 0.28;
    canvas.stroke({lies.at(along, std::max(-kHalf + 1, middle - half)),
                   lies.at(along, std::min(kHalf - 1, middle + half))},
                  {mark % 10 == 0 ? 1.4F : 0.8F}, faded(palette::scale_print, strength));
  }
}

void tap_and_jet(Canvas& canvas, const Aslant& lies, double round) {
  const float end = lies.length();
  const Points jet = {lies.at(end + 20, -5), lies.at(end + kJet, -2.2F), lies.at(end + kJet, 2.2F),
                      lies.at(end + 20, 5)};
  canvas.polygon(jet, faded(sf::Color::White, 0.7));
  canvas.stroke(jet, {1.1F, true}, palette::glass_edge);
  const Points barrel = lies.box(end + 2, end + 26, -14, 14);
  canvas.polygon(barrel, lies.across({{0, rgb(0xb9c4c7)}, {0.4F, palette::ptfe}, {1, rgb(0xa9b6ba)}}));
  canvas.stroke(barrel, {1.0F, true}, palette::glass_edge);
  const float reach = 30.0F * static_cast<float>(std::sin(round));
  const Points handle = lies.box(end + 9, end + 19, std::min(0.0F, reach), std::max(0.0F, reach));
  canvas.polygon(handle, palette::tap_handle);
  canvas.stroke(handle, {1.0F, true}, palette::tap_handle_dark);
}

}  // namespace

void draw_burette_in_hand(Canvas& canvas, const BenchPicture& picture) {
  if (!picture.view.held_aslant) return;
  const Aslant lies;
  const double round = 2.0 * kPi * std::fmod(picture.clock_s, kTurnEvery_s) / kTurnEvery_s;
  const Points tube = lies.box(0, lies.length(), -kHalf, kHalf);
  canvas.soft_rect({kRim.x + 6, kRim.y + 22, kTap.x - kRim.x, 34}, 10, 12, faded(palette::shadow, 0.22));
  canvas.polygon(tube, faded(sf::Color::White, 0.6));
  liquid(canvas, picture, lies, round);
  canvas.polygon(tube, lies.across({{0, faded(palette::glass_edge, 0.35)},
                                    {0.22F, faded(sf::Color::White, 0.65)},
                                    {0.5F, faded(palette::glass_tint, 0.12)},
                                    {1, faded(palette::glass_edge, 0.45)}}));
  scale(canvas, lies, round);
  const Points lips = lies.box(-3, 1, -kHalf - 1.5F, kHalf + 1.5F);
  canvas.polygon(lips, palette::glass_tint);
  canvas.stroke(lips, {1.0F, true}, palette::glass_edge);
  canvas.stroke(tube, {1.4F, true}, palette::glass_edge);
  tap_and_jet(canvas, lies, round);
  canvas.flush();
}

}  // namespace halfdrop
